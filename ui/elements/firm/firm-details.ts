import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Library } from '#model/library.ts';
import { setFirmAddress, setFirmDetail, setRegistered } from '../../edits/firm.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/text-field.ts';
import '../fields/yes-no-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { firmGridCss } from './firm-grid.ts';

const details = [
  { detail: 'name', label: 'Name', help: '' },
  { detail: 'contact', label: 'Telephone or e-mail', help: 'As customers reach you' },
  {
    detail: 'scheme',
    label: 'Registration',
    help: 'With whom the firm is registered to certify its own work, if it is',
  },
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
      </div>`;
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
