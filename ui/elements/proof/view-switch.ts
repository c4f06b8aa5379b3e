import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { send } from '../../job-events.ts';
import { type PlanView, planViews } from '../../job-view.ts';
import { controlsCss, segmentsCss } from '../shared-styles.ts';

/** What is shown of the house: its plan, the circuit as it is wired, or the volt drop along it. @fires view-shown */
export class ViewSwitch extends LitElement {
  static override properties: PropertyDeclarations = {
    shown: { attribute: false },
    ring: { type: Boolean },
  };
  static override styles = [
    controlsCss,
    segmentsCss,
    css`
      button {
        white-space: nowrap;
      }
    `,
  ];
  declare shown: PlanView;
  /** True where the circuit is a ring: its picture is then called one. */
  declare ring: boolean;

  constructor() {
    super();
    this.shown = 'plan';
    this.ring = true;
  }

  override render(): TemplateResult {
    const names = { plan: 'Plan', circuit: this.ring ? 'Ring' : 'Circuit', drop: 'Volt drop' } as const;
    return html`<div role="group" aria-label="What is shown">
      ${planViews.map(
        (view) =>
          html`<button aria-pressed=${view === this.shown} @click=${() => send(this, 'view-shown', { view })}>
            ${names[view]}
          </button>`,
      )}
    </div>`;
  }
}
customElements.define('view-switch', ViewSwitch);
declare global {
  interface HTMLElementTagNameMap {
    'view-switch': ViewSwitch;
  }
}
