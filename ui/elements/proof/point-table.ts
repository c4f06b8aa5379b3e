import { html, nothing, type TemplateResult } from 'lit';
import type { CircuitPicture } from '#drawing/proof/circuit-picture.ts';
import { pointsInOrder } from '#drawing/proof/points-in-order.ts';
import { limitWords } from '#drawing/proof/proof-words.ts';
import { unitOfLoadSide } from '#engine/circuit/load-side.ts';
import type { CircuitProof } from '#engine/proof/circuit-proof.ts';

const ohms = (ohm: number | null): string => (ohm === null ? '–' : ohm.toFixed(2));

/** A word beside a figure that is beyond its limit. */
const over = (value: number | null, limit: number | null): TemplateResult | typeof nothing =>
  value !== null && limit !== null && value > limit ? html` <b class="over">over</b>` : nothing;

/** What the table is made from. */
interface PointTable {
  readonly proof: CircuitProof;
  readonly picture: CircuitPicture;
  readonly labelOf: (subject: string) => string;
  readonly choose: (subject: string) => void;
}

/** Every point of a circuit in figures, for those who do not look at pictures. */
export function pointTable({ proof, picture, labelOf, choose }: PointTable): TemplateResult {
  const dropOf = new Map(picture.nodes.map(({ subject, dropV }) => [subject, dropV]));
  const { dropLimitV } = proof;
  return html`<table>
    <caption>
      Volt drop in V, limit ${limitWords(dropLimitV)}; resistances in Ω, cold at 20 °C and hot at 70 °C.
    </caption>
    <thead>
      <tr>
        <th scope="col">Point</th>
        <th scope="col" class="number">Volt drop</th>
        <th scope="col" class="number">R1 + R2<br />cold · hot</th>
        <th scope="col" class="number">Zs<br />cold · hot</th>
        <th scope="col" class="number">Zs limit<br />hot</th>
      </tr>
    </thead>
    <tbody>
      ${pointsInOrder(proof, picture).map((point) => {
        const subject = unitOfLoadSide(point.point);
        const dropV = dropOf.get(subject) ?? null;
        return html`<tr>
          <th scope="row"><button class="small quiet" @click=${() => choose(subject)}>${labelOf(subject)}</button></th>
          <td class="number">${dropV === null ? '–' : dropV.toFixed(1)}${over(dropV, dropLimitV)}</td>
          <td class="number">${ohms(point.r1r2ColdOhm)} · ${ohms(point.r1r2HotOhm)}</td>
          <td class="number">${ohms(point.zsColdOhm)} · ${ohms(point.zsHotOhm)}${over(point.zsHotOhm, point.zsMaxOhm)}</td>
          <td class="number">${ohms(point.zsMaxOhm)}</td>
        </tr>`;
      })}
    </tbody>
  </table>`;
}
