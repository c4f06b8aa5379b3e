import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { hrefOf } from '../controllers/router.ts';
import { send } from '../job-events.ts';
import { type JobView, type Step, stepNames } from '../job-view.ts';
import { thingFacts } from '../thing-facts.ts';
import { controlsCss } from './shared-styles.ts';
import './wanted/nearer-offer.ts';
import './ways/chosen-way.ts';

/** The thing that is looked at: what it is, what is known of it, and where it can be changed. */
export class ChosenCard extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    worked: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        padding: 12px 14px;
        background: var(--sheet);
        border-bottom: 1px solid var(--line);
      }
      .head {
        display: flex;
        gap: 8px;
        align-items: flex-start;
        justify-content: space-between;
      }
      h2 {
        font-size: 1rem;
      }
      h2 span {
        display: block;
        font-weight: 500;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      dl {
        display: grid;
        grid-template-columns: auto 1fr;
        gap: 2px 14px;
        margin: 6px 0 0;
        font-size: 0.875rem;
      }
      dt {
        color: var(--ink-soft);
      }
      dd {
        margin: 0;
      }
      p {
        margin: 6px 0 0;
        font-size: 0.875rem;
      }
    `,
  ];
  declare view: JobView;
  declare worked: Worked;

  override render(): TemplateResult | typeof nothing {
    const { chosen, step } = this.view;
    if (chosen === null) return nothing;
    const known = thingFacts(this.worked, chosen);
    const there = known?.step ?? null;
    return html`<div class="head">
        <h2>${labelsOf(this.worked)(chosen)}<span>${known?.kind}</span></h2>
        <button
          class="small quiet"
          @click=${() => {
            send(this, 'things-lit', { subjectIds: [] });
            send(this, 'thing-chosen', { subjectId: null });
          }}
        >
          Close
        </button>
      </div>
      <dl>${known?.facts.map(([name, value]) => html`<dt>${name}</dt><dd>${value}</dd>`)}</dl>
      ${
        // In Wanted the point's own form says so.
        step === 'ways' &&
        this.worked.job.points.some(({ id, status }) => id === chosen && status === 'wanted')
          ? html`<nearer-offer .view=${this.view} .pointId=${chosen}></nearer-offer>`
          : nothing
      }
      ${step === 'ways' ? html`<chosen-way .view=${this.view}></chosen-way>` : nothing}
      ${
        there === null || there === step
          ? nothing
          : html`<p>
              <a href=${this.#hrefIn(there, chosen)}>Change it in ${stepNames[there]}</a>
            </p>`
      }`;
  }

  #hrefIn(step: Step, on: string): string {
    const { job, scheme, storeyId } = this.view;
    const looked = { scheme: scheme?.id ?? null, storey: storeyId === '' ? null : storeyId, on };
    return hrefOf({ jobId: job.id, step, compare: false, a: null, b: null, ...looked });
  }
}
customElements.define('chosen-card', ChosenCard);
declare global {
  interface HTMLElementTagNameMap {
    'chosen-card': ChosenCard;
  }
}
