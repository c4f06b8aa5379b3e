import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import type { Reading } from '#model/installation.ts';
import { putReading, removeReading } from '../../edits/readings.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import type { Choice } from '../fields/choice-field.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/text-field.ts';
import '../fields/yes-no-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { foundPoints } from './end-choices.ts';
import { formCss } from './form-styles.ts';
import { readingKinds } from './found-words.ts';
import { blankReading, draftOf, type ReadingDraft, readingOf } from './reading-draft.ts';
import { insulationBetween, loops, loopsFrom, phases, readingName, readingUnits } from './reading-words.ts';

/** What is asked of kinds that show no number; absent: whether it is right. */
const rightLabels: Partial<Record<Reading['kind'], string>> = {
  'rcd-button': 'Opened by it',
  'afdd-button': 'Opened by it',
  'spd-indicator': 'It protects',
};

type KeyOf<V> = {
  [K in keyof ReadingDraft]: ReadingDraft[K] extends V | null ? K : never;
}[keyof ReadingDraft];

/**
 * A reading: one that is there, changed field by field, or a new one (`reading` null), which is kept here until it
 * says enough to be a reading.
 */
export class ReadingForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    reading: { attribute: false },
    name: { type: String },
    draft: { state: true },
  };
  static override styles = [
    controlsCss,
    formCss,
    css`
      :host {
        display: block;
      }
    `,
  ];
  declare view: JobView;
  declare reading: Reading | null;
  /** What it is a reading of, in words. */
  declare name: string;
  /** The new reading so far. */
  declare private draft: ReadingDraft;

  constructor() {
    super();
    this.reading = null;
    this.name = '';
    this.draft = blankReading;
  }

  override render(): TemplateResult {
    const draft = this.#now();
    const { circuits } = this.view.job;
    return html`<div class="fields">
        ${this.reading === null ? this.#choice('kind', 'Kind', readingKinds, null) : nothing}
        ${this.#own(draft)} ${this.#shown(draft)}
        ${this.#choice(
          'circuit',
          'Circuit',
          circuits.map(({ id, name }) => ({ value: id, label: name })),
          'None, or not known',
        )}
        <details class="less">
          <summary>When, and with what</summary>
          <div class="fields">${this.#more(draft)}</div>
        </details>
      </div>
      ${this.#buttons(draft)}`;
  }

  #now(): ReadingDraft {
    if (this.reading !== null) return draftOf(this.reading);
    const { circuits } = this.view.job;
    const [only] = circuits;
    // One circuit is the one that is meant, as long as nobody chose.
    return circuits.length === 1 && only !== undefined && this.draft.circuit === null
      ? { ...this.draft, circuit: only.id }
      : this.draft;
  }

  #put(change: Partial<ReadingDraft>): void {
    const next = { ...this.#now(), ...change };
    if (this.reading === null) {
      this.draft = next;
      return;
    }
    const made = readingOf(this.reading.id, next);
    // What a reading cannot be without is not taken away: the field shows it again.
    if (made === null) this.requestUpdate();
    else send(this, 'job-edit', putReading(made, this.name));
  }

  #own(draft: ReadingDraft): TemplateResult | typeof nothing {
    switch (draft.kind) {
      case 'loop':
        return html`<div class="pair">
            ${this.#choice('loop', 'Conductors', loops, null)} ${this.#choice('from', 'How', loopsFrom, null)}
          </div>
          ${draft.from === 'end-to-end' ? nothing : this.#places(draft.from)}`;
      case 'insulation':
        return html`<div class="pair">
          ${this.#choice('between', 'Between', insulationBetween, null)} ${this.#number('testV', 'Test voltage', 'V', 10_000)}
        </div>`;
      case 'zs':
      case 'ze':
      case 'pfc':
      case 'polarity':
      case 'rcd-button':
      case 'afdd-button':
      case 'spd-indicator':
        return this.#place('at', 'Read at');
      case 'rcd':
        return html`<div class="pair">
          ${this.#number('testMa', 'Test current', 'mA', 10_000)} ${this.#place('at', 'Read at')}
        </div>`;
    }
  }

  /** Of crossed ends the reading is taken at a point; from one end, a link is put in at a point. */
  #places(from: ReadingDraft['from']): TemplateResult {
    return from === 'crossed' ? this.#place('at', 'Read at') : this.#place('linkedAt', 'Linked at');
  }

  #place(key: 'at' | 'linkedAt', label: string): TemplateResult {
    const { job } = this.view;
    const places = [
      ...foundPoints(job, this.#now().circuit ?? '').map(({ id, label: point }) => ({
        value: id,
        label: point,
      })),
      ...job.points
        .filter(({ status }) => status === 'wanted')
        .map(({ id, label: point }) => ({ value: id, label: `${point} (wanted)` })),
      ...job.boards.map(({ id, label: board }) => ({ value: id, label: board })),
    ];
    return this.#choice(key, label, places, 'Not said');
  }

  #shown({ kind, ok }: ReadingDraft): TemplateResult {
    const unit = readingUnits[kind];
    if (unit !== null) return this.#number('shown', 'Reading', unit, unit === 'Ω' ? 1e7 : 1e5);
    return html`<yes-no-field
      label=${rightLabels[kind] ?? 'Right'}
      .value=${ok}
      .unknown=${this.reading === null}
      @field-change=${(event: CustomEvent<FieldChange<boolean | null>>) => {
        event.stopPropagation();
        this.#put({ ok: event.detail.value });
      }}
    ></yes-no-field>`;
  }

  #more({ takenOn, instrument }: ReadingDraft): TemplateResult {
    return html`<div class="pair">
        ${this.#choice('phase', 'Taken', phases, null)}
        ${this.#text('takenOn', 'On', takenOn, 'date')}
      </div>
      <div class="pair">
        ${this.#number('resolutionOhm', 'Resolution', 'Ω', 1e7)} ${this.#number('nullOhm', 'Leads, not taken off', 'Ω', 1e7)}
      </div>
      <div class="pair">
        ${this.#number('conductorC', 'Conductor temperature', '°C', 120)} ${this.#text('instrument', 'Instrument', instrument, 'text')}
      </div>`;
  }

  #choice(
    key: KeyOf<string>,
    label: string,
    options: readonly Choice[],
    empty: string | null,
  ): TemplateResult {
    return html`<choice-field
      .label=${label}
      .options=${options}
      .empty=${empty}
      .value=${this.#now()[key]}
      @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
        event.stopPropagation();
        this.#put({ [key]: event.detail.value });
      }}
    ></choice-field>`;
  }

  #number(key: KeyOf<number>, label: string, unit: string, max: number): TemplateResult {
    return html`<number-field
      .label=${label}
      .unit=${unit}
      .min=${key === 'conductorC' ? -40 : 0}
      .max=${max}
      .value=${this.#now()[key]}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        event.stopPropagation();
        this.#put({ [key]: event.detail.value });
      }}
    ></number-field>`;
  }

  #text(
    key: 'takenOn' | 'instrument',
    label: string,
    value: string | null,
    kind: 'text' | 'date',
  ): TemplateResult {
    return html`<text-field
      .label=${label}
      .kind=${kind}
      .value=${value ?? ''}
      @field-change=${(event: CustomEvent<FieldChange<string>>) => {
        event.stopPropagation();
        this.#put({ [key]: event.detail.value === '' ? null : event.detail.value });
      }}
    ></text-field>`;
  }

  #buttons(draft: ReadingDraft): TemplateResult {
    const { reading } = this;
    if (reading !== null)
      return html`<div class="buttons">
        <button class="small" @click=${() => send(this, 'job-edit', removeReading(reading.id, this.name))}>
          Remove this reading
        </button>
      </div>`;
    return html`<div class="buttons">
      <button
        class="small main"
        ?disabled=${readingOf('new', draft) === null}
        @click=${() => {
          const made = readingOf(newId(), draft);
          if (made === null) return;
          send(
            this,
            'job-edit',
            putReading(made, readingName(made, labelsOf(this.view.estimate.asFound.worked))),
          );
          // The next one is most often of the same kind, at the next point.
          this.draft = { ...draft, shown: null, ok: null, at: null, linkedAt: null };
        }}
      >
        Add this reading
      </button>
    </div>`;
  }
}
customElements.define('reading-form', ReadingForm);
declare global {
  interface HTMLElementTagNameMap {
    'reading-form': ReadingForm;
  }
}
