import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Library } from '#model/library.ts';
import {
  setFirmAddress,
  setFirmDetail,
  setNotifiedBy,
  setPaymentDays,
  setRegistered,
} from '../../edits/firm.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/text-field.ts';
import '../fields/yes-no-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { firmGridCss } from './firm-grid.ts';

const details = [
  { detail: 'name', label: 'Name', help: '' },
  { detail: 'contact', label: 'Telephone', help: 'As customers reach you' },
  { detail: 'email', label: 'E-mail', help: 'Where customers accept, and cancel if nothing else is said' },
  {
    detail: 'scheme',
    label: 'Registration',
    help: 'With whom the firm is registered to certify its own work, if it is',
  },
] as const;

/** What only the customer's paper says of the firm, in its own words; each may be left out. */
const forCustomers = [
  {
    detail: 'company',
    label: 'Company',
    help: 'Registered name, number and office, which the law asks of companies',
  },
  { detail: 'paymentWays', label: 'How invoices can be paid', help: 'Such as bank transfer, or card' },
  { detail: 'insurance', label: 'Insurance', help: 'Such as public liability, with whom and how much' },
  { detail: 'guarantee', label: 'Guarantee', help: 'What you give beside what the law gives anyhow' },
  { detail: 'complaints', label: 'Complaints', help: 'What a customer who is not content can do' },
  {
    detail: 'cancelTo',
    label: 'Where agreements are cancelled',
    help: 'Empty: your name, address and e-mail',
  },
] as const;

/** Who tells building control where work is notifiable. */
const notifiers = [
  { value: 'self', label: 'We do: registered to certify our own work' },
  { value: 'third-party', label: 'A registered third-party certifier' },
  { value: 'building-control', label: 'The council’s building control inspects' },
] as const;

/** The firm as its papers name it. */
export class FirmDetails extends LitElement {
  static override properties: PropertyDeclarations = { library: { attribute: false } };
  static override styles = [controlsCss, firmGridCss];
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
      <h3>What the customer’s paper says of you</h3>
      <p class="hint">What is left empty is left out, or stands as to be agreed.</p>
      <div class="grid">
        ${this.#payment()} ${this.#notifier()}
        ${forCustomers.map(
          ({ detail, label, help }) =>
            html`<text-field
              .label=${label}
              .help=${help}
              .value=${firm[detail] ?? ''}
              @field-change=${(event: CustomEvent<FieldChange<string>>) => sendLibraryEdit(this, setFirmDetail(detail, event.detail.value))}
            ></text-field>`,
        )}
      </div>`;
  }

  #payment(): TemplateResult {
    return html`<number-field
      label="An invoice is due after"
      unit="days"
      help="0: when the work is finished"
      .value=${this.library.firm.paymentDays ?? null}
      .min=${0}
      .max=${365}
      whole
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setPaymentDays(event.detail.value))}
    ></number-field>`;
  }

  #notifier(): TemplateResult {
    return html`<choice-field
      label="Notifiable work is notified by"
      .value=${this.library.firm.notifiedBy ?? null}
      .options=${notifiers}
      .empty=${'Not said yet'}
      @field-change=${(event: CustomEvent<FieldChange<(typeof notifiers)[number]['value'] | null>>) => sendLibraryEdit(this, setNotifiedBy(event.detail.value))}
    ></choice-field>`;
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
}

customElements.define('firm-details', FirmDetails);
declare global {
  interface HTMLElementTagNameMap {
    'firm-details': FirmDetails;
  }
}
