import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { send } from '../../job-events.ts';
import { type KitPart, kitParts } from '../../job-view.ts';
import { controlsCss, segmentsCss } from '../shared-styles.ts';

const names: Readonly<Record<KitPart, string>> = {
  bill: 'Bill',
  shopping: 'Shopping list',
  cuts: 'Cut list',
  open: 'Still open',
};

/** Which part of the kit is shown. @fires step-part-shown */
export class KitSwitch extends LitElement {
  static override properties: PropertyDeclarations = { shown: { attribute: false } };
  static override styles = [controlsCss, segmentsCss];
  declare shown: KitPart;

  constructor() {
    super();
    this.shown = 'bill';
  }

  override render(): TemplateResult {
    return html`<div role="group" aria-label="What of the kit is shown">
      ${kitParts.map(
        (part) =>
          html`<button aria-pressed=${part === this.shown} @click=${() => send(this, 'step-part-shown', { part })}>
            ${names[part]}
          </button>`,
      )}
    </div>`;
  }
}
customElements.define('kit-switch', KitSwitch);
declare global {
  interface HTMLElementTagNameMap {
    'kit-switch': KitSwitch;
  }
}
