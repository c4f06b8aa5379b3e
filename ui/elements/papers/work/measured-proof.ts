import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import { readingsChart } from '#drawing/proof/readings-chart.ts';
import {
  checkSaid,
  checkTitle,
  measuredOutcomes,
  POINTS_SAID,
  pointFigures,
  pointHeads,
} from '#drawing/work/measured-words.ts';
import { testGroupWords, verdictSaid } from '#drawing/work/test-sheet-words.ts';
import { unitOfLoadSide } from '#engine/circuit/load-side.ts';
import { comparedReadings } from '#engine/proof/compared-readings.ts';
import { readingsTaken } from '#engine/proof/readings/readings-taken.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { MeasuredCheck, MeasuredCircuit, MeasuredPoint } from '#engine/work/tests/measured-circuit.ts';
import { measuredProofs } from '#engine/work/tests/measured-proof.ts';
import type { TestSheet } from '#engine/work/tests/sheet-test.ts';
import type { Limits } from '#model/library.ts';
import { SeenSize } from '../../../controllers/seen-size.ts';
import '../../outcome-mark.ts';
import { PX_PER_UNIT } from '../../plan/plan-window.ts';
import { controlsCss } from '../../shared-styles.ts';
import { stillPicture } from './still-picture.ts';
import { workSheetCss } from './work-sheet-styles.ts';

/** The widest that the chart is drawn, and what it is before it is seen: beyond it the eye has to travel for nothing. */
const WIDEST_MM = 120;

/** The proof of the shown scheme's circuits repeated with what was measured, and expected against measured as a picture. */
export class MeasuredProof extends LitElement {
  static override properties: PropertyDeclarations = {
    scheme: { attribute: false },
    sheet: { attribute: false },
    limits: { attribute: false },
  };
  static override styles = [
    controlsCss,
    workSheetCss,
    css`
      :host {
        max-width: 44rem;
      }
      section {
        margin-top: 20px;
      }
      ul {
        margin: 8px 0;
        padding: 0;
        list-style: none;
      }
      li {
        padding: 6px 0;
        border-top: 1px solid var(--rule);
        break-inside: avoid;
      }
      @media print {
        /* Of nothing that was read there is nothing to print. */
        :host([unread]) {
          display: none;
        }
      }
      .wide {
        overflow-x: auto;
      }
      .number {
        white-space: nowrap;
      }
    `,
  ];
  declare scheme: SchemeEstimate;
  declare sheet: TestSheet;
  declare limits: Limits;
  readonly #size = new SeenSize(this);

  override render(): TemplateResult {
    const { scheme, sheet, limits } = this;
    const circuits = measuredProofs({ worked: scheme.worked, proof: scheme.proof, limits, sheet });
    return html`${circuits.map((circuit) => this.#circuit(circuit))}`;
  }

  #circuit(told: MeasuredCircuit): TemplateResult {
    const { circuitName, checks, points, contradicted, notRead } = told;
    return html`<section data-circuit=${told.circuitId}>
      <h3>With what was measured: ${circuitName}</h3>
      <p class="soft">
        The checks again, measured values in the place of reckoned ones. They are ours, and no
        certificate.${notRead === 0 ? nothing : html` ${notRead} not read yet.`}
      </p>
      <ul>
        ${checks.map(checkRow)}
      </ul>
      ${
        contradicted.length === 0
          ? nothing
          : html`<h4>What contradicts the drawing</h4>
              <ul>
                ${contradicted.map(
                  (test) =>
                    html`<li><strong>${testGroupWords[test.group].title}: ${test.mark}.</strong> ${verdictSaid(test)}</li>`,
                )}
              </ul>`
      }
      ${points.length === 0 ? nothing : pointsTable(points)} ${this.#chart(told)}
    </section>`;
  }

  #chart({ circuitId }: MeasuredCircuit): TemplateResult | typeof nothing {
    const { worked, proof } = this.scheme;
    const own = proof.find(({ circuit }) => circuit === circuitId);
    if (own === undefined) return nothing;
    const compared = comparedReadings(own, readingsTaken(worked.job), 'after');
    if (compared.every(({ fits }) => fits === null)) return nothing;
    const labelOf = labelsOf(worked);
    return html`<h4>Expected against measured</h4>
      ${stillPicture(
        readingsChart({
          compared,
          phase: 'after',
          conductorC: own.expected.conductorC,
          widthMm: Math.min(WIDEST_MM, this.#size.width === 0 ? WIDEST_MM : this.#size.width / PX_PER_UNIT),
          labelOf: (id) => labelOf(unitOfLoadSide(id)),
        }),
      )}`;
  }
}

const checkRow = (check: MeasuredCheck): TemplateResult => {
  const { mark, word } = measuredOutcomes[check.outcome];
  return html`<li data-check=${check.name} data-outcome=${check.outcome}>
    <outcome-mark outcome=${mark}></outcome-mark> <strong>${checkTitle(check)}: ${word.toLowerCase()}.</strong> ${checkSaid(check)}
  </li>`;
};

const pointsTable = (points: readonly MeasuredPoint[]): TemplateResult => html`<h4>Point by point</h4>
  <div class="wide" tabindex="0" role="group" aria-label="Point by point">
    <table>
      <thead>
        <tr>
          <th scope="col">Point</th>
          ${pointHeads.map((head) => html`<th scope="col" class="number">${head}</th>`)}
          <th scope="col">Comes out</th>
        </tr>
      </thead>
      <tbody>
        ${points.map(
          (point) => html`<tr>
            <td>${point.mark}</td>
            ${pointFigures(point).map((figure) => html`<td class="number">${figure}</td>`)}
            <td>${measuredOutcomes[point.outcome].word}</td>
          </tr>`,
        )}
      </tbody>
    </table>
  </div>
  <p class="soft">${POINTS_SAID}</p>`;

customElements.define('measured-proof', MeasuredProof);
declare global {
  interface HTMLElementTagNameMap {
    'measured-proof': MeasuredProof;
  }
}
