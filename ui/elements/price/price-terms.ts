import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { profitOn } from '#engine/price/profit.ts';
import { USUAL_DAY_HOURS } from '#engine/price/visits.ts';
import type { Terms } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import {
  type Chased,
  type Filling,
  type OwnTerm,
  setChased,
  setFilling,
  setLabourLevel,
  setProfitOn,
  setTerm,
} from '../../edits/terms.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { pounds } from '../../written.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { paceFields } from './pace-fields.ts';
import { parkingFields } from './parking-fields.ts';
import { chasedChoices, fillingChoices, labourLevels, profitOnChoices } from './term-choices.ts';
import { vatFields } from './vat-fields.ts';

/** An own term with its field: what it is shown in, and what leaving it out means. */
interface TermField {
  readonly term: OwnTerm;
  readonly label: string;
  readonly unit: string;
  readonly max: number;
  /** Shown units to the file's, where they differ. */
  readonly factor: number;
  readonly whole: boolean;
}

const termFields: readonly TermField[] = [
  { term: 'markupPercent', label: 'Mark-up', unit: '%', max: 1000, factor: 1, whole: false },
  { term: 'marginPercent', label: 'or margin', unit: '%', max: 99.99, factor: 1, whole: false },
  { term: 'contingencyPercent', label: 'Contingency', unit: '%', max: 100, factor: 1, whole: false },
  { term: 'travelMin', label: 'Travel, there and back', unit: 'min', max: 10_000, factor: 1, whole: false },
  { term: 'dayHours', label: 'Work in a day', unit: 'h', max: 24, factor: 1, whole: false },
  { term: 'callOutPence', label: 'Call-out', unit: '£', max: 10_000_000, factor: 100, whole: false },
  { term: 'minimumPence', label: 'Minimum charge', unit: '£', max: 10_000_000, factor: 100, whole: false },
  { term: 'depositPercent', label: 'Deposit', unit: '%', max: 100, factor: 1, whole: false },
  { term: 'depositPence', label: 'or deposit', unit: '£', max: 10_000_000, factor: 100, whole: false },
  { term: 'validDays', label: 'The price holds for', unit: 'days', max: 3650, factor: 1, whole: true },
];

/** What an own term is where neither job nor firm says. */
const usualWords: Partial<Readonly<Record<OwnTerm, string>>> = {
  contingencyPercent: 'Empty: by what the survey leaves open',
  dayHours: `Empty: as the firm’s overhead by the day, else ${USUAL_DAY_HOURS} h (from memory)`,
};

function firmSays(terms: Terms, { term, unit }: TermField): string {
  const value = terms[term];
  if (value === undefined) return usualWords[term] ?? 'Empty: none';
  return `Empty: the firm’s, ${unit === '£' ? pounds(value) : `${value} ${unit}`}`;
}

/** What the profit is put on where the job does not say. */
function firmProfitOn({ terms, norms }: Library): string {
  const on = profitOn({ profitOn: terms.profitOn ?? null }, norms);
  return on === 'all' ? 'The firm’s: all of the work' : 'The firm’s: materials';
}

/** What chased cables lie in where the job does not say. */
const firmChased = ({ chased }: Terms): string =>
  `The firm’s: ${chased === 'capping' ? 'capping' : chased === 'none' ? 'nothing' : 'oval tube'}`;

/** What chases are filled with where the job does not say. */
const firmFilling = ({ filling }: Terms): string =>
  `The firm’s: ${filling === 'bonding-and-finish' ? 'bonding and finish' : 'one-coat plaster'}`;

/** The terms that this job is priced on; what is left empty is the firm's. */
export class PriceTerms extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(190px, 1fr));
        gap: 12px;
      }
      .wide {
        grid-column: 1 / -1;
      }
      .ticks {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(260px, 1fr));
        gap: 8px 16px;
      }
      .ticks .hint {
        grid-column: 1 / -1;
        margin: 4px 0 0;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    const { terms } = this.view.job;
    const rateIsCost = this.view.library.norms.rateBasis === 'cost';
    return html`<choice-field
        label="Labour level"
        .value=${terms.labour}
        .options=${labourLevels}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<Terms['labour']>>) => {
          event.stopPropagation();
          send(this, 'job-edit', setLabourLevel(event.detail.value));
        }}
      ></choice-field>
      ${vatFields(this, this.view)}
      <choice-field
        label="Cables chased into walls lie in"
        help="Counts for what they carry as well: least in tube"
        .value=${terms.chased ?? null}
        .options=${chasedChoices}
        .empty=${firmChased(this.view.library.terms)}
        @field-change=${(event: CustomEvent<FieldChange<Chased | null>>) => {
          event.stopPropagation();
          send(this, 'job-edit', setChased(event.detail.value));
        }}
      ></choice-field>
      <choice-field
        label="Chases are filled with"
        .value=${terms.filling ?? null}
        .options=${fillingChoices}
        .empty=${firmFilling(this.view.library.terms)}
        @field-change=${(event: CustomEvent<FieldChange<Filling | null>>) => {
          event.stopPropagation();
          send(this, 'job-edit', setFilling(event.detail.value));
        }}
      ></choice-field>
      <choice-field
        label="Mark-up or margin is put on"
        .help=${rateIsCost ? '' : 'The hourly rate is what is charged: labour has its profit in it'}
        .value=${terms.profitOn ?? null}
        .options=${profitOnChoices.map((choice) =>
          choice.value === 'all' && !rateIsCost
            ? { ...choice, notPossible: 'needs an hourly rate at cost' }
            : choice,
        )}
        .empty=${firmProfitOn(this.view.library)}
        @field-change=${(event: CustomEvent<FieldChange<Terms['profitOn'] | null>>) => {
          event.stopPropagation();
          send(this, 'job-edit', setProfitOn(event.detail.value));
        }}
      ></choice-field>
      ${termFields.map((field) => this.#field(terms, field))} ${parkingFields(this, this.view)} ${paceFields(this, this.view)}`;
  }

  #field(terms: Terms, field: TermField): TemplateResult {
    const value = terms[field.term];
    return html`<number-field
      .label=${field.label}
      .unit=${field.unit}
      .help=${firmSays(this.view.library.terms, field)}
      .value=${value === undefined ? null : value / field.factor}
      .min=${field.term === 'dayHours' ? 1 : 0}
      .max=${field.max}
      .whole=${field.whole}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        event.stopPropagation();
        const typed = event.detail.value;
        const kept = typed === null || field.factor === 1 ? typed : Math.round(typed * field.factor);
        send(this, 'job-edit', setTerm(field.term, kept));
      }}
    ></number-field>`;
  }
}
customElements.define('price-terms', PriceTerms);
declare global {
  interface HTMLElementTagNameMap {
    'price-terms': PriceTerms;
  }
}
