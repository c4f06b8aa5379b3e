import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { outcomeWords } from '#drawing/marks.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { addRemedy } from '../edits/add-remedy.ts';
import { remedyNames } from '../edits/remedies.ts';
import { send } from '../job-events.ts';
import type { PlanView } from '../job-view.ts';
import { poundsMore } from '../written.ts';
import './outcome-mark.ts';
import { controlsCss } from './shared-styles.ts';

/** The rules whose finding can be seen in the picture of a circuit, and in which. */
const pictureOfRule: ReadonlyMap<string, PlanView> = new Map([
  ['VD1', 'drop'],
  ['ZS1', 'circuit'],
  ['LS1', 'circuit'],
  ['AD1', 'circuit'],
]);

/** One finding: mark and word, what it speaks of, what was found against the limit, what would put it right. */
export class FindingCard extends LitElement {
  static override properties: PropertyDeclarations = {
    finding: { attribute: false },
    subject: { type: String },
    schemeId: { attribute: false },
    remedied: { type: Boolean },
    circuitId: { attribute: false },
    lit: { type: Boolean, reflect: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        background: var(--sheet);
        border: 1px solid var(--line);
        border-left-width: 4px;
        border-radius: var(--corner);
      }
      :host([outcome='fails']) {
        border-left-color: var(--fail);
      }
      :host([outcome='decide']),
      :host([outcome='not-proven']) {
        border-left-color: var(--ask);
      }
      :host([outcome='passes']) {
        border-left-color: var(--pass);
      }
      :host([lit]) {
        outline: 2px solid var(--copper);
      }
      .card {
        display: block;
        width: 100%;
        min-height: 44px;
        padding: 8px 10px 6px;
        font: 400 0.875rem / 1.4 var(--text-font);
        text-align: left;
        background: none;
        border: 0;
      }
      .head {
        display: flex;
        gap: 6px;
        align-items: center;
        font: 600 0.875rem / 1.3 var(--drawing-font);
      }
      .head .word {
        flex: none;
      }
      .head .about {
        margin-left: auto;
        text-align: right;
        font-weight: 500;
        color: var(--ink-soft);
      }
      strong {
        font-weight: 600;
      }
      .more {
        padding: 0 10px 8px;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      .more p {
        margin: 0 0 4px;
      }
      .figures {
        font: 600 0.875rem / 1.4 var(--drawing-font);
        color: var(--ink);
      }
      .stop {
        color: var(--fail);
        font-weight: 600;
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 6px 10px;
        align-items: center;
        justify-content: space-between;
      }
    `,
  ];
  declare finding: Finding;
  /** The subject as people know it. */
  declare subject: string;
  /** The shown scheme, to which a remedy may be added; null where there is none. */
  declare schemeId: string | null;
  /** True when the scheme has the finding's remedy already. */
  declare remedied: boolean;
  /** The circuit in whose picture the finding can be seen; null where it is about none. */
  declare circuitId: string | null;
  declare lit: boolean;

  constructor() {
    super();
    this.remedied = false;
    this.subject = '';
    this.schemeId = null;
    this.circuitId = null;
    this.lit = false;
  }

  override willUpdate(): void {
    this.setAttribute('outcome', this.finding.outcome);
  }

  override render(): TemplateResult {
    const { finding } = this;
    const figures = figuresOf(finding);
    return html`<button class="card" aria-pressed=${this.lit} @click=${() => this.#show()}>
        <span class="head"
          ><outcome-mark .outcome=${finding.outcome}></outcome-mark><span class="word">${outcomeWords[finding.outcome]}</span>
          <span class="about">${this.subject}</span></span
        >
        <span><strong>${finding.title}.</strong> ${finding.message}</span>
      </button>
      <div class="more">
        ${
          finding.stopGate && finding.outcome !== 'passes'
            ? html`<p class="stop">Stop: work must not go on before this is settled.</p>`
            : nothing
        }
        ${figures === null ? nothing : html`<p class="figures">${figures}</p>`}
        ${finding.remedy === null ? nothing : html`<p>${finding.remedy}</p>`}
        <div class="row">
          <span>${finding.rule} · ${finding.source}${finding.origin === 'found' ? ' · as found' : nothing}</span>
          ${this.#pictureButton()}${this.#fixButton()}
        </div>
      </div>`;
  }

  #pictureButton(): TemplateResult | typeof nothing {
    const { rule, subject } = this.finding;
    const { circuitId } = this;
    const view = pictureOfRule.get(rule);
    if (view === undefined || circuitId === null) return nothing;
    const show = (): void => {
      send(this, 'things-lit', { subjectIds: [subject] });
      send(this, 'view-shown', { view, circuitId, subjectId: subject });
    };
    return html`<button class="small" @click=${show}>Show in the circuit</button>`;
  }

  #fixButton(): TemplateResult | typeof nothing {
    const { fix, consequencePence } = this.finding;
    if (fix === null || this.schemeId === null) return nothing;
    if (this.remedied) return html`<span>The scheme has this remedy.</span>`;
    const price = consequencePence === null ? '' : ` (${poundsMore(consequencePence)})`;
    return html`<button class="small" @click=${() => this.#addFix()}>Add this remedy${price}</button>`;
  }

  #addFix(): void {
    const { fix } = this.finding;
    if (fix === null || this.schemeId === null) return;
    // Its button goes with the remedy taken; the place in the list stays, whatever comes to stand there.
    this.renderRoot.querySelector<HTMLElement>('.card')?.focus({ preventScroll: true });
    send(this, 'job-edit', addRemedy(this.schemeId, fix, remedyNames[fix.kind]));
  }

  #show(): void {
    const { subject } = this.finding;
    if (this.lit) send(this, 'things-lit', { subjectIds: [] });
    else {
      send(this, 'things-lit', { subjectIds: [subject] });
      send(this, 'thing-chosen', { subjectId: subject });
    }
  }
}

/** What was found against the limit; null where the rule has no two numbers. */
function figuresOf({ actual, limit, unit }: Finding): string | null {
  if (typeof actual !== 'number' || typeof limit !== 'number') return null;
  const of = unit === null ? '' : ` ${unit}`;
  return `${actual}${of}; the limit is ${limit}${of}`;
}
customElements.define('finding-card', FindingCard);
declare global {
  interface HTMLElementTagNameMap {
    'finding-card': FindingCard;
  }
}
