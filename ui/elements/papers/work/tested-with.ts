import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { INSTRUMENTS, instrumentSaid, NOT_TESTED } from '#drawing/work/tested-words.ts';
import type { Job } from '#model/job.ts';
import type { Testing } from '#model/site-work.ts';
import { keepFocus } from '../../../controllers/keep-focus.ts';
import { putInstrument, removeInstrument, setNotTested } from '../../../edits/site-work.ts';
import { type JobEdit, send } from '../../../job-events.ts';
import { newId } from '../../../new-id.ts';
import type { FieldChange } from '../../fields/field-element.ts';
import '../../fields/text-field.ts';
import { controlsCss } from '../../shared-styles.ts';
import { workSheetCss } from './work-sheet-styles.ts';

type Instrument = NonNullable<Testing['instruments']>[number];

/**
 * The instruments that were tested with, and what could not be tested.
 *
 * @fires job-edit
 */
export class TestedWith extends LitElement {
  static override properties: PropertyDeclarations = { job: { attribute: false } };
  static override styles = [
    controlsCss,
    workSheetCss,
    css`
      :host {
        max-width: 44rem;
      }
      .instrument {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
        gap: 4px 12px;
        align-items: end;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
      }
      .buttons {
        display: flex;
        justify-content: flex-end;
        grid-column: 1 / -1;
      }
      .print {
        display: none;
      }
      @media print {
        .print {
          display: block;
          break-inside: avoid;
        }
        .write {
          margin: 0 0 2mm;
          padding-top: 6mm;
          border-bottom: 0.25mm solid #000;
        }
      }
    `,
  ];
  declare job: Pick<Job, 'testing'>;

  constructor() {
    super();
    keepFocus(this);
  }

  override render(): TemplateResult {
    const { instruments = [], notTested = '' } = this.job.testing ?? {};
    return html`<h3>Tested with</h3>
      <p class="soft screen">They are printed on the test sheet. Who tested, and on which day, is written and signed there by hand.</p>
      <div class="screen">
        ${instruments.map((one, i) => this.#instrument(one, i + 1))}
        <button @click=${() => this.#edit(putInstrument({ id: newId(), what: '' }))}>Add an instrument</button>
        <text-field
          multiline
          .label=${NOT_TESTED}
          .value=${notTested}
          @field-change=${(event: CustomEvent<FieldChange<string>>) => this.#change(event, setNotTested)}
        ></text-field>
      </div>
      <div class="print">
        ${instruments.map((instrument) => html`<p>${instrumentSaid(instrument)}</p>`)}
        ${instruments.length === 0 ? toWrite(INSTRUMENTS) : nothing}
        ${notTested === '' ? toWrite(NOT_TESTED) : html`<p>${NOT_TESTED}: ${notTested}</p>`}
        ${toWrite('Tested by')} ${toWrite('Day')}
        <p>A record of readings, and no certificate: that is for a competent person to fill in and sign.</p>
      </div>`;
  }

  #instrument(instrument: Instrument, number: number): TemplateResult {
    const { serial, ...rest } = instrument;
    return html`<div class="instrument">
      <text-field
        .label=${`Instrument ${number}`}
        .value=${instrument.what}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => this.#change(event, (what) => putInstrument({ ...instrument, what: what.trim() }))}
      ></text-field>
      <text-field
        .label=${`Serial number ${number}`}
        .value=${serial ?? ''}
        @field-change=${(event: CustomEvent<FieldChange<string>>) =>
          this.#change(event, (told) =>
            putInstrument(told.trim() === '' ? rest : { ...rest, serial: told.trim() }),
          )}
      ></text-field>
      <div class="buttons">
        <button class="small" @click=${() => this.#edit(removeInstrument(instrument))}>Remove instrument ${number}</button>
      </div>
    </div>`;
  }

  #change(event: CustomEvent<FieldChange<string>>, edit: (value: string) => JobEdit): void {
    event.stopPropagation();
    this.#edit(edit(event.detail.value));
  }

  #edit(edit: JobEdit): void {
    send(this, 'job-edit', edit);
  }
}
/** A line to write on, of what a program has no business to print. */
const toWrite = (label: string): TemplateResult => html`<p class="write">${label}:</p>`;

customElements.define('tested-with', TestedWith);
declare global {
  interface HTMLElementTagNameMap {
    'tested-with': TestedWith;
  }
}
