import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { offeredSchemes } from '#engine/quotation/offered.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Quoting, Terms } from '#model/job.ts';
import {
  MOST_OFFERED,
  offerSchemes,
  setCharging,
  settleAgreement,
  writeToCustomer,
} from '../../../edits/quoting.ts';
import { send } from '../../../job-events.ts';
import type { JobView } from '../../../job-view.ts';
import { pounds } from '../../../written.ts';
import '../../fields/choice-field.ts';
import type { FieldChange } from '../../fields/field-element.ts';
import '../../fields/text-field.ts';
import '../../fields/tick-field.ts';
import { chargingChoices } from '../../price/term-choices.ts';
import { controlsCss } from '../../shared-styles.ts';

const customers = [
  { value: 'consumer', label: 'A private person' },
  { value: 'business', label: 'A business, or a landlord as one' },
] as const;

const places = [
  { value: 'customers-home', label: 'At the customer’s home' },
  { value: 'at-a-distance', label: 'By phone, message or post' },
  { value: 'firms-premises', label: 'At our own premises' },
] as const;

/** Why a scheme cannot be offered besides; empty where it can. */
function whyNot(scheme: SchemeEstimate, isOffered: boolean, count: number): string {
  if (isOffered) return '';
  if (scheme.complies === 'no') return 'does not comply';
  return count >= MOST_OFFERED ? `${MOST_OFFERED} are offered already` : '';
}

/** What the customer is offered, and the facts of the agreement that the paper turns on. @fires job-edit */
export class QuotationOffer extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      fieldset {
        margin: 0 0 10px;
        padding: 0;
        border: 0;
      }
      legend {
        padding: 0;
        font: 600 0.9375rem / 1.4 var(--drawing-font);
      }
      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(220px, 1fr));
        gap: 10px 12px;
        align-items: start;
        margin-bottom: 10px;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    return html`<fieldset>
        <legend>What is offered, ${MOST_OFFERED} ways at the most</legend>
        ${this.view.estimate.schemes.map((scheme) => this.#scheme(scheme))}
      </fieldset>
      <div class="fields">
        ${this.#charging()} ${this.#agreement('customer', 'The customer is', customers)}
        ${this.#agreement('agreedAt', 'The agreement is made', places)} ${this.#words('start', 'When work can begin', false)}
        ${this.#words('remarks', 'Else to the customer', true)}
      </div>`;
  }

  get #offered(): readonly string[] {
    const { job, estimate } = this.view;
    return offeredSchemes(job, estimate).map(({ scheme }) => scheme.id);
  }

  #scheme(scheme: SchemeEstimate): TemplateResult {
    const offered = this.#offered;
    const isOffered = offered.includes(scheme.id);
    const why = whyNot(scheme, isOffered, offered.length);
    return html`<tick-field
      .label=${`${scheme.name}, ${pounds(scheme.totals.grossPence)}${why === '' ? '' : `: ${why}`}`}
      ?disabled=${why !== ''}
      .value=${isOffered}
      @field-change=${(event: CustomEvent<FieldChange<boolean>>) => {
        event.stopPropagation();
        const { schemes } = this.view.job;
        const wanted = (id: string): boolean =>
          id === scheme.id ? event.detail.value : offered.includes(id);
        send(this, 'job-edit', offerSchemes(schemes.map(({ id }) => id).filter(wanted)));
      }}
    ></tick-field>`;
  }

  #charging(): TemplateResult {
    const { job, library } = this.view;
    const firm = chargingChoices.find(({ value }) => value === library.terms.charging)?.label;
    return html`<choice-field
      label="Charged"
      .value=${job.terms.charging ?? null}
      .options=${chargingChoices}
      .empty=${firm === undefined ? 'By what is proven' : `The firm’s. ${firm}`}
      help="By what is proven: fixed where every check could be made, else an estimate"
      @field-change=${(event: CustomEvent<FieldChange<Terms['charging'] | null>>) => {
        event.stopPropagation();
        send(this, 'job-edit', setCharging(event.detail.value ?? null));
      }}
    ></choice-field>`;
  }

  #agreement<K extends 'customer' | 'agreedAt'>(
    key: K,
    label: string,
    options: readonly { readonly value: NonNullable<Quoting[K]>; readonly label: string }[],
  ): TemplateResult {
    return html`<choice-field
      .label=${label}
      .value=${this.view.job.quoting?.[key] ?? null}
      .options=${options}
      .empty=${'Not said yet'}
      .help=${key === 'agreedAt' ? 'A private person may cancel what is not agreed at your premises' : ''}
      @field-change=${(event: CustomEvent<FieldChange<NonNullable<Quoting[K]> | null>>) => {
        event.stopPropagation();
        send(this, 'job-edit', settleAgreement(key, event.detail.value));
      }}
    ></choice-field>`;
  }

  #words(key: 'start' | 'remarks', label: string, multiline: boolean): TemplateResult {
    return html`<text-field
      .label=${label}
      ?multiline=${multiline}
      .value=${this.view.job.quoting?.[key] ?? ''}
      @field-change=${(event: CustomEvent<FieldChange<string>>) => {
        event.stopPropagation();
        send(this, 'job-edit', writeToCustomer(key, event.detail.value));
      }}
    ></text-field>`;
  }
}
customElements.define('quotation-offer', QuotationOffer);
declare global {
  interface HTMLElementTagNameMap {
    'quotation-offer': QuotationOffer;
  }
}
