import { css, html, LitElement, nothing, type PropertyDeclarations, svg, type TemplateResult } from 'lit';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { schemeCable } from '#engine/schemes/scheme-cable.ts';
import { send } from '../job-events.ts';
import { counted, hoursWritten, metresShort, pounds } from '../written.ts';
import './outcome-mark.ts';
import { cheapestWords, verdictOf } from '#drawing/verdict.ts';
import { controlsCss } from './shared-styles.ts';

/** One scheme as a card: name, price, cable, joints, hours, what it fails, and its price as a bar. */
export class SchemeCard extends LitElement {
  static override properties: PropertyDeclarations = {
    scheme: { attribute: false },
    shown: { type: Boolean },
    cheapest: { type: Boolean },
    scalePence: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      button {
        display: grid;
        grid-template-rows: auto 1fr auto auto;
        gap: 2px;
        width: 100%;
        height: 100%;
        padding: 8px 12px;
        text-align: left;
        justify-content: stretch;
        font-weight: 400;
      }
      button[aria-pressed='true'] {
        font-weight: 400;
        color: var(--ink);
        background: var(--sheet);
        box-shadow: inset 0 0 0 1px var(--copper);
      }
      .head {
        display: flex;
        gap: 10px;
        justify-content: space-between;
        font: 600 1rem/1.25 var(--drawing-font);
      }
      .name {
        display: -webkit-box;
        overflow: hidden;
        font-size: 0.875rem;
        line-height: 1.3;
        color: var(--ink-soft);
        -webkit-box-orient: vertical;
        -webkit-line-clamp: 2;
      }
      .facts {
        display: flex;
        flex-wrap: wrap;
        gap: 0 12px;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      .facts b {
        font-weight: 600;
        color: var(--ink);
      }
      .verdict {
        display: inline-flex;
        gap: 5px;
        align-items: center;
        color: var(--ask);
        font: 600 0.875rem / 1.25 var(--drawing-font);
      }
      .verdict.fails {
        color: var(--fail);
      }
      .verdict.passes {
        color: var(--pass);
      }
      svg.bar {
        display: block;
        width: 100%;
        height: 6px;
      }
      .ground {
        fill: var(--rule);
      }
      .price {
        fill: var(--copper);
      }
      .failing {
        fill: var(--removed);
      }
    `,
  ];
  declare scheme: SchemeEstimate;
  declare shown: boolean;
  declare cheapest: boolean;
  /** What the whole width of the bar stands for, the same for all cards. */
  declare scalePence: number;

  constructor() {
    super();
    this.shown = false;
    this.cheapest = false;
    this.scalePence = 1;
  }

  override render(): TemplateResult {
    const { scheme } = this;
    const { cableMm, typicalRuns } = schemeCable(scheme.runs);
    const joints = scheme.joints.filter((joint) => joint.state === 'new').length;
    const width = Math.min(100, (100 * scheme.totals.grossPence) / Math.max(1, this.scalePence));
    return html`<button
      aria-pressed=${this.shown}
      @click=${() => send(this, 'scheme-shown', { schemeId: scheme.id })}
    >
      <span class="head"
        ><span>${pounds(scheme.totals.grossPence)}</span>${this.#verdict()}</span
      >
      <span class="name">${scheme.name}</span>
      <span class="facts"
        ><span>${typicalRuns > 0 ? 'about ' : nothing}<b>${metresShort(cableMm)}</b> cable</span><span>${counted(joints, 'joint')}</span
        ><span><b>${hoursWritten(scheme.totals.hours)}</b></span>${
          this.cheapest ? html`<span>${cheapestWords(scheme)}</span>` : nothing
        }</span
      >
      <svg class="bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
        ${svg`<rect class="ground" width="100" height="4"/><rect class=${scheme.complies === 'no' ? 'failing' : 'price'} width=${width} height="4"/>`}
      </svg>
    </button>`;
  }

  /** The gravest thing that the checks leave open, in shape and word. */
  #verdict(): TemplateResult {
    const { outcome, short } = verdictOf(this.scheme);
    return html`<span class=${`verdict ${outcome}`}
      ><outcome-mark .outcome=${outcome}></outcome-mark>${short}</span
    >`;
  }
}
customElements.define('scheme-card', SchemeCard);
declare global {
  interface HTMLElementTagNameMap {
    'scheme-card': SchemeCard;
  }
}
