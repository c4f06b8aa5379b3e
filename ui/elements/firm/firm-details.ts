import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Library, Limits } from '#model/library.ts';
import {
  type FirmTerm,
  type NumberLimit,
  setFirmAddress,
  setFirmDetail,
  setFirmTerm,
  setFirmTermWord,
  setLimit,
  setReckoning,
  setRegistered,
} from '../../edits/firm.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/text-field.ts';
import '../fields/yes-no-field.ts';
import { labourLevels, vatRates } from '../price/term-choices.ts';
import { controlsCss } from '../shared-styles.ts';

const details = [
  { detail: 'name', label: 'Name', help: '' },
  { detail: 'contact', label: 'Telephone or e-mail', help: 'As customers reach you' },
  {
    detail: 'scheme',
    label: 'Registration',
    help: 'With whom the firm is registered to certify its own work, if it is',
  },
] as const;

/** A number of the firm's that may be left out, and what leaving it out means. */
interface OwnNumber<K> {
  readonly key: K;
  readonly label: string;
  readonly unit: string;
  readonly help: string;
  readonly factor?: number;
}

const terms: readonly OwnNumber<FirmTerm>[] = [
  { key: 'markupPercent', label: 'Mark-up on materials', unit: '%', help: 'Empty: none' },
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
    help: 'Empty: by how much of the survey is open',
  },
  { key: 'travelMin', label: 'Travel, there and back', unit: 'min', help: 'Empty: none' },
  { key: 'minimumPence', label: 'Minimum charge', unit: '£', help: 'Empty: none', factor: 100 },
  { key: 'validDays', label: 'A price holds for', unit: 'days', help: '' },
];

const limits: readonly OwnNumber<NumberLimit>[] = [
  {
    key: 'areaServedM2',
    label: 'Floor area served by a circuit',
    unit: 'm²',
    help: 'Empty: guidance, 100 for a ring, 75 or 50 for a radial',
  },
  {
    key: 'fixedLoadW',
    label: 'Largest fixed load on a shared circuit',
    unit: 'W',
    help: 'Empty: guidance, 2000',
  },
  {
    key: 'maximumSpurs',
    label: 'Most unfused spurs of a circuit',
    unit: '',
    help: 'Empty: guidance, as many as points',
  },
  {
    key: 'minimumHeightMm',
    label: 'Least height of an outlet',
    unit: 'mm',
    help: 'Empty: by the nation, 450 or 400',
  },
  {
    key: 'maximumHeightMm',
    label: 'Greatest height of an outlet',
    unit: 'mm',
    help: 'Empty: by the nation, 1200',
  },
  { key: 'cornerClearanceMm', label: 'Clear of an inside corner', unit: 'mm', help: 'Empty: by the nation' },
  { key: 'sinkClearanceMm', label: 'Clear of a sink', unit: 'mm', help: 'Empty: guidance, 300' },
  { key: 'hobClearanceMm', label: 'Clear of a hob', unit: 'mm', help: 'Empty: guidance, 300' },
  { key: 'worktopClearanceMm', label: 'Above a worktop', unit: 'mm', help: 'Empty: guidance, 150' },
  { key: 'ambientC', label: 'Air that cables lie in', unit: '°C', help: 'Empty: 30, as the tables' },
  { key: 'voltDropPercent', label: 'Volt drop in socket circuits', unit: '%', help: 'Empty: BS 7671, 5' },
];

const dropWays = [
  { value: 'tabulated', label: 'No: as tabulated, at 70 °C' },
  { value: 'corrected', label: 'Yes: BS 7671 Appendix 4 §6.1' },
];

const coldRules = [
  { value: 'eighty-percent', label: '80 % of the limit' },
  { value: 'guide-divisor', label: 'the limit ÷ 1.24 (On-Site Guide)' },
];

/** The firm as its papers name it, the terms that new jobs begin with, and its own limits. */
export class FirmDetails extends LitElement {
  static override properties: PropertyDeclarations = { library: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      .grid {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(220px, 1fr));
        gap: 12px 16px;
        margin: 8px 0 24px;
      }
    `,
  ];
  declare library: Library;

  override render(): TemplateResult {
    const { firm } = this.library;
    return html`<h2>The firm</h2>
      <div class="grid">
        ${details.map(
          ({ detail, label, help }) =>
            html`<text-field
              .label=${label}
              .help=${help}
              .value=${firm[detail] ?? ''}
              @field-change=${(event: CustomEvent<FieldChange<string>>) => sendLibraryEdit(this, setFirmDetail(detail, event.detail.value))}
            ></text-field>`,
        )}
        ${this.#vat()}
        <text-field
          label="Address, a line each"
          multiline
          .value=${firm.address.join('\n')}
          @field-change=${(event: CustomEvent<FieldChange<string>>) => sendLibraryEdit(this, setFirmAddress(event.detail.value))}
        ></text-field>
      </div>
      <h2>Usual terms</h2>
      <p class="hint">A job may set its own; what it leaves empty is taken from here.</p>
      <div class="grid">${this.#termWords()}${terms.map((term) => this.#term(term))}</div>
      <h2>Own limits</h2>
      <p class="hint">
        A limit set here takes the place of guidance in the checks. What the standard itself requires cannot be set.
      </p>
      <div class="grid">${limits.map((limit) => this.#limit(limit))} ${this.#reckonings()}</div>`;
  }

  get #registered(): boolean {
    return this.library.terms.vat !== 'not-registered';
  }

  /** Whether VAT is charged at all is asked for by itself, and the number only of who charges it. */
  #vat(): TemplateResult {
    const { vatNumber = '' } = this.library.firm;
    const registered = this.#registered;
    return html`<yes-no-field
        label="Registered for VAT"
        .unknown=${false}
        .value=${registered}
        .help=${registered ? '' : 'No job charges VAT, and materials cost what they cost with it'}
        @field-change=${(event: CustomEvent<FieldChange<boolean>>) => sendLibraryEdit(this, setRegistered(event.detail.value))}
      ></yes-no-field>
      ${
        registered
          ? html`<text-field
              label="VAT number"
              .help=${vatNumber === '' ? 'Not given yet; VAT is charged' : 'Emptied: not registered'}
              .value=${vatNumber}
              @field-change=${(event: CustomEvent<FieldChange<string>>) => sendLibraryEdit(this, setFirmDetail('vatNumber', event.detail.value))}
            ></text-field>`
          : nothing
      }`;
  }

  /** Ways of reckoning where the trade has two. */
  #reckonings(): TemplateResult {
    const { voltDropCorrected = false, coldLoopRule = 'eighty-percent' } = this.library.limits;
    return html`<choice-field
        label="Volt drop at the conductors’ own temperature"
        .value=${voltDropCorrected ? 'corrected' : 'tabulated'}
        .options=${dropWays}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<string>>) =>
          sendLibraryEdit(this, setReckoning({ voltDropCorrected: event.detail.value === 'corrected' }))}
      ></choice-field>
      <choice-field
        label="Cold loop readings are compared with"
        .value=${coldLoopRule}
        .options=${coldRules}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<NonNullable<Limits['coldLoopRule']>>>) =>
          sendLibraryEdit(this, setReckoning({ coldLoopRule: event.detail.value }))}
      ></choice-field>`;
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
      ${
        this.#registered
          ? html`<choice-field
              label="VAT of new jobs"
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
      .min=${0}
      .max=${maxOf(key)}
      .whole=${key === 'validDays'}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        const typed = event.detail.value;
        const kept = typed === null || factor === 1 ? typed : Math.round(typed * factor);
        sendLibraryEdit(this, setFirmTerm(key, kept));
      }}
    ></number-field>`;
  }

  #limit({ key, label, unit, help }: OwnNumber<NumberLimit>): TemplateResult {
    const counted = key === 'maximumSpurs';
    return html`<number-field
      .label=${label}
      .unit=${unit}
      .help=${help}
      .value=${this.library.limits[key] ?? null}
      .min=${counted ? 0 : key === 'ambientC' ? 25 : 1}
      .max=${key === 'ambientC' ? 60 : key === 'voltDropPercent' ? 100 : 100_000}
      .whole=${counted}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setLimit(key, event.detail.value))}
    ></number-field>`;
  }
}

function maxOf(term: FirmTerm): number {
  if (term === 'marginPercent') return 99.99;
  if (term === 'contingencyPercent') return 100;
  if (term === 'markupPercent') return 1000;
  return term === 'validDays' ? 3650 : 10_000;
}
customElements.define('firm-details', FirmDetails);
declare global {
  interface HTMLElementTagNameMap {
    'firm-details': FirmDetails;
  }
}
