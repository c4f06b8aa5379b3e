import { css, html, LitElement, nothing, type PropertyDeclarations, svg, type TemplateResult } from 'lit';
import type { CutList } from '#drawing/shopping/cut-lists.ts';
import { plainMetres } from '#drawing/shopping/cut-lists.ts';
import { entryMarks } from '#drawing/shopping/entry-marks.ts';
import { askWords, entryNotes } from '#drawing/shopping/entry-words.ts';
import { type ShoppingSheet, UNCOUNTED_TITLE } from '#drawing/shopping/shopping-sheet.ts';
import type { ShoppingEntry, ShoppingGroup } from '#engine/price/shopping/shopping-list.ts';
import { dayWords, pounds } from '../../written.ts';
import { controlsCss } from '../shared-styles.ts';
import './cut-bars.ts';

/** The shopping list on A4 with boxes to tick, and the cut list: black and one grey. Only in print. */
export class ShoppingPaper extends LitElement {
  static override properties: PropertyDeclarations = {
    sheet: { attribute: false },
    had: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: none;
      }
      @media print {
        :host {
          --ink: #000;
          --ink-soft: #555;
          --ink-faint: #555;
          --removed: #555;
          --line: #555;
          --rule: #555;
          --copper: #000;
          --copper-ink: #000;
          --copper-wash: #fff;
          --sheet: #fff;
          display: block;
          font-size: 10pt;
          color: #000;
        }
      }
      h2 {
        margin: 0 0 1mm;
        font-size: 14pt;
      }
      h3 {
        margin: 4mm 0 0;
        padding-bottom: 1mm;
        font-size: 11pt;
        border-bottom: 0.35mm solid #000;
        break-after: avoid;
      }
      p {
        margin: 0 0 1mm;
      }
      .soft,
      small {
        font-size: 8.5pt;
        color: #555;
      }
      small {
        display: block;
      }
      table {
        font-size: 10pt;
      }
      td {
        padding: 0.9mm 1.5mm;
        border-top: 0.18mm solid #555;
      }
      tr:first-child td {
        border-top: 0;
      }
      .open {
        margin-top: 2mm;
      }
      tr,
      .open,
      .cuts,
      .cautions {
        break-inside: avoid;
      }
      .cuts {
        margin-top: 2mm;
      }
      td.box {
        width: 7mm;
        padding-left: 0;
      }
      td.number {
        width: 20mm;
      }
      svg.tick {
        display: block;
        width: 4.2mm;
        height: 4.2mm;
        fill: none;
        stroke: #000;
        stroke-width: 1.4;
      }
      .columns {
        columns: 3;
        column-gap: 6mm;
        margin: 2mm 0;
        padding: 0;
        list-style: none;
      }
    `,
  ];
  declare sheet: ShoppingSheet;
  declare had: ReadonlySet<string>;

  constructor() {
    super();
    this.had = new Set();
  }

  override render(): TemplateResult {
    const { reference, title, schemeName, date, state, list, costWords, demoNote, cutLists, cautions } =
      this.sheet;
    return html`<h2>Shopping list, ${reference}</h2>
      <p>${title}: ${schemeName}</p>
      <p class="soft">${dayWords(date)}, state ${state}</p>
      ${this.#stillOpen()} ${list.groups.map((group) => this.#group(group))}
      ${this.#uncounted()} ${this.#goesBack()}
      ${this.sheet.instead.strays.map(({ words }) => html`<p>No longer on the list. ${words}</p>`)}
      ${this.sheet.instead.sumWords === '' ? nothing : html`<p>${this.sheet.instead.sumWords}</p>`}
      <p>${costWords}</p>
      ${demoNote === null ? nothing : html`<p><strong>${demoNote}</strong></p>`}
      ${cutLists.length === 0 ? nothing : html`<h3>Cut list</h3>`} ${cutLists.map((one) => this.#cuts(one))}
      <p class="soft cautions">${cautions.join(' ')}</p>`;
  }

  #group({ title, entries, pence }: ShoppingGroup): TemplateResult {
    return html`<section>
      <h3>${title}${pence > 0 ? html` <span class="soft">${pounds(pence)}</span>` : nothing}</h3>
      <table>
        <tbody>
          ${entries.map((entry) => this.#entry(entry))}
        </tbody>
      </table>
    </section>`;
  }

  #stillOpen(): TemplateResult | typeof nothing {
    const { words, lines } = this.sheet.stillOpen;
    if (words === '') return nothing;
    return html`<section class="open">
      <p><strong>${words}</strong></p>
      ${lines.map((line) => html`<p class="soft">${line}</p>`)}
    </section>`;
  }

  #uncounted(): TemplateResult | typeof nothing {
    const { uncounted } = this.sheet;
    if (uncounted.length === 0) return nothing;
    return html`<section>
      <h3>${UNCOUNTED_TITLE}</h3>
      ${uncounted.map((line) => html`<p>${line}</p>`)}
    </section>`;
  }

  #goesBack(): TemplateResult | typeof nothing {
    const { goesBack } = this.sheet.inCase;
    if (goesBack.length === 0) return nothing;
    return html`<section>
      <h3>What can go back unopened</h3>
      ${goesBack.map(({ title, lines }) => html`<p>${title}: ${lines.join('; ')}</p>`)}
    </section>`;
  }

  #entry(entry: ShoppingEntry): TemplateResult {
    const forWords = this.sheet.forWords.get(entry.key) ?? '';
    const notes = entryNotes(entry, forWords);
    return html`<tr>
      <td class="box">
        <svg class="tick" viewBox="0 0 16 16" role="img" aria-label=${this.had.has(entry.key) ? 'ticked' : 'not ticked'}>
          <rect x="1" y="1" width="14" height="14" />
          ${this.had.has(entry.key) ? svg`<path d="M4 8.5 7 12 12.5 4" />` : nothing}
        </svg>
      </td>
      <td>
        <strong>${askWords(entry)}</strong> ${entry.description}
        ${entryMarks(entry, this.sheet).map((mark) => html`<small><strong>${mark}</strong></small>`)}
        ${notes.length === 0 ? nothing : html`<small>${notes.join(' · ')}</small>`}
      </td>
      <td class="number">${entry.pence === null ? '' : pounds(entry.pence)}</td>
    </tr>`;
  }

  #cuts({ description, bars, without, nearMisses }: CutList): TemplateResult {
    const cuts = bars.flatMap((bar) => bar.cuts);
    const row = ({ number, label, lengthMm }: (typeof cuts)[number]): TemplateResult =>
      html`<li>${number}. ${label}, ${plainMetres(lengthMm)}</li>`;
    return html`<section class="cuts">
      <p><strong>${description}</strong></p>
      <cut-bars paper .bars=${bars}></cut-bars>
      <ul class="columns">
        ${cuts.map(row)}
      </ul>
      ${
        without.length === 0
          ? nothing
          : html`<p>Nothing on the price list is long enough for</p>
              <ul class="columns">
                ${without.map(row)}
              </ul>`
      }
      ${nearMisses.map((words) => html`<p class="soft">${words}</p>`)}
    </section>`;
  }
}
customElements.define('shopping-paper', ShoppingPaper);
declare global {
  interface HTMLElementTagNameMap {
    'shopping-paper': ShoppingPaper;
  }
}
