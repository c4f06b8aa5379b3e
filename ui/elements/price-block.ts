import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type SVGTemplateResult,
  svg,
  type TemplateResult,
} from 'lit';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { JobView } from '../job-view.ts';
import { hoursWritten, pounds, wholePounds } from '../written.ts';
import { partsOfPrice } from './price-parts.ts';
import { controlsCss } from './shared-styles.ts';

const compliesWords = {
  yes: 'Nothing that this scheme does fails the checks',
  no: 'This scheme fails: it may not go ahead',
  'not-proven': 'Not proven: the survey does not tell enough',
} as const;

/** The price of the shown scheme, always in sight: total, range, what it is made of, what would narrow it. */
export class PriceBlock extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        min-height: 196px;
        padding: 16px 18px 14px;
        color: var(--block-ink);
        background: var(--block);
      }
      .total {
        display: flex;
        flex-wrap: wrap;
        gap: 0 10px;
        align-items: baseline;
        margin: 0;
        font: 600 36px/1.1 var(--drawing-font);
      }
      .total span {
        font: 400 14px/1.3 var(--text-font);
        color: var(--block-soft);
      }
      svg {
        display: block;
        width: 100%;
        height: 12px;
        margin: 10px 0 4px;
      }
      dl {
        display: grid;
        grid-template-columns: repeat(4, auto);
        gap: 0 10px;
        justify-content: space-between;
        margin: 0;
        font-size: 13px;
      }
      dt {
        grid-row: 1;
        color: var(--block-soft);
      }
      dd {
        grid-row: 2;
        margin: 0;
      }
      .range,
      .verdict {
        margin: 8px 0 0;
        font-size: 13px;
      }
      .verdict {
        font-weight: 500;
      }
      .materials {
        fill: #d9854c;
      }
      .labour {
        fill: #e8dcc6;
      }
      .other {
        fill: #9fb0b8;
      }
      .vat {
        fill: none;
        stroke: #9fb0b8;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    const { scheme } = this.view;
    return scheme === null ? this.#nothingYet() : this.#price(scheme);
  }

  #nothingYet(): TemplateResult {
    const wanted = this.view.job.points.filter(({ status }) => status === 'wanted').length;
    return html`<p class="total">£–</p>
      <p class="range">
        ${
          wanted === 0
            ? 'No price yet: say in Wanted which points are to be added.'
            : `No price yet: choose in Ways how the ${wanted} wanted ${wanted === 1 ? 'point is' : 'points are'} joined.`
        }
      </p>`;
  }

  #price(scheme: SchemeEstimate): TemplateResult {
    const { totals, range } = scheme;
    const vat = scheme.price.vat === 'not-registered' ? 'no VAT charged' : 'with VAT';
    return html`<p class="total" aria-live=${this.view.moving ? 'off' : 'polite'}>
        ${pounds(totals.grossPence)} <span>${vat} · ${hoursWritten(totals.hours)}</span>
      </p>
      ${this.#bar(scheme)}
      <dl>
        ${partsOfPrice(totals).map(
          ({ words, pence }) => html`<dt>${words}</dt>
            <dd>${wholePounds(pence)}</dd>`,
        )}
      </dl>
      <p class="range">
        Between ${wholePounds(range.lowPence)} and ${wholePounds(range.highPence)}, by what is not known yet.
      </p>
      <p class="verdict">${compliesWords[scheme.complies]}</p>`;
  }

  #bar({ totals }: SchemeEstimate): TemplateResult | typeof nothing {
    const parts = partsOfPrice(totals);
    const sum = parts.reduce((all, { pence }) => all + pence, 0);
    if (sum <= 0) return nothing;
    const names = ['materials', 'labour', 'other', 'vat'];
    const widths = parts.map(({ pence }) => (100 * pence) / sum);
    const starts = widths.map((_, i) => widths.slice(0, i).reduce((all, width) => all + width, 0));
    return html`<svg viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
      ${widths.map((width, i) => bar(names[i] ?? '', starts[i] ?? 0, width))}
    </svg>`;
  }
}

function bar(name: string, start: number, width: number): SVGTemplateResult {
  return svg`<rect class=${name} x=${start} y="0.3" width=${Math.max(0, width - 0.6)} height="3.4" stroke-width="0.4" />`;
}
customElements.define('price-block', PriceBlock);
declare global {
  interface HTMLElementTagNameMap {
    'price-block': PriceBlock;
  }
}
