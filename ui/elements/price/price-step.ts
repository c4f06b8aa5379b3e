import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { dryingWords } from '#engine/labour/drying.ts';
import { type StageMinutes, stageMinutes } from '#engine/labour/stage-hours.ts';
import type { LabourTask } from '#engine/labour/task.ts';
import type { PriceBuildUp } from '#engine/price/totals.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { areLit } from '../../lit-things.ts';
import { hoursWritten, hundredths, percent, pounds } from '../../written.ts';
import { controlsCss, stepCss } from '../shared-styles.ts';
import './extra-work.ts';
import './price-terms.ts';
import { contingencyHow } from './contingency-how.ts';
import { rangeParts } from './range-parts.ts';
import { claimLine } from './vat-fields.ts';
import { vatWords, withVatWords } from './vat-words.ts';
import { workStages } from './work-stages.ts';

/** Minutes of work; from ten on nobody plans by parts of one. */
const minutes = (min: number | null): string =>
  min === null ? 'no norm' : `${min < 10 ? hundredths(min) : Math.round(min)} min`;

const levelKey = { low: 'lowMin', typical: 'typicalMin', high: 'highMin' } as const;

/** Where it is said whether the firm is registered for VAT. */
const VAT_HREF = '/firm?part=firm';

/** Where the hourly rate is set. */
const RATE_HREF = '/firm?part=labour';

/** The step Price: how the price comes about, line by line, with the terms it is made on. */
export class PriceStep extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    stepCss,
    css`
      h3 {
        margin: 20px 0 6px;
      }
      .how {
        color: var(--ink-soft);
        font-size: 0.875rem;
      }
      .warning {
        color: var(--ink);
        font-weight: 600;
      }
      .parts {
        display: grid;
        grid-template-columns: auto 1fr;
        gap: 2px 10px;
        margin: 4px 0 0;
        padding: 0;
        list-style: none;
      }
      .parts li {
        display: contents;
      }
      .parts b {
        font: 600 0.875rem / 1.3 var(--drawing-font);
        text-align: right;
      }
      tr.sum td {
        font-weight: 600;
        border-top: 1px solid var(--ink);
      }
      .task {
        width: 100%;
        min-height: 34px;
        padding: 3px 6px;
        font-size: 0.875rem;
        font-weight: 400;
        text-align: left;
        justify-content: flex-start;
        background: none;
        border-color: transparent;
      }
      .tasks td {
        padding: 1px 6px;
      }
      .tasks td.number {
        padding-top: 8px;
      }
      tr.lit td {
        background: var(--copper-wash);
      }
      @media (max-width: 700px) {
        .task {
          min-height: 44px;
        }
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    const { scheme } = this.view;
    return html`<h2 tabindex="-1">Price</h2>
      ${
        scheme === null
          ? html`<p>Nothing to price yet: make a scheme in <em>Ways</em>. The terms can be set already.</p>`
          : html`<p class="hint">${scheme.name}</p>
            ${this.#buildUp(scheme.price)} ${this.#range(scheme)}`
      }
      <h3>Work not on the drawing</h3>
      <p class="hint">
        What no plan shows: a rotten joist, rubble taken away, a fault to be found and mended. It is in the price of every way, and on
        the customer’s paper by its words.
      </p>
      <extra-work .view=${this.view}></extra-work>
      <h3>Terms of this job</h3>
      <price-terms .view=${this.view}></price-terms>
      ${scheme === null ? nothing : this.#labour(scheme.labour)}`;
  }

  #buildUp(price: PriceBuildUp): TemplateResult {
    const { totals } = price;
    return html`<table>
      <caption class="visually-hidden">
        How the price comes about
      </caption>
      <tbody>
        ${row('Materials', `${pounds(price.materialsCostPence)} at cost${price.profitOn === 'materials' ? `, ${profitWords(price)}` : ''}`, totals.materialsPence)}
        ${row(
          'Labour',
          html`${hundredths(price.labourMin)} min (${totals.hours.toFixed(2)} h): minutes ÷ 60 ×
            ${pounds(price.ratePencePerHour)} an hour${price.rateBasis === 'cost' ? ' at cost' : ''}, ${price.labourLevel} level ·
            <a href=${RATE_HREF}>Change the hourly rate</a>`,
          totals.labourPence,
        )}
        ${price.other.map((line) => row(line.description, '', line.pence))}
        ${row('Contingency', contingencyHow(price), totals.contingencyPence)}
        ${row('Net', '', totals.netPence, true)}
        ${row('VAT', html`${vatWords(price, this.view.library.terms)} · <a href=${VAT_HREF}>Change</a>${claimLine(price)}`, totals.vatPence)}
        ${row('To pay', '', totals.grossPence, true)}
        ${price.depositPence === null ? nothing : row('Deposit, of that', 'Before the work begins', price.depositPence)}
      </tbody>
    </table>
    ${marginLine(price)}
    ${price.refused.map((why) => html`<p class="hint warning">${why} <a href=${RATE_HREF}>Change the hourly rate</a></p>`)}`;
  }

  /** While something moves, what it is made of is that of before. */
  #range(scheme: SchemeEstimate): TemplateResult | typeof nothing {
    const { moving, estimate, library } = this.view;
    const before = estimate.schemes.find(({ id }) => id === scheme.id);
    const settled = moving ? (before ?? scheme) : scheme;
    const parts = rangeParts(settled, library);
    if (parts.length === 0) return nothing;
    const { lowPence, typicalPence, highPence } = settled.range;
    return html`<h3>How far it may move</h3>
      <p class="hint">
        From ${pounds(lowPence)} to ${pounds(highPence)}, ${withVatWords(settled.price)}: ${pounds(typicalPence - lowPence)} below the price
        and ${pounds(highPence - typicalPence)} above it${settled.price.contingencyPercent === 0 ? '' : html`; the contingency of ${percent(settled.price.contingencyPercent)} is in all three`}. What makes that up:
      </p>
      <table>
        <caption class="visually-hidden">
          What the range is made of
        </caption>
        <tbody>
          ${parts.map(({ words, pence, subjects }) => this.#rangeRow(words, pence, subjects))}
          ${row('From lowest to highest', '', highPence - lowPence, true)}
        </tbody>
      </table>`;
  }

  #rangeRow(words: string, pence: number, subjects: readonly string[]): TemplateResult {
    if (subjects.length === 0) return row(words, '', pence);
    const lit = areLit(this.view.lit, subjects);
    return html`<tr class=${lit ? 'lit' : ''}>
      <td>
        <button
          class="task"
          aria-pressed=${lit}
          @click=${() => send(this, 'things-lit', { subjectIds: lit ? [] : subjects })}
        >
          ${words}
        </button>
      </td>
      <td class="number">${pounds(pence)}</td>
    </tr>`;
  }

  #labour(tasks: readonly LabourTask[]): TemplateResult {
    const drying = dryingWords(this.view.job.terms, tasks);
    return html`<h3>Labour, task by task</h3>
      <p class="hint">Tap a task to light where it is done. Minutes are the firm’s norms: low, typical, high; they and the hourly
        rate are set on the <a href=${RATE_HREF}>firm’s page</a>.
      </p>
      ${drying === null ? nothing : html`<p class="hint">${drying}</p>`}
      <table class="tasks">
        ${workStages.map(([stage, words]) =>
          this.#stage(
            tasks.filter((task) => task.stage === stage),
            words,
          ),
        )}
        <tbody>
          ${sumOfTasks(tasks)}
        </tbody>
      </table>`;
  }

  #stage(tasks: readonly LabourTask[], words: string): TemplateResult | typeof nothing {
    if (tasks.length === 0) return nothing;
    return html`<thead>
        <tr>
          <th>${words}</th>
          <th class="number">How many</th>
          <th class="number">Low</th>
          <th class="number">Typical</th>
          <th class="number">High</th>
        </tr>
      </thead>
      <tbody>
        ${tasks.map((task) => this.#task(task))} ${stageMinutes(tasks).map((sums) => sumRow(`${words}, together: ${this.#hours(sums)}`, sums))}
      </tbody>`;
  }

  /** Minutes as hours, at the level that the job is priced at. */
  #hours(minutes: StageMinutes): string {
    const level = this.view.scheme?.price.labourLevel ?? 'typical';
    return hoursWritten(minutes[levelKey[level]] / 60);
  }

  #task(task: LabourTask): TemplateResult {
    const lit = areLit(this.view.lit, task.causes);
    return html`<tr class=${lit ? 'lit' : ''}>
      <td>
        <button
          class="task"
          aria-pressed=${lit}
          @click=${() => send(this, 'things-lit', { subjectIds: lit ? [] : task.causes })}
        >
          ${task.description}
        </button>
      </td>
      <td class="number">${Math.round(task.quantity * 10) / 10}${task.unit === 'm' ? ' m' : ''}</td>
      <td class="number">${minutes(task.lowMin)}</td>
      <td class="number">${minutes(task.typicalMin)}</td>
      <td class="number">${minutes(task.highMin)}</td>
    </tr>`;
  }
}

function profitWords({ marginPercent, markupPercent }: PriceBuildUp): string {
  return marginPercent === null
    ? `mark-up ${percent(markupPercent)}`
    : `margin ${percent(marginPercent)}, a mark-up of ${percent(markupPercent)}`;
}

/** What the job leaves the firm, where it is known what an hour costs. */
function marginLine({ costPence, jobMarginPercent, totals }: PriceBuildUp): TemplateResult | typeof nothing {
  if (costPence === null) return nothing;
  const left = totals.netPence - totals.contingencyPence - costPence;
  const share = jobMarginPercent === null ? '' : `, a margin of ${percent(jobMarginPercent)}`;
  return html`<p class="hint">
    The job costs the firm ${pounds(costPence)}, overhead included; with the contingency spent ${left < 0 ? `it loses ${pounds(-left)}` : `${pounds(left)} is left`}${share}.
  </p>`;
}

/** The minutes of all tasks at each level; what has no norm counts for nothing. */
function sumOfTasks(tasks: readonly LabourTask[]): TemplateResult {
  const sum = (key: 'lowMin' | 'typicalMin' | 'highMin'): number =>
    tasks.reduce((all, task) => all + (task[key] ?? 0), 0);
  return sumRow('All tasks', {
    lowMin: sum('lowMin'),
    typicalMin: sum('typicalMin'),
    highMin: sum('highMin'),
  });
}

function sumRow(
  name: string,
  { lowMin, typicalMin, highMin }: Pick<LabourTask, 'lowMin' | 'typicalMin' | 'highMin'>,
): TemplateResult {
  return html`<tr class="sum">
    <td>${name}</td>
    <td></td>
    <td class="number">${minutes(lowMin)}</td>
    <td class="number">${minutes(typicalMin)}</td>
    <td class="number">${minutes(highMin)}</td>
  </tr>`;
}

function row(name: string, how: string | TemplateResult, pence: number, sum = false): TemplateResult {
  return html`<tr class=${sum ? 'sum' : ''}>
    <td>${name}${how === '' ? nothing : html`<br /><span class="how">${how}</span>`}</td>
    <td class="number">${pounds(pence)}</td>
  </tr>`;
}
customElements.define('price-step', PriceStep);
declare global {
  interface HTMLElementTagNameMap {
    'price-step': PriceStep;
  }
}
