import { html, LitElement, nothing, type PropertyDeclarations, svg, type TemplateResult } from 'lit';
import type { PriceRange, Totals } from '#engine/price/totals.ts';
import { MovedFollower } from '../controllers/moved-follower.ts';
import type { JobView } from '../job-view.ts';
import { type PriceSight, priceSightOf } from '../moved/moved-sight.ts';
import { counted, hoursWritten, percent, pounds, wholePounds } from '../written.ts';
import './outcome-mark.ts';
import { withVatWords } from './price/vat-words.ts';
import { priceBlockCss } from './price-block-styles.ts';
import { partsOfPrice } from './price-parts.ts';
import { controlsCss } from './shared-styles.ts';

/** The price of the shown scheme, always in sight: total, range, what it is made of. */
export class PriceBlock extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    told: { state: true },
  };
  static override styles = [controlsCss, priceBlockCss];
  declare view: JobView;
  /** The price as it is read out: of what has come to rest only. */
  declare private told: string;
  readonly #follower = new MovedFollower(
    this,
    () => this.view.moved,
    ({ sight }) => sight?.priced ?? null,
  );

  constructor() {
    super();
    this.told = '';
  }

  override willUpdate(): void {
    const { scheme, moving } = this.view;
    if (!moving) this.told = scheme === null ? '' : `Price ${pounds(scheme.totals.grossPence)}`;
  }

  override render(): TemplateResult {
    return html`<p class="visually-hidden" role="status">${this.told}</p>
      ${this.#priced === null ? this.#nothingYet() : priceTemplate(this.#priced)}`;
  }

  /** Under the hand as it is worked out elsewhere, else of the shown scheme. */
  get #priced(): PriceSight | null {
    const { scheme } = this.view;
    return this.#follower.now ?? (scheme === null ? null : priceSightOf(scheme));
  }

  #nothingYet(): TemplateResult {
    const { job } = this.view;
    const wanted = job.points.filter(({ status }) => status === 'wanted').length;
    return html`<p class="total">No price yet</p>
      <p class="missing">
        ${
          wanted === 0
            ? 'Say in Wanted which points are to be added.'
            : `Make a scheme in Ways: how ${wanted === 1 ? 'the wanted point is' : `the ${counted(wanted, 'wanted point')} are`} to be joined.`
        }
      </p>`;
  }
}

function priceTemplate({ name, totals, range, price, verdict }: PriceSight): TemplateResult {
  const vat = withVatWords(price);
  return html`<p class="whose">${name}</p>
    <p class="total">
      ${pounds(totals.grossPence)} <small>${vat} · ${hoursWritten(totals.hours)}</small>
    </p>
    ${conditionLine(price)} ${rangeStrip(range, vat)} ${bar(totals)}
    <dl>
      ${partsOfPrice(totals).map(({ words, pence }, index) =>
        pence === 0
          ? nothing
          : html`<div class=${`part${index}`}>
              <dt>${words}</dt>
              <dd>${pounds(pence)}</dd>
            </div>`,
      )}
    </dl>
    <p class="verdict"><outcome-mark .outcome=${verdict.outcome}></outcome-mark><span>${verdict.words}</span></p>`;
}

/** Beside the total: what a lower rate of VAT is claimed by, or that nothing is. */
function conditionLine({ vatClaim, vatPercent }: PriceSight['price']): TemplateResult | typeof nothing {
  const { verdict, condition } = vatClaim;
  if (verdict === 'not-needed') return nothing;
  const claimed = verdict === 'claimed' ? (condition?.label ?? '') : `no condition that holds is claimed`;
  return html`<p class="condition">VAT at ${percent(vatPercent)}: ${claimed}</p>`;
}

/** The range as a strip with the price on it: low, typical, high. */
function rangeStrip(
  { lowPence, typicalPence, highPence }: PriceRange,
  vat: string,
): TemplateResult | typeof nothing {
  const width = highPence - lowPence;
  if (width <= 0) return nothing;
  const at = (100 * (typicalPence - lowPence)) / width;
  return html`<p class="range-of">Likely range, ${vat}</p>
  <div class="range">
    <span>${wholePounds(lowPence)}</span>
    <svg viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
      ${svg`<rect class="track" x="0" y="5" width="100" height="2"/><rect class="ends" x="0" y="2" width="0.8" height="8"/><rect class="ends" x="99.2" y="2" width="0.8" height="8"/><rect class="now" x=${Math.min(98, Math.max(0, at - 1))} y="0" width="2" height="12"/>`}
    </svg>
    <span><span class="visually-hidden">to </span>${wholePounds(highPence)}</span>
  </div>`;
}

/** What the price is made of as one bar. */
function bar(totals: Totals): TemplateResult | typeof nothing {
  const parts = partsOfPrice(totals);
  const sum = parts.reduce((all, { pence }) => all + pence, 0);
  if (sum <= 0) return nothing;
  const widths = parts.map(({ pence }) => (100 * pence) / sum);
  const starts = widths.map((_, index) => widths.slice(0, index).reduce((all, width) => all + width, 0));
  return html`<svg class="bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
    ${widths.map(
      (width, index) =>
        svg`<rect class=${`part${index}`} x=${starts[index] ?? 0} y="0" width=${Math.max(0, width - 0.6)} height="4"/>`,
    )}
  </svg>`;
}
customElements.define('price-block', PriceBlock);
declare global {
  interface HTMLElementTagNameMap {
    'price-block': PriceBlock;
  }
}
