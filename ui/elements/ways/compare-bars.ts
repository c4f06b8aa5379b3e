import {
  css,
  html,
  LitElement,
  type PropertyDeclarations,
  type SVGTemplateResult,
  svg,
  type TemplateResult,
} from 'lit';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { pounds, wholePounds } from '../../written.ts';
import '../outcome-mark.ts';
import { verdictOf } from '#drawing/verdict.ts';
import { withVatWords } from '../price/vat-words.ts';
import { partsOfPrice } from '../price-parts.ts';
import { controlsCss } from '../shared-styles.ts';

/** One bar a scheme, cheapest first, all on one scale: what the price is made of, and its range. */
export class CompareBars extends LitElement {
  static override properties: PropertyDeclarations = {
    schemes: { attribute: false },
    marked: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      ul {
        display: grid;
        gap: 10px;
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .head {
        display: flex;
        gap: 10px;
        align-items: baseline;
        justify-content: space-between;
        font-size: 0.875rem;
      }
      .marked .head {
        font-weight: 600;
        color: var(--copper-ink);
      }
      .sum {
        flex: 0 0 auto;
        font: 600 0.9375rem/1.3 var(--drawing-font);
        color: var(--ink);
      }
      svg {
        display: block;
        width: 100%;
        height: 20px;
        margin-top: 2px;
      }
      .verdict {
        color: var(--ask);
        font-weight: 600;
        white-space: nowrap;
      }
      .verdict.fails {
        color: var(--fail);
      }
      .verdict.passes {
        color: var(--pass);
      }
      .likely {
        display: block;
      }
      .ground {
        fill: var(--rule);
      }
      .part {
        stroke: var(--ink);
        stroke-width: 1;
        vector-effect: non-scaling-stroke;
      }
      .part0 {
        fill: var(--copper);
      }
      .part1 {
        fill: var(--sheet);
      }
      .part2 {
        fill: var(--ink-soft);
      }
      .part3 {
        fill: var(--ask-wash);
      }
      .part4 {
        fill: var(--line);
      }
      .range {
        stroke: var(--ink);
        stroke-width: 1.5;
        vector-effect: non-scaling-stroke;
      }
      .told {
        margin: 2px 0 0;
      }
      .key {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 16px;
        margin: 8px 0 0;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      .key svg {
        display: inline-block;
        width: 16px;
        height: 12px;
        margin-right: 4px;
        vertical-align: -1px;
      }
    `,
  ];
  declare schemes: readonly SchemeEstimate[];
  /** Ids of the two that are compared. */
  declare marked: readonly string[];

  constructor() {
    super();
    this.schemes = [];
    this.marked = [];
  }

  override render(): TemplateResult {
    const scalePence = Math.max(1, ...this.schemes.map(({ range }) => range.highPence));
    const sorted = this.schemes.toSorted((a, b) => a.totals.grossPence - b.totals.grossPence);
    return html`<ul>
        ${sorted.map((scheme) => this.#bar(scheme, scalePence))}
      </ul>
      <p class="key">
        ${this.#parts().map(
          ({ words, index }) =>
            html`<span
              ><svg viewBox="0 0 16 12" aria-hidden="true"><rect class=${`part part${index}`} x="0.5" y="0.5" width="15" height="11" /></svg
              >${words}</span
            >`,
        )}<span>Thin line: the likely range, from lowest to highest</span>
      </p>`;
  }

  /** The parts that any of the bars has. */
  #parts(): readonly { readonly words: string; readonly index: number }[] {
    const all = this.schemes.map(({ totals }) => partsOfPrice(totals));
    return (all[0] ?? []).flatMap(({ words }, index) =>
      all.some((parts) => parts[index]?.pence !== 0) ? [{ words, index }] : [],
    );
  }

  #bar(scheme: SchemeEstimate, scalePence: number): TemplateResult {
    const { totals, range } = scheme;
    const parts = partsOfPrice(totals);
    const told = parts
      .filter(({ pence }) => pence !== 0)
      .map(({ words, pence }) => `${words} ${pounds(pence)}`)
      .join(' + ');
    const { outcome, short } = verdictOf(scheme);
    const vat = withVatWords(scheme.price);
    return html`<li class=${this.marked.includes(scheme.id) ? 'marked' : ''}>
      <div class="head">
        <span
          >${scheme.name}
          <span class=${`verdict ${outcome}`}><outcome-mark .outcome=${outcome}></outcome-mark> ${short}</span></span
        >
        <span class="sum">${pounds(totals.grossPence)}</span>
      </div>
      <svg viewBox="0 0 1000 20" preserveAspectRatio="none" aria-hidden="true">
        ${svg`<rect class="ground" y="9" width="1000" height="1"/>`}
        ${parts.map((part, i) =>
          stretch(
            i,
            parts.slice(0, i).reduce((sum, one) => sum + one.pence, 0),
            part.pence,
            scalePence,
          ),
        )}
        ${rangeLine(range.lowPence, range.highPence, scalePence)}
      </svg>
      <p class="hint told">
        ${told} = ${pounds(totals.grossPence)}.
        <span class="likely">Likely range, ${vat}: ${wholePounds(range.lowPence)} to ${wholePounds(range.highPence)}</span>
      </p>
    </li>`;
  }
}

function stretch(i: number, fromPence: number, pence: number, scalePence: number): SVGTemplateResult {
  const at = (value: number): number => (1000 * value) / scalePence;
  return svg`<rect class=${`part part${i}`} x=${at(fromPence)} y="3" width=${at(pence)} height="12"/>`;
}

function rangeLine(lowPence: number, highPence: number, scalePence: number): SVGTemplateResult {
  const [low, high] = [lowPence, highPence].map((value) => (1000 * value) / scalePence);
  return svg`<path class="range" fill="none" d=${`M${low} 16v4M${low} 18H${high}M${high} 16v4`}/>`;
}
customElements.define('compare-bars', CompareBars);
declare global {
  interface HTMLElementTagNameMap {
    'compare-bars': CompareBars;
  }
}
