import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { outcomeWords } from '#drawing/marks.ts';
import { verdictOf } from '#drawing/verdict.ts';
import { type OpenedUp, openedUp } from '#engine/labour/opened-up.ts';
import type { RoomLeft } from '#engine/proof/room-left.ts';
import type { Finding } from '#engine/rules/finding.ts';
import {
  type Comparison,
  type CostDifference,
  type CostStep,
  compareSchemes,
  pairToCompare,
  type SchemeFigures,
} from '#engine/schemes/compare.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { madeOf } from '../../found-ways/made-of.ts';
import { messWords } from '../../found-ways/search-words.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { counted, hoursWritten, metresShort, pounds, wholePounds } from '../../written.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../outcome-mark.ts';
import { withVatWords } from '../price/vat-words.ts';
import { controlsCss } from '../shared-styles.ts';
import './compare-bars.ts';
import { compareCss } from './compare-styles.ts';

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
  static override styles = [controlsCss, compareCss];
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
      <p class="back"><a href=${back}>Back to the ways</a></p>
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
      ${this.#sides(compared, labels, [a, b])}
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

  #sides(
    compared: Comparison,
    labels: readonly [LabelOf, LabelOf],
    schemes: readonly [SchemeEstimate, SchemeEstimate],
  ): TemplateResult {
    const { a, b } = compared;
    const row = (what: string, of: (figures: SchemeFigures) => string): TemplateResult =>
      html`<tr role="row">
        <th role="rowheader" scope="row">${what}</th>
        <td role="cell">${of(a)}</td>
        <td role="cell">${of(b)}</td>
      </tr>`;
    const opened = (what: string, of: (opened: OpenedUp) => number): TemplateResult =>
      html`<tr role="row">
        <th role="rowheader" scope="row">${what}</th>
        ${schemes.map(({ labour }) => html`<td role="cell">${of(openedUp(labour))}</td>`)}
      </tr>`;
    const either = (what: string, of: (figures: SchemeFigures) => number): TemplateResult | typeof nothing =>
      of(a) === 0 && of(b) === 0 ? nothing : row(what, (figures) => pounds(of(figures)));
    const sum = (what: string, of: (figures: SchemeFigures) => number, look = 'sum'): TemplateResult =>
      html`<tr role="row" class=${look}>
        <th role="rowheader" scope="row">${what}</th>
        <td role="cell">${pounds(of(a))}</td>
        <td role="cell">${pounds(of(b))}</td>
      </tr>`;
    const cable = ({ cable: { cableMm, typicalRuns } }: SchemeFigures): string =>
      `${metresShort(cableMm)}${typicalRuns > 0 ? `, with ${counted(typicalRuns, 'run')} of a typical length` : ''}`;
    // Stacked on a phone, rows and cells are no table any more by themselves: their roles say what they are.
    return html`<table class="sides" role="table">
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader"><span class="visually-hidden">What</span></th>
          <th role="columnheader">${a.name}</th>
          <th role="columnheader">${b.name}</th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        <tr role="row">
          <th role="rowheader" scope="row">What it is made of</th>
          ${schemes.map(({ worked }, i) => html`<td role="cell">${worked.scheme === null ? nothing : madeOf(worked.scheme, labels[i] ?? labels[0])}</td>`)}
        </tr>
        ${row('Materials, marked up', ({ totals }) => pounds(totals.materialsPence))}
        ${row('Labour', ({ totals }) => `${pounds(totals.labourPence)} for ${hoursWritten(totals.hours)}`)}
        ${either('Other sums', ({ totals }) => totals.otherPence)}
        ${either('Contingency', ({ totals }) => totals.contingencyPence)}
        ${sum('Total before VAT', ({ totals }) => totals.netPence)}
        ${row(vatWords(a), ({ totals }) => pounds(totals.vatPence))}
        ${sum('To pay', ({ totals }) => totals.grossPence, 'sum pay')}
        ${row(
          `Likely range, ${withVatWords(a)}`,
          ({ lowPence, highPence }) => `${wholePounds(lowPence)} to ${wholePounds(highPence)}`,
        )}
        ${row('Disturbance', (figures) => messWords(figures.messPoints))}
        ${row('New cable', cable)}
        ${opened('Holes to drill', ({ holes }) => holes)}
        ${opened('Boards up', ({ boards }) => boards)}
        ${row('New joints', ({ newJoints }) => String(newJoints))}
        ${row('Boxes to fit', ({ newBoxes }) => String(newBoxes))}
        ${row('New fused units', ({ newUnits }) => String(newUnits))}
        <tr role="row">
          <th role="rowheader" scope="row">Capacity left</th>
          <td role="cell">${a.room.map((room) => roomLine(room, labels[0]))}</td>
          <td role="cell">${b.room.map((room) => roomLine(room, labels[1]))}</td>
        </tr>
        <tr role="row">
          <th role="rowheader" scope="row">Checks</th>
          ${schemes.map(verdictOf).map(({ outcome, words }) => html`<td role="cell"><outcome-mark .outcome=${outcome}></outcome-mark> ${words}</td>`)}
        </tr>
        <tr role="row">
          <th role="rowheader" scope="row">Only here</th>
          <td role="cell">${this.#findings(compared.onlyA, labels[0])}</td>
          <td role="cell">${this.#findings(compared.onlyB, labels[1])}</td>
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

const vatWords = ({ vat, vatPercent }: SchemeFigures): string =>
  vat === 'not-registered' ? 'VAT: none charged' : `VAT, ${vatPercent} %`;

/** What room one group of points has: "B1, B2, B3: 13 A behind a fuse; named 26.5 A. 13.5 A more than that …". */
function roomLine(room: RoomLeft, labelOf: LabelOf): TemplateResult {
  const names = room.pointIds.map(labelOf).join(', ');
  const limit = room.limitA === null ? 'a rating not known' : `${room.limitA} A`;
  const shared = room.limitedBy === 'fuse' ? 'behind a fuse' : 'of the circuit, shared with all on it';
  const spurs = room.onSpurs.map(labelOf).join(', ');
  return html`<p>
    <strong>${names}</strong>: ${limit} ${shared}; ${namedWords(room)}. ${leftWords(room)}
    ${
      spurs === ''
        ? nothing
        : html`<span class="hint">${spurs}: on a spur without a fuse, where no further outlet may follow.</span>`
    }
  </p>`;
}

function namedWords({ namedA, restA, unnamed, pointIds }: RoomLeft): string {
  const elsewhere = restA > 0 ? `, and ${amps(restA)} named elsewhere on the circuit` : '';
  if (unnamed === pointIds.length) return `no load is named${elsewhere}`;
  return `named ${amps(namedA)}${unnamed > 0 ? `, ${counted(unnamed, 'point')} without a named load` : ''}${elsewhere}`;
}

/** What is left, as far as the loads are named: nobody knows what an unnamed one takes. */
function leftWords({ leftA, limitedBy, unnamed, pointIds }: RoomLeft): TemplateResult {
  if (leftA === null || unnamed === pointIds.length) return html`What is left is not worked out.`;
  if (leftA < 0) return html`<span class="more">${amps(-leftA)} more than that if all runs at once.</span>`;
  const most = unnamed > 0 ? 'at most ' : '';
  return html`Left${limitedBy === 'fuse' ? '' : ' for all else on it'}: ${most}${amps(leftA)}.`;
}

/** A line of the table of differences: what it is, and what it comes to in each. */
interface DifferenceRow {
  readonly words: string;
  readonly hint?: string;
  readonly aPence: number;
  readonly bPence: number;
  readonly isSum?: boolean;
}

const kindWords: Readonly<Record<CostDifference['kind'], string>> = {
  materials: 'material, at cost',
  labour: 'labour',
  other: 'other',
};
const stepWords: Readonly<Record<CostStep['step'], string>> = {
  'mark-up': 'Mark-up on materials',
  rounding: 'Rounding of labour to whole pence',
  contingency: 'Contingency',
};

/** The lines that differ, dearest first, and all that leads from them to what is to be paid: each column adds up. */
function rowsOf({ differences: all, samePence, steps, a, b }: Comparison): readonly DifferenceRow[] {
  const line = ({ kind, description, aPence, bPence }: CostDifference): DifferenceRow => ({
    words: description,
    hint: kindWords[kind],
    aPence,
    bPence,
  });
  const smaller = all.slice(SHOWN);
  const add = (key: 'aPence' | 'bPence'): number => smaller.reduce((sum, one) => sum + one[key], 0);
  return [
    ...all.slice(0, SHOWN).map(line),
    ...(smaller.length === 0
      ? []
      : [
          {
            words: `${counted(smaller.length, 'smaller line')} together`,
            aPence: add('aPence'),
            bPence: add('bPence'),
          },
        ]),
    ...(samePence === 0
      ? []
      : [{ words: 'All lines that are the same in both', aPence: samePence, bPence: samePence }]),
    ...steps.map(({ step, aPence, bPence }) => ({ words: stepWords[step], aPence, bPence })),
    { words: 'Total before VAT', aPence: a.totals.netPence, bPence: b.totals.netPence, isSum: true },
    { words: vatWords(a), aPence: a.totals.vatPence, bPence: b.totals.vatPence },
    { words: 'To pay', aPence: a.totals.grossPence, bPence: b.totals.grossPence, isSum: true },
  ];
}

function differences(compared: Comparison): TemplateResult {
  if (compared.differences.length === 0 && compared.a.totals.grossPence === compared.b.totals.grossPence)
    return html`<p class="hint">They cost the same, line by line.</p>`;
  return html`<table class="differences" role="table">
    <thead role="rowgroup">
      <tr role="row">
        <th role="columnheader">Line</th>
        <th role="columnheader" class="number">${compared.a.name}</th>
        <th role="columnheader" class="number">${compared.b.name}</th>
        <th role="columnheader" class="number">Difference</th>
      </tr>
    </thead>
    <tbody role="rowgroup">
      ${rowsOf(compared).map(
        ({ words, hint, aPence, bPence, isSum = false }) =>
          html`<tr role="row" class=${isSum ? 'sum' : ''}>
            <td role="cell">${words} ${hint === undefined ? nothing : html`<span class="hint">${hint}</span>`}</td>
            <td role="cell" class="number">${pounds(aPence)}</td>
            <td role="cell" class="number">${pounds(bPence)}</td>
            <td role="cell" class="number">${bPence > aPence ? '+' : ''}${pounds(bPence - aPence)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}
customElements.define('compare-view', CompareView);
declare global {
  interface HTMLElementTagNameMap {
    'compare-view': CompareView;
  }
}
