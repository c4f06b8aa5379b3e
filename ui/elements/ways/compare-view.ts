import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { outcomeWords } from '#drawing/marks.ts';
import type { RoomLeft } from '#engine/proof/room-left.ts';
import type { Finding } from '#engine/rules/finding.ts';
import {
  type Comparison,
  type CostDifference,
  compareSchemes,
  pairToCompare,
  type SchemeFigures,
} from '#engine/schemes/compare.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { counted, hoursWritten, metresShort, pounds, wholePounds } from '../../written.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../outcome-mark.ts';
import { controlsCss } from '../shared-styles.ts';
import './compare-bars.ts';

const verdicts = { yes: 'Fails nothing', no: 'Fails', 'not-proven': 'Not proven' } as const;
const amps = (value: number): string => `${(Math.round(value * 10) / 10).toFixed(1)} A`;
/** How many of the lines that differ are shown. */
const SHOWN = 12;

/** Two schemes side by side, as for a fused branch against carrying the ring on; and all schemes on one scale. */
export class CompareView extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    a: { attribute: false },
    b: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        max-width: 1060px;
        padding: 16px 20px 28px;
      }
      h3 {
        margin: 22px 0 8px;
      }
      .pick {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 12px;
        margin: 10px 0 4px;
      }
      .sides {
        table-layout: fixed;
      }
      .sides th:first-child,
      .sides td:first-child {
        width: 24%;
        color: var(--ink-soft);
      }
      .sides td {
        font-size: 15px;
      }
      .sum td {
        font: 600 22px/1.3 var(--drawing-font);
      }
      .sum td:first-child {
        font: 400 15px/1.6 var(--text-font);
      }
      ul.findings {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      ul.findings li {
        margin-bottom: 4px;
      }
      .more {
        color: var(--copper-ink);
        font-weight: 600;
      }
      @media (max-width: 700px) {
        :host {
          padding: 12px 12px 24px;
        }
        .pick {
          grid-template-columns: 1fr;
        }
        .sides th:first-child,
        .sides td:first-child {
          width: 26%;
        }
        .sides td,
        .sides th {
          padding: 6px 4px;
          font-size: 14px;
          overflow-wrap: anywhere;
        }
        .sum td {
          font-size: 18px;
        }
      }
    `,
  ];
  declare view: JobView;
  /** Ids of the two schemes; null or unknown: the pair most worth comparing. */
  declare a: string | null;
  declare b: string | null;

  constructor() {
    super();
    this.a = null;
    this.b = null;
  }

  override render(): TemplateResult {
    const pair = this.#pair();
    const back = `/jobs/${encodeURIComponent(this.view.job.id)}/ways`;
    return html`<h2 tabindex="-1">Two schemes side by side</h2>
      <p><a href=${back}>Back to the ways</a></p>
      ${
        pair === null
          ? html`<p>Two schemes are needed to compare: make another one in <em>Ways</em>.</p>`
          : this.#both(pair[0], pair[1])
      }`;
  }

  #pair(): readonly [SchemeEstimate, SchemeEstimate] | null {
    const { schemes } = this.view.estimate;
    const byId = (id: string | null): SchemeEstimate | undefined =>
      schemes.find((scheme) => scheme.id === id);
    const usual = pairToCompare(schemes);
    if (usual === null) return null;
    const a = byId(this.a) ?? usual.find(({ id }) => id !== this.b) ?? usual[0];
    const b = byId(this.b) ?? usual.find((scheme) => scheme !== a) ?? usual[1];
    return a === b ? usual : [a, b];
  }

  #both(a: SchemeEstimate, b: SchemeEstimate): TemplateResult {
    const compared = compareSchemes(a, b);
    const labels: readonly [LabelOf, LabelOf] = [labelsOf(a.worked), labelsOf(b.worked)];
    return html`<div class="pick">${this.#pick('One', a, b)} ${this.#pick('The other', b, a)}</div>
      ${this.#sides(compared, labels)}
      <h3>Where the difference lies</h3>
      ${differences(compared)}
      <h3>All schemes on one scale</h3>
      <compare-bars .schemes=${this.view.estimate.schemes} .marked=${[a.id, b.id]}></compare-bars>`;
  }

  #pick(label: string, own: SchemeEstimate, other: SchemeEstimate): TemplateResult {
    const options = this.view.estimate.schemes
      .filter(({ id }) => id !== other.id)
      .map(({ id, name }) => ({ value: id, label: name }));
    return html`<choice-field
      .label=${label}
      .value=${own.id}
      .options=${options}
      .empty=${null}
      @field-change=${(event: CustomEvent<FieldChange<string>>) => {
        event.stopPropagation();
        const first = label === 'One';
        const ids = { a: first ? event.detail.value : other.id, b: first ? other.id : event.detail.value };
        const path = `/jobs/${encodeURIComponent(this.view.job.id)}/ways/compare`;
        send(this, 'page-asked', { href: `${path}?${new URLSearchParams(ids)}` });
      }}
    ></choice-field>`;
  }

  #sides(compared: Comparison, labels: readonly [LabelOf, LabelOf]): TemplateResult {
    const { a, b } = compared;
    const row = (what: string, of: (figures: SchemeFigures) => string): TemplateResult =>
      html`<tr>
        <td>${what}</td>
        <td>${of(a)}</td>
        <td>${of(b)}</td>
      </tr>`;
    const cable = ({ cableMm, unknownRuns }: SchemeFigures): string =>
      `${metresShort(cableMm)}${unknownRuns > 0 ? `, and ${counted(unknownRuns, 'run')} of unknown length` : ''}`;
    return html`<table class="sides">
      <thead>
        <tr>
          <th><span class="visually-hidden">What</span></th>
          <th>${a.name}</th>
          <th>${b.name}</th>
        </tr>
      </thead>
      <tbody>
        <tr class="sum">
          <td>To pay</td>
          <td>${pounds(a.grossPence)}</td>
          <td>${pounds(b.grossPence)}</td>
        </tr>
        ${row('Range', ({ lowPence, highPence }) => `${wholePounds(lowPence)} to ${wholePounds(highPence)}`)}
        ${row('Hours', ({ hours }) => hoursWritten(hours))} ${row('New cable', cable)}
        ${row('New joints', ({ newJoints }) => String(newJoints))}
        ${row('Boxes to fit', ({ newBoxes }) => String(newBoxes))}
        ${row('New fused units', ({ newUnits }) => String(newUnits))}
        <tr>
          <td>Capacity left</td>
          <td>${a.room.map((room) => roomLine(room, labels[0]))}</td>
          <td>${b.room.map((room) => roomLine(room, labels[1]))}</td>
        </tr>
        ${row('Checks', ({ complies }) => verdicts[complies])}
        <tr>
          <td>Only here</td>
          <td>${this.#findings(compared.onlyA, labels[0])}</td>
          <td>${this.#findings(compared.onlyB, labels[1])}</td>
        </tr>
      </tbody>
    </table>`;
  }

  #findings(findings: readonly Finding[], labelOf: LabelOf): TemplateResult {
    if (findings.length === 0) return html`<span class="hint">nothing that the other has not</span>`;
    return html`<ul class="findings">
      ${findings.map(
        ({ outcome, title, subject, message }) =>
          html`<li>
            <outcome-mark .outcome=${outcome}></outcome-mark> <strong>${outcomeWords[outcome]}:</strong> ${title}
            (${labelOf(subject)}). <span class="hint">${message}</span>
          </li>`,
      )}
    </ul>`;
  }
}

/** What room one group of points has: "13 A behind the fuse for B1, B2, B3: 26.5 A are named, 13.5 A too many". */
function roomLine(room: RoomLeft, labelOf: LabelOf): TemplateResult {
  const names = room.pointIds.map(labelOf).join(', ');
  const limit = room.limitA === null ? 'a rating not known' : `${room.limitA} A`;
  const shared = room.limitedBy === 'fuse' ? 'behind a fuse' : 'of the circuit, shared with all on it';
  const unnamed = room.unnamed > 0 ? `; ${counted(room.unnamed, 'point')} without a named load` : '';
  return html`<p>
    <strong>${names}</strong>: ${limit} ${shared}; named ${amps(room.namedA)}${unnamed}.
    ${
      room.leftA === null
        ? nothing
        : room.leftA < 0
          ? html`<span class="more">${amps(-room.leftA)} more than that if all runs at once.</span>`
          : html`<span>Left: ${amps(room.leftA)}.</span>`
    }
  </p>`;
}

function differences({ differences: all, a, b }: Comparison): TemplateResult {
  if (all.length === 0) return html`<p class="hint">They cost the same, line by line.</p>`;
  const kinds: Readonly<Record<CostDifference['kind'], string>> = {
    materials: 'material',
    labour: 'labour',
    other: 'other',
  };
  const left = all.length - SHOWN;
  return html`<table>
      <thead>
        <tr>
          <th>Line, at cost</th>
          <th class="number">${a.name}</th>
          <th class="number">${b.name}</th>
          <th class="number">Difference</th>
        </tr>
      </thead>
      <tbody>
        ${all.slice(0, SHOWN).map(
          ({ kind, description, aPence, bPence }) =>
            html`<tr>
              <td>${description} <span class="hint">${kinds[kind]}</span></td>
              <td class="number">${pounds(aPence)}</td>
              <td class="number">${pounds(bPence)}</td>
              <td class="number">${bPence > aPence ? '+' : ''}${pounds(bPence - aPence)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    ${left > 0 ? html`<p class="hint">And ${counted(left, 'smaller line')}.</p>` : nothing}`;
}
customElements.define('compare-view', CompareView);
declare global {
  interface HTMLElementTagNameMap {
    'compare-view': CompareView;
  }
}
