import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { countWords } from '#drawing/count-words.ts';
import type { Finding, Outcome } from '#engine/rules/finding.ts';
import { outcomeCount } from '#engine/rules/outcome-count.ts';
import { MovedFollower } from '../controllers/moved-follower.ts';
import type { JobView } from '../job-view.ts';
import { sightIn } from '../moved/moved-channel.ts';
import { pounds, wholePounds } from '../written.ts';
import './outcome-mark.ts';
import { controlsCss } from './shared-styles.ts';

const shownCounts: readonly Outcome[] = ['fails', 'decide', 'not-proven'];

/**
 * The price and the checks in one line, for a phone: a tap opens them in full.
 *
 * @fires sheet-asked
 */
export class PriceBar extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    findings: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        background: var(--block);
      }
      button {
        display: flex;
        gap: 4px 12px;
        width: 100%;
        min-height: 54px;
        padding: 4px 14px;
        color: var(--block-ink);
        background: none;
        border: 0;
        border-radius: 0;
      }
      button:focus-visible {
        outline-offset: -4px;
      }
      .price {
        margin-right: auto;
        text-align: left;
      }
      b {
        display: block;
        font: 600 1.375rem / 1.1 var(--drawing-font);
      }
      small {
        font-size: 0.875rem;
        color: var(--block-soft);
      }
      .count {
        display: inline-flex;
        gap: 5px;
        align-items: center;
        padding: 2px 7px 2px 5px;
        color: var(--ink);
        background: var(--sheet);
        border-radius: var(--corner);
      }
      svg {
        flex: none;
        width: 16px;
        height: 16px;
        fill: none;
        stroke: currentColor;
        stroke-width: 2;
      }
    `,
  ];
  declare view: JobView;
  declare findings: readonly Finding[];
  readonly #follower = new MovedFollower(this, () => this.view.moved, sightIn);

  constructor() {
    super();
    this.findings = [];
  }

  override render(): TemplateResult {
    const sight = this.#follower.now;
    const scheme = sight === null ? this.view.scheme : sight.priced;
    const findings = sight?.findings ?? this.findings;
    return html`<button aria-haspopup="dialog" @click=${() => this.#asked()}>
      <span class="price">
        ${
          scheme === null
            ? html`<b>No price yet</b><small>Price and checks</small>`
            : html`<b>${pounds(scheme.totals.grossPence)}</b
                ><small>Range ${wholePounds(scheme.range.lowPence)} to ${wholePounds(scheme.range.highPence)}</small>`
        }
      </span>
      ${shownCounts.map((outcome) => countTemplate(findings, outcome))}
      <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M3 10.5 8 5.5l5 5"></path></svg>
      <span class="visually-hidden">Open price and checks</span>
    </button>`;
  }

  #asked(): void {
    this.dispatchEvent(new CustomEvent('sheet-asked', { bubbles: true, composed: true }));
  }
}

function countTemplate(findings: readonly Finding[], outcome: Outcome): TemplateResult | typeof nothing {
  const count = outcomeCount(findings, outcome);
  if (count === 0) return nothing;
  return html`<span class="count"
    ><outcome-mark .outcome=${outcome}></outcome-mark><span aria-hidden="true">${count}</span
    ><span class="visually-hidden">${countWords(outcome, count)}</span></span
  >`;
}
customElements.define('price-bar', PriceBar);
declare global {
  interface HTMLElementTagNameMap {
    'price-bar': PriceBar;
  }
}
