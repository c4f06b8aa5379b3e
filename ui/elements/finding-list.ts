import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { outcomeOrder, outcomeWords } from '#drawing/marks.ts';
import type { CircuitProof } from '#engine/proof/circuit-proof.ts';
import type { Finding, Outcome } from '#engine/rules/finding.ts';
import { keepFocus } from '../controllers/keep-focus.ts';
import { MovedFollower } from '../controllers/moved-follower.ts';
import { hasRemedy } from '../edits/add-remedy.ts';
import type { JobView } from '../job-view.ts';
import { withCostsOfBefore } from '../moved/costs-of-before.ts';
import './finding-card.ts';
import { countWords } from '#drawing/count-words.ts';
import { circuitOf } from './proof/circuit-of.ts';
import { controlsCss } from './shared-styles.ts';

/** Outcomes that say nothing of urgency are folded. */
const folded: ReadonlySet<Outcome> = new Set(['advice', 'passes']);

/** The checks of what is shown, gravest first. */
export class FindingList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    findings: { attribute: false },
    opened: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        padding: 0 14px 20px;
      }
      h2 {
        display: flex;
        justify-content: space-between;
        gap: 8px;
        padding: 10px 14px 6px;
        margin: 0 -14px;
        font-size: 0.9375rem;
        background: var(--paper);
      }
      h2 .counts {
        font: 500 0.875rem / 1.5 var(--drawing-font);
        color: var(--ink-soft);
        text-align: end;
        text-wrap: balance;
      }
      ul {
        display: grid;
        gap: 6px;
        margin: 0 0 10px;
        padding: 0;
        list-style: none;
      }
    `,
  ];
  declare view: JobView;
  declare findings: readonly Finding[];
  /** Folded outcomes that were opened; only these are drawn, as there may be a hundred passes. */
  declare private opened: ReadonlySet<Outcome>;
  readonly #follower = new MovedFollower(
    this,
    () => this.view.moved,
    ({ sight }) => sight?.findings ?? null,
  );

  constructor() {
    super();
    keepFocus(this);
    this.opened = new Set();
    this.findings = [];
  }

  override render(): TemplateResult {
    const now = this.#now;
    const counts = outcomeOrder
      .map((outcome) => [outcome, findingsOf(now, outcome).length] as const)
      .filter(([, count]) => count > 0)
      .map(([outcome, count]) => countWords(outcome, count));
    const labelOf = labelsOf(this.view.scheme?.worked ?? this.view.estimate.asFound.worked);
    return html`<h2 part="counts">Checks <span class="counts">${counts.join(' · ')}</span></h2>
      ${outcomeOrder.map((outcome) => this.#group(outcome, findingsOf(now, outcome), labelOf))}`;
  }

  get #proofs(): readonly CircuitProof[] {
    const { step, scheme, estimate } = this.view;
    return (step === 'as-found' ? null : scheme)?.proof ?? estimate.asFound.proof;
  }

  /** Under the hand as they are worked out elsewhere, with what remedies cost before. */
  get #now(): readonly Finding[] {
    const moved = this.#follower.now;
    return moved === null ? this.findings : withCostsOfBefore(moved, this.findings);
  }

  #group(outcome: Outcome, findings: readonly Finding[], labelOf: LabelOf): TemplateResult | typeof nothing {
    if (findings.length === 0) return nothing;
    const cards = (): TemplateResult => html`<ul>
      ${findings.map((finding) => html`<li>${this.#card(finding, labelOf)}</li>`)}
    </ul>`;
    if (!folded.has(outcome)) return cards();
    const open = this.opened.has(outcome);
    return html`<details ?open=${open} @toggle=${(event: Event) => this.#toggled(outcome, event)}>
      <summary>${outcomeWords[outcome]} (${findings.length})</summary>
      ${open ? cards() : nothing}
    </details>`;
  }

  #toggled(outcome: Outcome, event: Event): void {
    const { open } = event.currentTarget as HTMLDetailsElement;
    if (open === this.opened.has(outcome)) return;
    const others = [...this.opened].filter((one) => one !== outcome);
    this.opened = new Set(open ? [...others, outcome] : others);
  }

  #card(finding: Finding, labelOf: LabelOf): TemplateResult {
    const shown = this.view.step === 'as-found' ? null : (this.view.scheme?.worked.scheme ?? null);
    // A scheme that was only found takes no remedy before it is kept.
    const isOwn = this.view.job.schemes.some(({ id }) => id === shown?.id);
    const scheme = isOwn ? shown : null;
    const isRemedied = scheme !== null && finding.fix !== null && hasRemedy(scheme, finding.fix);
    return html`<finding-card
      .finding=${finding}
      .subject=${labelOf(finding.subject)}
      .schemeId=${scheme?.id ?? null}
      .remedied=${isRemedied}
      .circuitId=${circuitOf(this.#proofs, finding.subject)}
      .lit=${this.view.lit.has(finding.subject) && this.view.chosen === finding.subject}
    ></finding-card>`;
  }
}

const findingsOf = (findings: readonly Finding[], wanted: Outcome): readonly Finding[] =>
  findings.filter(({ outcome }) => outcome === wanted);
customElements.define('finding-list', FindingList);
declare global {
  interface HTMLElementTagNameMap {
    'finding-list': FindingList;
  }
}
