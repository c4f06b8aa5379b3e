import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { OutcomePlan, OutcomeQuestion, TurnedOut } from '#engine/schemes/outcomes/outcome-plan.ts';
import type { LaneState } from '../../controllers/worker-lane.ts';
import { packForAll } from '../../edits/pack-for.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { areLit } from '../../lit-things.ts';
import type { PackAnswer } from '../../outcomes/pack-answers.ts';
import { counted, pounds } from '../../written.ts';
import { controlsCss } from '../shared-styles.ts';
import './outcome-question.ts';
import './take-back-list.ts';

/**
 * What nobody has looked at and what is bought hangs on: which outcomes to have the kit along for, what that costs more,
 * and what goes back. @fires pack-again - ask once more what failed
 */
export class OpenOutcomes extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    packing: { attribute: false },
    turnedOut: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      .sum {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 24px;
        align-items: baseline;
        margin: 8px 0;
        padding: 10px 12px;
        background: var(--sheet);
        border: 1px solid var(--rule);
        border-radius: var(--corner);
      }
      .sum b {
        font: 600 1.0625rem / 1.25 var(--drawing-font);
      }
      .tools {
        margin: 0 0 10px;
      }
    `,
  ];
  declare view: JobView;
  declare packing: LaneState<PackAnswer>;
  declare turnedOut: TurnedOut;

  override render(): TemplateResult {
    const { answer, status, trouble } = this.packing;
    if (status === 'failed')
      return html`<p role="status">What is open could not be worked out: ${trouble}</p>
        <button @click=${() => this.dispatchEvent(new CustomEvent('pack-again', { bubbles: true, composed: true }))}>Try again</button>`;
    if (answer === null) return html`<p class="hint" role="status">Working out what is open…</p>`;
    return this.#worked(answer);
  }

  #worked({ plan, back }: PackAnswer): TemplateResult {
    const { questions } = plan;
    if (questions.length === 0)
      return html`<p>Nothing that is open changes what to buy: the survey tells all that the kit hangs on.</p>`;
    const isNow = this.packing.status === 'done';
    const either = questions.filter(({ outcomes }) => outcomes.filter(({ isServed }) => isServed).length > 1);
    return html`<p class="hint">
        Nobody has looked at these yet, and what is bought hangs on them. Tick every outcome to have the kit along for: the shopping
        list then serves them all, in whatever combination, at the least extra cost.
      </p>
      <div aria-busy=${!isNow}>
        ${this.#sum(plan)} ${this.#offer(plan)}
        ${questions.map(
          (question) =>
            html`<outcome-question .question=${question} .lit=${areLit(this.view.lit, question.subjects)}></outcome-question>`,
        )}
        ${
          either.length === 0
            ? nothing
            : html`<take-back-list .questions=${either} .back=${back} .turnedOut=${this.turnedOut}></take-back-list>`
        }
      </div>`;
  }

  #sum({ extraPence, purchase, trip }: OutcomePlan): TemplateResult {
    const more =
      extraPence === 0
        ? 'no more than as counted'
        : `${pounds(Math.abs(extraPence))} ${extraPence > 0 ? 'more' : 'less'} than as counted`;
    return html`<p class="sum" role="status">
      <span><b>${pounds(purchase.pence)}</b> to buy: ${more}${purchase.proved ? '' : ', perhaps not the least'}</span>
      ${trip === null ? nothing : html`<span>Going back for it: ${trip.minutes} min, ${pounds(trip.pence)} at your rate</span>`}
    </p>`;
  }

  /** One tap for all that costs less than fetching it later. */
  #offer({ questions, trip }: OutcomePlan): TemplateResult | typeof nothing {
    const worth = trip === null ? [] : questions.filter((question) => isWorth(question, trip.pence));
    if (worth.length === 0 || trip === null) return nothing;
    const words = worth.length === 1 ? 'it' : `all ${worth.length}`;
    return html`<div class="tools">
      <button
        @click=${() => send(this, 'job-edit', packForAll(worth, `Buy for either outcome, ${counted(worth.length, 'question')}`))}
      >
        Have both along where that costs less than a trip (${words})
      </button>
    </div>`;
  }
}

/** Whether having every outcome along costs less than a trip; which scheme is carried out is asked by itself. */
function isWorth({ kind, outcomes }: OutcomeQuestion, tripPence: number): boolean {
  const open = outcomes.filter(({ isServed }) => !isServed);
  const pence = open.reduce((sum, { addsPence }) => sum + (addsPence ?? 0), 0);
  return kind !== 'scheme' && open.length > 0 && pence < tripPence;
}
customElements.define('open-outcomes', OpenOutcomes);
declare global {
  interface HTMLElementTagNameMap {
    'open-outcomes': OpenOutcomes;
  }
}
