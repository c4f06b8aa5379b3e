import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { send } from '../../job-events.ts';
import { type PaperPart, paperParts } from '../../job-view.ts';
import { controlsCss, segmentsCss } from '../shared-styles.ts';

const names: Readonly<Record<PaperPart, string>> = {
  files: 'Files and quotations',
  connections: 'Connections',
  tasks: 'Tasks',
  floors: 'Cuts and floors',
  tests: 'Tests',
};

/** Which of the papers are shown. @fires step-part-shown */
export class PapersSwitch extends LitElement {
  static override properties: PropertyDeclarations = { shown: { attribute: false } };
  static override styles = [controlsCss, segmentsCss];
  declare shown: PaperPart;

  constructor() {
    super();
    this.shown = 'files';
  }

  override render(): TemplateResult {
    return html`<div role="group" aria-label="Which papers are shown">
      ${paperParts.map(
        (part) =>
          html`<button aria-pressed=${part === this.shown} @click=${() => send(this, 'step-part-shown', { part })}>
            ${names[part]}
          </button>`,
      )}
    </div>`;
  }
}
customElements.define('papers-switch', PapersSwitch);
declare global {
  interface HTMLElementTagNameMap {
    'papers-switch': PapersSwitch;
  }
}
