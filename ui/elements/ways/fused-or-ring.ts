import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { verdictOf } from '#drawing/verdict.ts';
import { openedCircuit } from '#engine/circuit/opened-circuit.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Candidate } from '../../found-ways/candidate.ts';
import { type WeighedRow, weighed } from '../../found-ways/fused-or-ring.ts';
import { madeOf } from '../../found-ways/made-of.ts';
import { noneWords } from '../../found-ways/none-words.ts';
import type { Found } from '../../found-ways/search-asks.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { unbroken } from '../../written.ts';
import '../outcome-mark.ts';
import { controlsCss } from '../shared-styles.ts';

/** The two ways, each by what it is called to a customer. */
const names = { fused: 'Behind one fuse', ring: 'On the ring' } as const;
type Side = keyof typeof names;
/** What the second is called where no ring is opened in it. */
const inRadial = 'In the radial';
const kinds = { fused: 'fused-branch', ring: 'ring-extension' } as const;

/** A fused branch against carrying the ring on, side by side in a customer's words. @fires ways-asked */
export class FusedOrRing extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    found: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      table {
        table-layout: fixed;
      }
      th[scope='row'] {
        padding: 8px 8px 0;
      }
      th[scope='row'],
      th[scope='row'] + td {
        border-top: 1px solid var(--rule);
      }
      tr.what th {
        border-top: 1px solid var(--rule);
        padding-bottom: 0;
      }
      tr.two td {
        padding-top: 2px;
        border-top: 0;
        overflow-wrap: break-word;
      }
      thead th {
        font-size: 0.9375rem;
        color: var(--ink);
      }
      tr.two.pay td {
        font: 600 1.0625rem/1.3 var(--drawing-font);
      }
    `,
  ];
  declare view: JobView;
  declare found: Found;

  #candidate(side: Side): Candidate | null {
    const best = this.found.bestOfKind.find(({ kind }) => kind === kinds[side]);
    return this.found.candidates.find(({ scheme }) => scheme.id === best?.schemeId) ?? null;
  }

  #name(side: Side): string {
    const { foundShapes } = this.view.estimate.asFound.worked;
    const opened = (this.#candidate(side)?.scheme.connections ?? []).flatMap((one) =>
      one.kind === 'ring-extension' ? [openedCircuit(foundShapes, one.circuit)] : [],
    );
    return opened.includes('radial') && !opened.includes('ring') ? inRadial : names[side];
  }

  #reason(side: Side): string {
    const best = this.found.bestOfKind.find(({ kind }) => kind === kinds[side]);
    return (best && noneWords(best)) ?? 'It is dearer than all that are listed here.';
  }

  /** That there is none, as far as it is known. */
  #none(side: Side): string {
    const why = this.found.bestOfKind.find(({ kind }) => kind === kinds[side])?.why ?? null;
    return `${why === 'impossible' ? 'Cannot be had.' : 'None found.'} ${this.#reason(side)}`;
  }

  override render(): TemplateResult {
    const [fused, ring] = [this.#candidate('fused'), this.#candidate('ring')];
    if (fused === null && ring === null)
      return html`<p>
        There is neither. ${names.fused}: ${this.#none('fused')} ${this.#name('ring')}: ${this.#none('ring')}
      </p>`;
    const { weighed: worked } = this.view.ways;
    const of = (candidate: Candidate | null): SchemeEstimate | null =>
      candidate === null ? null : (worked.get(candidate.scheme.id) ?? null);
    const [left, right] = [of(fused), of(ring)];
    if (left === null && right === null) {
      const schemes = [fused, ring].flatMap((one) => (one === null ? [] : [one.scheme]));
      return html`<button @click=${() => send(this, 'ways-asked', { do: 'weigh', schemes })}>
        Set the two side by side
      </button>`;
    }
    return this.#table(left, right);
  }

  #table(fused: SchemeEstimate | null, ring: SchemeEstimate | null): TemplateResult {
    const one = fused ?? ring;
    if (one === null) return html``;
    const labelOf = labelsOf(one.worked);
    const rows = weighed({ fused: fused ?? one, ring: ring ?? one }, labelOf);
    const isHere = { fused: fused !== null, ring: ring !== null };
    return html`<table role="table">
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader">${names.fused}</th>
          <th role="columnheader">${this.#name('ring')}</th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        ${
          isHere.fused && isHere.ring
            ? nothing
            : html`<tr role="row" class="two">
              <td role="cell">${isHere.fused ? 'Can be had.' : this.#none('fused')}</td>
              <td role="cell">${isHere.ring ? 'Can be had.' : this.#none('ring')}</td>
            </tr>`
        }
        ${rows.map((row, i) => this.#row(row, isHere, i === 0))}
        ${this.#made(labelOf)}
        ${this.#headed('Checks')}
        <tr role="row" class="two">
          ${[fused, ring].map((scheme) => checksCell(scheme))}
        </tr>
      </tbody>
    </table>`;
  }

  /** Which of the found ways either is, and what it is made of; from here it is shown on the plan. */
  #made(labelOf: LabelOf): TemplateResult {
    return html`${this.#headed('Which way it is')}
      <tr role="row" class="two">
        ${(['fused', 'ring'] as const).map((side) => this.#madeCell(side, labelOf))}
      </tr>`;
  }

  #madeCell(side: Side, labelOf: LabelOf): TemplateResult {
    const candidate = this.#candidate(side);
    if (candidate === null) return html`<td role="cell">–</td>`;
    const { scheme } = candidate;
    const number = this.found.candidates.indexOf(candidate) + 1;
    const isOn = this.view.ways.tried?.id === scheme.id;
    const words = isOn ? 'It is on the plan' : 'Show it on the plan';
    return html`<td role="cell">
      <p>Way ${number}: ${madeOf(scheme, labelOf)}.</p>
      <button
        class="small"
        aria-label=${`${words}: ${this.#name(side).toLowerCase()}, way ${number}`}
        ?disabled=${isOn}
        @click=${() => send(this, 'ways-asked', { do: 'try', scheme })}
      >
        ${words}
      </button>
    </td>`;
  }

  #headed(what: string): TemplateResult {
    return html`<tr role="row" class="what">
      <th role="rowheader" scope="row" colspan="2">${what}</th>
    </tr>`;
  }

  #row(row: WeighedRow, isHere: Readonly<Record<Side, boolean>>, isPay: boolean): TemplateResult {
    return html`${this.#headed(row.what)}
      <tr role="row" class=${isPay ? 'two pay' : 'two'}>
        <td role="cell">${isHere.fused ? unbroken(row.fused) : '–'}</td>
        <td role="cell">${isHere.ring ? unbroken(row.ring) : '–'}</td>
      </tr>`;
  }
}

function checksCell(scheme: SchemeEstimate | null): TemplateResult {
  if (scheme === null) return html`<td role="cell">–</td>`;
  const { outcome, words } = verdictOf(scheme);
  return html`<td role="cell"><outcome-mark .outcome=${outcome}></outcome-mark> ${words}</td>`;
}
customElements.define('fused-or-ring', FusedOrRing);
declare global {
  interface HTMLElementTagNameMap {
    'fused-or-ring': FusedOrRing;
  }
}
