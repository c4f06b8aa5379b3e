import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { USUAL_DAY_HOURS } from '#engine/price/visits.ts';
import type { Finish } from '#model/installation.ts';
import type { Library } from '#model/library.ts';
import {
  type FirmTerm,
  setFirmCharging,
  setFirmChased,
  setFirmFilling,
  setFirmFinish,
  setFirmParking,
  setFirmProfitOn,
  setFirmTerm,
  setFirmTermWord,
} from '../../edits/firm.ts';
import type { Chased, Filling } from '../../edits/terms.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import { plateFinishes } from '../as-found/found-words.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import {
  chargingChoices,
  chasedChoices,
  fillingChoices,
  labourLevels,
  profitOnChoices,
  vatRates,
} from '../price/term-choices.ts';
import { controlsCss } from '../shared-styles.ts';
import { firmGridCss } from './firm-grid.ts';
import type { OwnNumber } from './own-number.ts';

const terms: readonly OwnNumber<FirmTerm>[] = [
  { key: 'markupPercent', label: 'Mark-up', unit: '%', help: 'Empty: none' },
  {
    key: 'marginPercent',
    label: 'or margin',
    unit: '%',
    help: 'Of the selling price; takes the mark-up’s place',
  },
  {
    key: 'contingencyPercent',
    label: 'Contingency',
    unit: '%',
    help: 'Empty: by what the survey leaves open',
  },
  { key: 'travelMin', label: 'Travel, there and back', unit: 'min', help: 'Empty: none' },
  {
    key: 'dayHours',
    label: 'Work in a day',
    unit: 'h',
    help: `Travel is paid for each day. Empty: as the overhead by the day, else ${USUAL_DAY_HOURS} h (from memory)`,
  },
  { key: 'callOutPence', label: 'Call-out', unit: '£', help: 'Empty: none', factor: 100 },
  { key: 'minimumPence', label: 'Minimum charge', unit: '£', help: 'Empty: none', factor: 100 },
  { key: 'depositPercent', label: 'Deposit', unit: '%', help: 'Of the sum with VAT. Empty: none' },
  { key: 'depositPence', label: 'or deposit', unit: '£', help: 'Takes the percentage’s place', factor: 100 },
  { key: 'validDays', label: 'A price holds for', unit: 'days', help: '' },
];

/** The terms that new jobs begin with. */
export class FirmTerms extends LitElement {
  static override properties: PropertyDeclarations = { library: { attribute: false } };
  static override styles = [controlsCss, firmGridCss];
  declare library: Library;

  override render(): TemplateResult {
    return html`<h2>Usual terms</h2>
      <p class="hint">A job may set its own; what it leaves empty is taken from here.</p>
      <div class="grid">${this.#termWords()}${terms.map((term) => this.#term(term))}</div>`;
  }

  get #registered(): boolean {
    return this.library.terms.vat !== 'not-registered';
  }

  #termWords(): TemplateResult {
    const { terms: now } = this.library;
    return html`<choice-field
        label="Labour level of new jobs"
        .value=${now.labour}
        .options=${labourLevels}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<typeof now.labour>>) => sendLibraryEdit(this, setFirmTermWord({ labour: event.detail.value }))}
      ></choice-field>
      <choice-field
        label="Cables chased into walls lie in"
        .value=${now.chased ?? null}
        .options=${chasedChoices}
        .empty=${'As usual: oval tube'}
        @field-change=${(event: CustomEvent<FieldChange<Chased | null>>) => sendLibraryEdit(this, setFirmChased(event.detail.value))}
      ></choice-field>
      <choice-field
        label="Chases are filled with"
        .value=${now.filling ?? null}
        .options=${fillingChoices}
        .empty=${'As usual: one-coat plaster'}
        @field-change=${(event: CustomEvent<FieldChange<Filling | null>>) => sendLibraryEdit(this, setFirmFilling(event.detail.value))}
      ></choice-field>
      <choice-field
        label="New plates are"
        help="Where neither the job nor the point says."
        .value=${now.finish ?? null}
        .options=${plateFinishes}
        .empty=${'As usual: white moulded'}
        @field-change=${(event: CustomEvent<FieldChange<Finish | null>>) => sendLibraryEdit(this, setFirmFinish(event.detail.value))}
      ></choice-field>
      <choice-field
        label="Mark-up or margin is put on"
        .value=${now.profitOn ?? null}
        .options=${profitOnChoices}
        .empty=${this.library.norms.rateBasis === 'cost' ? 'All, since the hourly rate is at cost' : 'Materials, since the hourly rate is what is charged'}
        @field-change=${(event: CustomEvent<FieldChange<typeof now.profitOn | null>>) => sendLibraryEdit(this, setFirmProfitOn(event.detail.value))}
      ></choice-field>
      <choice-field
        label="Parking is charged"
        help="At the sum for a day that is set under Labour; a job may say otherwise"
        .value=${now.parking === 'each-visit' ? now.parking : null}
        .options=${[{ value: 'each-visit', label: 'For each day on site' }]}
        .empty=${'Not unless the job says so'}
        @field-change=${(event: CustomEvent<FieldChange<'each-visit' | null>>) => sendLibraryEdit(this, setFirmParking(event.detail.value))}
      ></choice-field>
      <choice-field
        label="Work is charged"
        .value=${now.charging ?? null}
        .options=${chargingChoices}
        .empty=${'By what is proven: fixed, or an estimate'}
        @field-change=${(event: CustomEvent<FieldChange<NonNullable<typeof now.charging> | null>>) => sendLibraryEdit(this, setFirmCharging(event.detail.value))}
      ></choice-field>
      ${
        this.#registered
          ? html`<choice-field
              label="VAT of new jobs"
              .help=${now.vat === 'standard' ? '' : 'Each job says by which condition'}
              .value=${now.vat}
              .options=${vatRates}
              .empty=${null}
              @field-change=${(event: CustomEvent<FieldChange<typeof now.vat>>) => sendLibraryEdit(this, setFirmTermWord({ vat: event.detail.value }))}
            ></choice-field>`
          : nothing
      }`;
  }

  #term({ key, label, unit, help, factor = 1 }: OwnNumber<FirmTerm>): TemplateResult {
    const value = this.library.terms[key];
    return html`<number-field
      .label=${label}
      .unit=${unit}
      .help=${help}
      .value=${value === undefined ? null : value / factor}
      .min=${key === 'dayHours' ? 1 : 0}
      .max=${maxOf(key)}
      .whole=${key === 'validDays'}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        const typed = event.detail.value;
        const kept = typed === null || factor === 1 ? typed : Math.round(typed * factor);
        sendLibraryEdit(this, setFirmTerm(key, kept));
      }}
    ></number-field>`;
  }
}

function maxOf(term: FirmTerm): number {
  if (term === 'marginPercent') return 99.99;
  if (term === 'contingencyPercent' || term === 'depositPercent') return 100;
  if (term === 'markupPercent') return 1000;
  if (term === 'dayHours') return 24;
  return term === 'validDays' ? 3650 : 10_000;
}
customElements.define('firm-terms', FirmTerms);
declare global {
  interface HTMLElementTagNameMap {
    'firm-terms': FirmTerms;
  }
}
