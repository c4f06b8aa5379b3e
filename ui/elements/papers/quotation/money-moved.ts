import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { MoneyMoved, MovedPart } from '#engine/quotation/money-moved.ts';
import { hoursWritten, metresShort, pounds, poundsMore } from '../../../written.ts';
import { controlsCss } from '../../shared-styles.ts';

/** How much of a change is cable and work, where it is any: "2.1 m more cable, 0.4 h less work". */
function amounts({ figures }: MovedPart): string {
  const { cableMm, labourMin } = figures;
  const more = (value: number): string => (value > 0 ? 'more' : 'less');
  const cable = Math.abs(cableMm) < 50 ? '' : `${metresShort(Math.abs(cableMm))} ${more(cableMm)} cable`;
  const work =
    Math.abs(labourMin) < 3 ? '' : `${hoursWritten(Math.abs(labourMin) / 60)} ${more(labourMin)} work`;
  return [cable, work].filter((words) => words !== '').join(', ');
}

/** What a price has moved by and why, line by line, from what it was to what it is. */
export class MoneyMovedList extends LitElement {
  static override properties: PropertyDeclarations = {
    moved: { attribute: false },
    beforeWords: { type: String },
  };
  static override styles = [
    controlsCss,
    css`
      table {
        margin: 6px 0;
      }
      td small {
        display: block;
        color: var(--ink-soft);
        font-size: 0.875rem;
      }
      tr.sum td {
        font-weight: 600;
        border-top: 2px solid var(--ink);
      }
    `,
  ];
  declare moved: MoneyMoved;
  /** What the first line is called: "Quoted". */
  declare beforeWords: string;

  constructor() {
    super();
    this.beforeWords = 'Quoted';
  }

  override render(): TemplateResult {
    const { beforePence, afterPence, parts, idle } = this.moved;
    // Largest first: that is what is asked about.
    const sorted = parts.toSorted(
      (a, b) =>
        Math.abs(b.figures.grossPence) - Math.abs(a.figures.grossPence) || (a.words < b.words ? -1 : 1),
    );
    return html`<table>
        <thead>
          <tr><th scope="col">What changed</th><th scope="col" class="number">To pay</th></tr>
        </thead>
        <tbody>
          <tr><td>${this.beforeWords}</td><td class="number">${pounds(beforePence)}</td></tr>
          ${sorted.map((part) => this.#part(part))}
          <tr class="sum"><td>Now</td><td class="number">${pounds(afterPence)}</td></tr>
        </tbody>
      </table>
      ${
        idle.length === 0
          ? nothing
          : html`<p class="hint">Changed without moving the price: ${idle.join('; ')}.</p>`
      }`;
  }

  #part(part: MovedPart): TemplateResult {
    const below = [part.detail, amounts(part)].filter((words) => words !== '').join('. ');
    return html`<tr>
      <td>${part.words}${below === '' ? nothing : html`<small>${below}</small>`}</td>
      <td class="number">${poundsMore(part.figures.grossPence)}</td>
    </tr>`;
  }
}
customElements.define('money-moved', MoneyMovedList);
declare global {
  interface HTMLElementTagNameMap {
    'money-moved': MoneyMovedList;
  }
}
