import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { insteadOf } from '#drawing/shopping/took-instead.ts';
import {
  type ActualMetres,
  type ActualStage,
  type ActualTask,
  jobAgainstActual,
} from '#engine/labour/against-actual.ts';
import { shoppingListOf } from '#engine/price/shopping/shopping-list-of.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { setActuallyUsed, setActualStage, setActualTask, setTookInstead } from '../../edits/actuals.ts';
import { type JobEdit, send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { hundredths } from '../../written.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { workStages } from '../price/work-stages.ts';
import { controlsCss } from '../shared-styles.ts';

const hours = (minutes: number): string => `${hundredths(minutes / 60)} h`;

/** What the job took in the end, written down beside what was reckoned for the shown scheme. */
export class ActualWork extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      ul {
        margin: 0 0 12px;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 132px;
        gap: 2px 12px;
        align-items: center;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
      }
      .hint {
        margin: 0;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult | typeof nothing {
    const { scheme } = this.view;
    if (scheme === null) return nothing;
    const { stages, tasks, metres } = this.#against(scheme);
    return html`<h3>When the job is done: what it took</h3>
      <p class="hint">Beside what was reckoned for “${scheme.name}”. Empty: not recorded. No price hangs on it; it shows what your norms
        would be by this job alone. They are set on the <a href="/firm?part=labour">firm’s page</a>.
      </p>
      <h4>Hours, by stage</h4>
      <ul>
        ${stages.map((stage) => this.#stage(stage))}
      </ul>
      <details>
        <summary>Minutes, task by task</summary>
        <ul>
          ${tasks.map((task) => this.#task(task))}
        </ul>
      </details>
      <h4>Metres used</h4>
      <ul>
        ${metres.map((line) => this.#metres(line))}
      </ul>
      ${this.#instead(scheme)}`;
  }

  #against({ labour, takeoff, price }: SchemeEstimate) {
    const { job, library } = this.view;
    return jobAgainstActual(job, library.norms, { labour, takeoff, level: price.labourLevel });
  }

  /** What was taken in the place of what was not in stock; it is recorded on the shopping list. */
  #instead({ purchase }: SchemeEstimate): TemplateResult | typeof nothing {
    const taken = this.view.job.actuals?.instead ?? [];
    if (taken.length === 0) return nothing;
    const { byKey, strays, sumWords } = insteadOf(shoppingListOf(purchase, this.view.library.prices), taken);
    return html`<h4>Taken instead</h4>
      <ul>
        ${[...byKey.values(), ...strays].map(
          ({ took, words }) => html`<li>
            <div>${words}</div>
            <button class="small" @click=${() => send(this, 'job-edit', setTookInstead(took.entry, took.took, null))}>
              Take away<span class="visually-hidden">: ${took.took}</span>
            </button>
          </li>`,
        )}
      </ul>
      ${sumWords === '' ? nothing : html`<p class="hint">${sumWords}</p>`}`;
  }

  #stage({ stage, estimatedMin, actualMin, ratio }: ActualStage): TemplateResult {
    const words = workStages.find(([known]) => known === stage)?.[1] ?? stage;
    const then =
      ratio === null ? '' : `; the norms of this stage times ${hundredths(ratio)} would have met it`;
    return this.#row(words, `Reckoned ${hours(estimatedMin)}${then}`, {
      unit: 'h',
      value: actualMin === null ? null : Math.round((actualMin / 60) * 10_000) / 10_000,
      most: 10_000,
      edit: (value) => setActualStage(stage, words, value === null ? null : Math.round(value * 6000) / 100),
    });
  }

  #task(task: ActualTask): TemplateResult {
    const { description, unit, quantity, estimatedMin, actualMin, normMin } = task;
    const of = unit === 'm' ? `${hundredths(quantity)} m` : hundredths(quantity);
    const then = normMin === null ? '' : `; by this job ${hundredths(normMin)} min for one`;
    return this.#row(description, `${of}, reckoned ${hundredths(estimatedMin)} min${then}`, {
      unit: 'min',
      value: actualMin,
      most: 1e6,
      edit: (value) => setActualTask(task.task, description, value),
    });
  }

  #metres({ item, description, measuredM, estimatedM, actualM, wastePercent }: ActualMetres): TemplateResult {
    const then = wastePercent === null ? '' : `; by this job a waste of ${hundredths(wastePercent)} %`;
    const how = `Measured ${hundredths(measuredM)} m, ${hundredths(estimatedM)} m with waste${then}`;
    return this.#row(description, how, {
      unit: 'm',
      value: actualM,
      most: 1e6,
      edit: (value) => setActuallyUsed(item, description, value),
    });
  }

  #row(
    words: string,
    how: string,
    field: {
      readonly unit: string;
      readonly value: number | null;
      readonly most: number;
      readonly edit: (value: number | null) => JobEdit;
    },
  ): TemplateResult {
    return html`<li>
      <div>${words}<p class="hint">${how}</p></div>
      <number-field
        .label=${`Taken: ${words}`}
        label-hidden
        .unit=${field.unit}
        .value=${field.value}
        .min=${0}
        .max=${field.most}
        @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
          event.stopPropagation();
          send(this, 'job-edit', field.edit(event.detail.value));
        }}
      ></number-field>
    </li>`;
  }
}
customElements.define('actual-work', ActualWork);
declare global {
  interface HTMLElementTagNameMap {
    'actual-work': ActualWork;
  }
}
