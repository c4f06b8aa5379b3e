import {
  css,
  html,
  LitElement,
  type PropertyDeclarations,
  type SVGTemplateResult,
  svg,
  type TemplateResult,
} from 'lit';
import type { Outcome } from '#engine/rules/finding.ts';

const shapes: Readonly<Record<Outcome, SVGTemplateResult>> = {
  // The drawings' own outlines: an octagon, a diamond, a square, an upright strip; passes are a tick.
  fails: svg`<path d="M5.5 1h5L15 5.5v5L10.5 15h-5L1 10.5v-5z"/><path class="sign" d="M5.5 5.5l5 5m0-5l-5 5"/>`,
  decide: svg`<path d="M8 .8 15.2 8 8 15.2.8 8z"/><path class="sign" d="M6.2 6.6a1.9 1.9 0 1 1 2.7 1.7c-.6.3-.9.6-.9 1.2m0 1.4v.8"/>`,
  'not-proven': svg`<path class="open" d="M1.5 1.5h13v13h-13z"/><path class="sign" d="M5 8h6"/>`,
  advice: svg`<path class="open" d="M4 1.2h8v13.6H4z"/><path class="sign" d="M8 7v4.5M8 4.2v.6"/>`,
  passes: svg`<path class="sign" d="M2.5 8.6l3.7 3.7 7.3-8.2"/>`,
};

/** The drawn mark of an outcome; the word stands beside it, so that it says nothing by itself. */
export class OutcomeMark extends LitElement {
  static override properties: PropertyDeclarations = { outcome: { type: String, reflect: true } };
  static override styles = css`
    :host {
      display: inline-block;
      flex: 0 0 auto;
      width: 16px;
      height: 16px;
      vertical-align: -3px;
      color: var(--ink-soft);
    }
    :host([outcome='fails']) {
      color: var(--fail);
    }
    :host([outcome='decide']),
    :host([outcome='not-proven']) {
      color: var(--ask);
    }
    :host([outcome='passes']) {
      color: var(--pass);
    }
    svg {
      display: block;
      width: 100%;
      height: 100%;
      fill: none;
      stroke: currentcolor;
      stroke-width: 1.5;
    }
    .sign {
      stroke-width: 1.8;
      stroke-linecap: round;
    }
    :host([outcome='not-proven']) .open {
      stroke-dasharray: 2.6 1.7;
    }
  `;
  declare outcome: Outcome;

  constructor() {
    super();
    this.outcome = 'advice';
  }

  override render(): TemplateResult {
    return html`<svg viewBox="0 0 16 16" aria-hidden="true">${shapes[this.outcome]}</svg>`;
  }
}
customElements.define('outcome-mark', OutcomeMark);
declare global {
  interface HTMLElementTagNameMap {
    'outcome-mark': OutcomeMark;
  }
}
