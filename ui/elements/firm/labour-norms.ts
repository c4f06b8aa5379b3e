import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { demoCount, isDemo, saysDemo } from '#engine/demo-marks.ts';
import { type KnownTask, knownTasks } from '#engine/labour/known-tasks.ts';
import { standInFor } from '#engine/labour/norm-of.ts';
import type { Stage } from '#engine/labour/task.ts';
import type { Norm, Norms } from '#model/library.ts';
import {
  type NormMinutes,
  ownNorms,
  setNormMess,
  setNormMinutes,
  setNormsSource,
  setRate,
  setSum,
  setWaste,
} from '../../edits/norms.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/text-field.ts';
import { counted } from '../../written.ts';
import { workStages } from '../price/work-stages.ts';
import { controlsCss } from '../shared-styles.ts';
import { demoLine, demoLineCss } from './demo-line.ts';
import './multiplier-list.ts';
import { overheadFields } from './overhead-fields.ts';

const perUnit: Readonly<Record<KnownTask['unit'], string>> = {
  job: 'a job',
  each: 'each',
  m: 'a metre',
  circuit: 'a circuit',
  room: 'a room',
};

const columns: readonly (readonly [key: keyof NormMinutes, words: string])[] = [
  ['lowMin', 'Low'],
  ['typicalMin', 'Typical'],
  ['highMin', 'High'],
];

const wasteWords: readonly (readonly [group: keyof Norms['waste'], words: string])[] = [
  ['cable', 'Waste on cable'],
  ['containment', 'Waste on containment'],
  ['fixings', 'Waste on fixings'],
  ['fillers', 'Waste on fillers'],
];

/** The firm's labour norms: minutes a task, the hourly rate, sums that are neither, and waste. */
export class LabourNorms extends LitElement {
  static override properties: PropertyDeclarations = { norms: { attribute: false } };
  static override styles = [
    controlsCss,
    demoLineCss,
    css`
      :host {
        display: block;
      }
      .grid {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(180px, 1fr));
        gap: 12px 16px;
        margin: 8px 0 16px;
      }
      .source {
        grid-column: 1 / -1;
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: minmax(220px, 1fr) repeat(4, 112px);
        gap: 10px;
        align-items: end;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
      }
      .name {
        align-self: center;
      }
      @media (max-width: 900px) {
        li {
          grid-template-columns: repeat(4, 1fr);
        }
        .name {
          grid-column: 1 / -1;
        }
      }
      @media (max-width: 560px) {
        li {
          grid-template-columns: repeat(2, 1fr);
        }
      }
    `,
  ];
  declare norms: Norms;

  override render(): TemplateResult {
    const rows = new Map(this.norms.tasks.map((norm) => [norm.task, norm]));
    return html`<h2>Labour: hourly rate and norms</h2>
      <div class="grid">${this.#rate()}${overheadFields(this, this.norms)}</div>
      ${this.#demoLeft()}
      <div class="grid">${this.#facts()}</div>
      <p class="hint">Minutes for one unit: on a good day, usually, on a bad day. Empty: no norm, and the price says so.</p>
      <p class="hint">
        Disturbance, in points for one unit: dust, noise, furniture moved, floors opened. 0 is none; about 10 is a metre of
        chase in masonry, cut and filled in a room that is lived in. Schemes are compared by it; no price hangs on it. What
        the demo has is common practice, without a source: change it as you find it.
      </p>
      ${workStages.map(([stage, words]) => this.#stage(stage, words, rows))}
      <multiplier-list .norms=${this.norms}></multiplier-list>`;
  }

  /** Goes to the rate, which most of a price hangs on. */
  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector('number-field')?.focus(options);
  }

  /** Minutes that nobody has set are the demo's, whatever the norms say they are from. */
  #demoLeft(): TemplateResult | typeof nothing {
    const { tasks, sums, rateOrigin } = this.norms;
    const left = demoCount(tasks);
    const words = [
      ...(rateOrigin === 'demo' ? ['the hourly rate'] : []),
      ...(left > 0 ? [`the minutes of ${left} of ${counted(tasks.length, 'task')}`] : []),
      ...(sums.some(isDemo) ? ['sums below'] : []),
      ...(saysDemo.norms(this.norms) ? ['what the norms say they are from'] : []),
    ];
    if (words.length === 0) return nothing;
    return demoLine(`The demo’s still: ${words.join(', ')}. What is set is yours.`, 'All of it is mine', () =>
      sendLibraryEdit(this, ownNorms()),
    );
  }

  #rate(): TemplateResult {
    return html`<number-field
      label="Hourly rate"
      unit="£"
      needed
      help="For an hour’s work, without VAT; travel is charged by it, too"
      .value=${this.norms.ratePencePerHour / 100}
      .min=${0}
      .max=${10_000_000}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setRate(Math.round((event.detail.value ?? 0) * 100)))}
    ></number-field>`;
  }

  #facts(): TemplateResult {
    const { source, sums, waste } = this.norms;
    return html`<text-field
        class="source"
        label="Where the norms are from"
        .value=${source}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => sendLibraryEdit(this, setNormsSource(event.detail.value))}
      ></text-field>
      ${sums.map(
        ({ sum, pence }) =>
          html`<number-field
            .label=${`${sum.charAt(0).toUpperCase()}${sum.slice(1).replaceAll('-', ' ')}`}
            unit="£"
            needed
            .value=${pence / 100}
            .min=${0}
            .max=${10_000_000}
            @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setSum(sum, Math.round((event.detail.value ?? 0) * 100)))}
          ></number-field>`,
      )}
      ${wasteWords.map(
        ([group, words]) =>
          html`<number-field
            .label=${words}
            unit="%"
            needed
            .value=${waste[group]}
            .min=${0}
            .max=${100}
            @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setWaste(group, event.detail.value ?? 0))}
          ></number-field>`,
      )}`;
  }

  #stage(stage: Stage, words: string, rows: ReadonlyMap<string, Norm>): TemplateResult {
    const tasks = knownTasks.filter((task) => task.stage === stage);
    return html`<details>
      <summary>${words}</summary>
      <ul>
        ${tasks.map((task) => this.#task(task, rows.get(task.id)))}
      </ul>
    </details>`;
  }

  #task(task: KnownTask, norm: Norm | undefined): TemplateResult {
    return html`<li>
      <span class="name">${task.description} <span class="hint">${perUnit[task.unit]}${this.#standsIn(task, norm)}</span></span>
      ${columns.map(
        ([key, words]) =>
          html`<number-field
            .label=${words}
            unit="min"
            .value=${norm?.[key] ?? null}
            .min=${0}
            .max=${100_000}
            @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setNormMinutes(task, key, event.detail.value))}
          ></number-field>`,
      )}
      ${norm === undefined ? nothing : this.#mess(task, norm)}
    </li>`;
  }

  /** Where another task's minutes count, what they are. */
  #standsIn({ id }: KnownTask, norm: Norm | undefined): string {
    const other = standInFor(id);
    if (norm !== undefined || other === null) return '';
    const words = knownTasks.find((task) => task.id === other)?.description;
    return `; while empty, as “${words}”`;
  }

  #mess(task: KnownTask, { mess }: Norm): TemplateResult {
    return html`<number-field
      label="Disturbance"
      unit="points"
      .value=${mess ?? null}
      .min=${0}
      .max=${1000}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setNormMess(task, event.detail.value))}
    ></number-field>`;
  }
}
customElements.define('labour-norms', LabourNorms);
declare global {
  interface HTMLElementTagNameMap {
    'labour-norms': LabourNorms;
  }
}
