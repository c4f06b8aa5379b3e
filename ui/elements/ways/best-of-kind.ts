import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { BestOfKind as Best } from '#engine/schemes/search/found-schemes.ts';
import type { Candidate } from '../../found-ways/candidate.ts';
import { kindWords } from '../../found-ways/made-of.ts';
import { noneWords } from '../../found-ways/none-words.ts';
import { send } from '../../job-events.ts';
import { pounds } from '../../written.ts';
import { controlsCss } from '../shared-styles.ts';

/** The best found scheme of each kind, or why there is none. @fires ways-asked */
export class BestOfKind extends LitElement {
  static override properties: PropertyDeclarations = {
    best: { attribute: false },
    candidates: { attribute: false },
    tried: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        border-top: 1px solid var(--rule);
      }
      button {
        justify-content: space-between;
        width: 100%;
        min-height: 40px;
        padding: 4px 6px;
        font-size: 0.875rem;
        font-weight: 400;
        text-align: left;
        background: none;
        border: 0;
      }
      button b {
        flex: none;
        font: 600 0.9375rem/1.3 var(--drawing-font);
      }
      .none {
        padding: 8px 6px;
        font-size: 0.875rem;
      }
      @media (max-width: 43.75em), (pointer: coarse) {
        button {
          min-height: 44px;
        }
      }
    `,
  ];
  declare best: readonly Best[];
  declare candidates: readonly Candidate[];
  declare tried: string | null;

  constructor() {
    super();
    this.best = [];
    this.candidates = [];
    this.tried = null;
  }

  override render(): TemplateResult {
    return html`<ul>
      ${this.best.map((one) => html`<li>${this.#row(one)}</li>`)}
    </ul>`;
  }

  #row(one: Best): TemplateResult {
    const { kind, schemeId } = one;
    const at = this.candidates.findIndex(({ scheme }) => scheme.id === schemeId);
    const candidate = this.candidates[at];
    if (candidate === undefined)
      return html`<div class="none">
        ${kindWords[kind]}: <span class="hint">${noneWords(one) ?? 'dearer than all that are listed here'}</span>
      </div>`;
    const { scheme, totals } = candidate;
    return html`<button
      aria-pressed=${scheme.id === this.tried}
      @click=${() => {
        send(this, 'ways-asked', { do: 'try', scheme });
        this.dispatchEvent(new CustomEvent('mark-chosen', { detail: { schemeId: scheme.id } }));
      }}
    >
      <span>${kindWords[kind]}${at === 0 ? html` <span class="hint">cheapest of all</span>` : nothing}</span>
      <span>way ${at + 1} <b>${pounds(totals.grossPence)}</b></span>
    </button>`;
  }
}
customElements.define('best-of-kind', BestOfKind);
declare global {
  interface HTMLElementTagNameMap {
    'best-of-kind': BestOfKind;
  }
}
