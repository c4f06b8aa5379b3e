import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { outcomeWords } from '#drawing/marks.ts';
import { protectionChoices } from '#engine/protection-choices.ts';
import type { RcdChoice, RcdChoices } from '#engine/schemes/rcd-choices.ts';
import type { Job } from '#model/job.ts';
import type { Scheme } from '#model/scheme.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { chooseProtection } from '../../edits/choose-protection.ts';
import { remedyNames } from '../../edits/remedies.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { poundsMore } from '../../written.ts';
import { controlsCss } from '../shared-styles.ts';

/** The ways to an RCD side by side, worked out when somebody opens them: what each costs, and what it leaves. */
export class RcdWays extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    scheme: { attribute: false },
    worked: { state: true },
    open: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        margin: 0 0 10px;
      }
      h4 {
        margin: 8px 0 4px;
        font: 500 0.875rem/1.35 var(--text-font);
        color: var(--ink-soft);
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .ways > li {
        display: grid;
        grid-template-columns: 1fr auto;
        gap: 4px 10px;
        align-items: center;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
      }
      .caveats {
        grid-column: 1 / -1;
        padding-left: 1.1em;
        list-style: disc;
      }
      strong {
        font-weight: 600;
        white-space: nowrap;
      }
      b {
        font-weight: 600;
      }
    `,
  ];
  declare view: JobView;
  declare scheme: Scheme;
  /** What was worked out, and for which job. */
  declare private worked: {
    readonly job: Job;
    readonly schemeId: string;
    readonly all: readonly RcdChoices[];
  } | null;
  declare private open: boolean;
  #later: ReturnType<typeof setTimeout> | null = null;

  constructor() {
    super();
    keepFocus(this);
    this.worked = null;
    this.open = false;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#forget();
  }

  override updated(): void {
    if (this.open && !this.view.moving && !this.#isWorked) this.#workSoon();
  }

  override render(): TemplateResult {
    return html`<details
      ?open=${this.open}
      @toggle=${(event: Event) => {
        this.open = (event.target as HTMLDetailsElement).open;
      }}
    >
      <summary>Ways to an RCD, side by side</summary>
      ${this.open ? this.#all() : nothing}
    </details>`;
  }

  get #isWorked(): boolean {
    return this.worked?.job === this.view.job && this.worked.schemeId === this.scheme.id;
  }

  /** In a task of its own, when the hand rests: every way is worked, checked and priced whole. */
  #workSoon(): void {
    this.#forget();
    this.#later = setTimeout(() => {
      const { job, library } = this.view;
      this.worked = { job, schemeId: this.scheme.id, all: protectionChoices(job, library, this.scheme.id) };
    }, 50);
  }

  #forget(): void {
    if (this.#later !== null) clearTimeout(this.#later);
    this.#later = null;
  }

  #all(): TemplateResult | readonly TemplateResult[] {
    if (this.worked === null || this.worked.schemeId !== this.scheme.id)
      return html`<p class="hint" role="status">Working them out…</p>`;
    if (this.worked.all.length === 0)
      return html`<p class="hint">No circuit of this scheme needs another RCD.</p>`;
    const labelOf = labelsOf(this.view.scheme?.worked ?? this.view.estimate.asFound.worked);
    return this.worked.all.map(
      (one) =>
        html`<h4>${labelOf(one.circuit)}</h4>
          <ul class="ways" aria-busy=${String(!this.#isWorked)}>
            ${one.choices.map((choice) => this.#choice(choice, one.choices, labelOf))}
          </ul>`,
    );
  }

  #choice(choice: RcdChoice, all: readonly RcdChoice[], labelOf: LabelOf): TemplateResult {
    const words = choiceWords(choice, labelOf);
    return html`<li>
      <span>${words} ${choice.isChosen ? nothing : html`<strong>${poundsMore(choice.pence)}</strong>`}</span>
      ${
        choice.isChosen
          ? html`<span class="hint">In this scheme</span>`
          : html`<button
              class="small"
              aria-label=${`Choose: ${words}`}
              @click=${() => send(this, 'job-edit', chooseProtection(this.scheme.id, choice, all))}
            >
              Choose
            </button>`
      }
      ${
        choice.caveats.length === 0
          ? html`<span class="hint">The checks of RCDs and boards have nothing against it.</span>`
          : html`<ul class="caveats hint">
              ${choice.caveats.map(({ outcome, message }) => html`<li><b>${outcomeWords[outcome]}:</b> ${message}</li>`)}
            </ul>`
      }
    </li>`;
  }
}

/** One device, or one at each of several outlets. */
function choiceWords({ remedies }: RcdChoice, labelOf: LabelOf): string {
  const [first] = remedies;
  if (first === undefined) return '';
  const isAtPoints = first.kind === 'rcd-outlet' || first.kind === 'rcd-unit';
  const name = remedyNames[first.kind];
  return isAtPoints ? `${name}: ${remedies.map(({ at }) => labelOf(at ?? '')).join(', ')}` : name;
}
customElements.define('rcd-ways', RcdWays);
declare global {
  interface HTMLElementTagNameMap {
    'rcd-ways': RcdWays;
  }
}
