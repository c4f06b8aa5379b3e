import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { JobView, KitPart } from '../../job-view.ts';
import { controlsCss, stepCss } from '../shared-styles.ts';
import './cut-list.ts';
import './kit-bill.ts';
import './kit-switch.ts';
import './shopping-list.ts';

/** The step Kit: everything that has to be in the van, as a bill, as a list to shop by, and as what is cut from which length. */
export class KitStep extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    shown: { attribute: false },
  };
  static override styles = [
    controlsCss,
    stepCss,
    css`
      kit-switch {
        margin: 8px 0 10px;
      }
      /* The shopping list has a sheet of its own, with its own head. */
      @media print {
        :host([shopping]) {
          padding: 0;
        }
        :host([shopping]) :is(h2, kit-switch) {
          display: none;
        }
      }
    `,
  ];
  declare view: JobView;
  declare shown: KitPart;

  constructor() {
    super();
    this.shown = 'bill';
  }

  override willUpdate(): void {
    this.toggleAttribute('shopping', this.shown === 'shopping' && this.view.scheme !== null);
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
        return html`<kit-bill .view=${view} .scheme=${scheme}></kit-bill>`;
      case 'shopping':
        return html`<shopping-list .view=${view} .scheme=${scheme}></shopping-list>`;
      case 'cuts':
        return html`<cut-list .view=${view} .scheme=${scheme}></cut-list>`;
    }
  }
}
customElements.define('kit-step', KitStep);
declare global {
  interface HTMLElementTagNameMap {
    'kit-step': KitStep;
  }
}
