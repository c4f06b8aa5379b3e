import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { stillOpenOf } from '#drawing/shopping/still-open.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { otherSchemes } from '#engine/schemes/outcomes/other-schemes.ts';
import type { OutcomePlan, TurnedOut } from '#engine/schemes/outcomes/outcome-plan.ts';
import type { Packing } from '#engine/schemes/outcomes/packing.ts';
import { OutcomePacking } from '../../controllers/outcome-packing.ts';
import type { JobView, KitPart } from '../../job-view.ts';
import { pounds } from '../../written.ts';
import { controlsCss, stepCss } from '../shared-styles.ts';
import './cut-list.ts';
import './kit-bill.ts';
import './kit-switch.ts';
import './open-outcomes.ts';
import './shopping-list.ts';

/** The step Kit: everything that has to be in the van, as a bill, as a list to shop by, as what is cut from which length, and what of it is still open. */
export class KitStep extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    shown: { attribute: false },
    turnedOut: { state: true },
  };
  static override styles = [
    controlsCss,
    stepCss,
    css`
      kit-switch {
        margin: 8px 0 10px;
      }
      .open {
        margin: 0 0 10px;
        padding: 8px 10px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
        /* Room for what is said at its longest, so that the list does not jump when it is known. */
        box-sizing: border-box;
        min-height: calc(3lh + 16px);
      }
      .open.waits {
        color: var(--ink-soft);
        background: none;
        border-left-color: var(--line);
      }
      /* The shopping list has a sheet of its own, with its own head. */
      @media print {
        :host([shopping]) {
          padding: 0;
        }
        :host([shopping]) :is(h2, kit-switch, .open) {
          display: none;
        }
      }
    `,
  ];
  declare view: JobView;
  declare shown: KitPart;
  /** How things turned out on site, as long as somebody looks at what goes back. */
  declare private turnedOut: TurnedOut;
  readonly #packing = new OutcomePacking(this);

  constructor() {
    super();
    this.shown = 'bill';
    this.turnedOut = {};
    this.addEventListener('turned-out', (event) => {
      event.stopPropagation();
      this.turnedOut = (event as CustomEvent<TurnedOut>).detail;
    });
    this.addEventListener('pack-again', (event) => {
      event.stopPropagation();
      this.#packing.again();
    });
  }

  override willUpdate(): void {
    this.toggleAttribute('shopping', this.shown === 'shopping' && this.view.scheme !== null);
    this.#askOpen();
  }

  /** Asks what is open and what to buy then: every part of the kit says that something is. */
  #askOpen(): void {
    const { job, library, scheme, estimate, moving } = this.view;
    if (moving || scheme === null) return;
    const otherIds = otherSchemes(estimate.schemes, scheme.id, job.packFor);
    this.#packing.ask({ job, library, schemeId: scheme.id, otherIds, turnedOut: this.turnedOut });
  }

  /** What is bought for every chosen outcome of a scheme, as soon as that is worked out; null: what is counted. */
  #packedFor({ id }: SchemeEstimate): Packing | null {
    const answer = this.view.job.packFor === undefined ? null : this.#packing.state.answer;
    return answer?.plan.schemeId === id ? answer : null;
  }

  /** The scheme with what is bought for every chosen outcome in place of its own purchase. */
  #packed(scheme: SchemeEstimate): SchemeEstimate {
    const packing = this.#packedFor(scheme);
    return packing === null ? scheme : { ...scheme, purchase: packing.plan.purchase };
  }

  /** What is open of a scheme, as soon as that is worked out. */
  #openOf({ id }: SchemeEstimate): OutcomePlan | null {
    const { answer } = this.#packing.state;
    return answer?.plan.schemeId === id ? answer.plan : null;
  }

  /**
   * That things are open which this part of the kit does not serve, and where each of them is told. Its place is kept while that
   * is worked out: nothing below it moves when the answer comes.
   */
  #stillOpen(scheme: SchemeEstimate): TemplateResult {
    const plan = this.#openOf(scheme);
    if (plan === null)
      return html`<p class="open waits" role="status">
        ${this.#packing.state.status === 'failed' ? 'What is still open could not be worked out.' : 'Looking at what is still open…'}
      </p>`;
    const { words } = stillOpenOf(plan);
    if (words === '')
      return html`<p class="open waits" role="status">Nothing is open that this list does not serve.</p>`;
    return html`<p class="open" role="status">${words} See <em>Still open</em>.</p>`;
  }

  #inCase(): TemplateResult | typeof nothing {
    const { job } = this.view;
    if (job.packFor === undefined) return nothing;
    const { status, answer } = this.#packing.state;
    if (status !== 'done')
      return html`<p class="hint" role="status">
        ${status === 'failed' ? 'What is bought in case could not be added; what follows is as counted.' : 'Adding what is bought in case…'}
      </p>`;
    const extra = answer?.plan.extraPence ?? 0;
    if (extra === 0) return nothing;
    return html`<p class="hint">
      With what is bought in case, ${pounds(Math.abs(extra))} ${extra > 0 ? 'more' : 'less'} than as counted: see <em>Still open</em>.
    </p>`;
  }

  override render(): TemplateResult {
    const { scheme } = this.view;
    if (scheme === null)
      return html`<h2 tabindex="-1">Kit</h2>
        <p>Nothing to load yet: the bill is counted from a scheme. Make one in <em>Ways</em> once the new points are placed.</p>`;
    return html`<h2 tabindex="-1">Kit for ${scheme.name}</h2>
      <kit-switch .shown=${this.shown}></kit-switch>
      ${this.#part(scheme)}`;
  }

  #part(scheme: SchemeEstimate): TemplateResult {
    const { view } = this;
    switch (this.shown) {
      case 'bill':
        return html`${this.#stillOpen(scheme)}<kit-bill .view=${view} .scheme=${scheme}></kit-bill>`;
      case 'shopping':
        return html`${this.#stillOpen(scheme)}${this.#inCase()}<shopping-list .view=${view} .scheme=${scheme} .packing=${this.#packedFor(scheme)} .open=${this.#openOf(scheme)}></shopping-list>`;
      case 'cuts':
        return html`${this.#stillOpen(scheme)}${this.#inCase()}<cut-list .view=${view} .scheme=${this.#packed(scheme)}></cut-list>`;
      case 'open':
        return html`<open-outcomes
          .view=${view}
          .packing=${this.#packing.state}
          .turnedOut=${this.turnedOut}
        ></open-outcomes>`;
    }
  }
}
customElements.define('kit-step', KitStep);
declare global {
  interface HTMLElementTagNameMap {
    'kit-step': KitStep;
  }
}
