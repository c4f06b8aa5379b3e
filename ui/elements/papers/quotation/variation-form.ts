import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { keepFocus } from '../../../controllers/keep-focus.ts';
import { send } from '../../../job-events.ts';
import type { JobView } from '../../../job-view.ts';
import type { QuotationRecord } from '../../../quotations/quotation-record.ts';
import type { DraftPhoto, QuotationsView } from '../../../quotations/quotations-view.ts';
import { pounds } from '../../../written.ts';
import type { FieldChange } from '../../fields/field-element.ts';
import '../../fields/text-field.ts';
import type { ExtraAdded } from '../../price/extra-form.ts';
import '../../price/extra-work.ts';
import { controlsCss } from '../../shared-styles.ts';
import './money-moved.ts';
import { dearer } from './status-words.ts';
import { workLines } from './work-lines.ts';

/** On site, something unexpected: what was found, a photo, and what the change of the agreed work costs. */
export class VariationForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    quotation: { attribute: false },
    quotations: { attribute: false },
    tried: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        margin-top: 12px;
      }
      .photos,
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        align-items: end;
        margin: 8px 0;
      }
      figure {
        display: grid;
        gap: 4px;
        margin: 0;
      }
      img {
        width: 88px;
        height: 88px;
        object-fit: cover;
        border: 1px solid var(--rule);
      }
      .camera {
        position: relative;
        display: inline-flex;
        align-items: center;
        min-height: 44px;
        padding: 4px 12px;
        font-weight: 500;
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--corner);
        cursor: pointer;
      }
      .camera input {
        position: absolute;
        inset: 0;
        opacity: 0;
        cursor: pointer;
      }
      .camera:focus-within {
        outline: 2px solid var(--copper);
        outline-offset: 2px;
      }
      h5 {
        margin: 14px 0 2px;
        font-size: 1rem;
      }
      .missing {
        padding-left: 8px;
        border-left: 4px solid var(--fail);
      }
    `,
  ];
  declare view: JobView;
  declare quotation: QuotationRecord;
  declare quotations: QuotationsView;
  declare private tried: boolean;

  constructor() {
    super();
    keepFocus(this);
    this.tried = false;
  }

  override render(): TemplateResult {
    const { variation, working } = this.quotations;
    return html`<h4>Something unexpected?</h4>
      ${
        this.quotation.variations.some(({ status }) => status === 'offered')
          ? html`<p class="hint">A variation is open: record the customer’s answer to it first.</p>`
          : variation === null
            ? html`<p class="hint">
                ${working ? 'Looking what has changed since it was agreed…' : 'The accepted scheme is not in the job any more: undo its removal, or the change cannot be priced.'}
              </p>`
            : this.#form(variation)
      }`;
  }

  #form(variation: NonNullable<QuotationsView['variation']>): TemplateResult {
    const { moved } = variation;
    const isSame = moved.parts.length === 0 && moved.idle.length === 0;
    return html`<text-field
        multiline
        label="What was found and what is done about it, in words for the customer"
        .value=${this.quotations.reason}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => {
          event.stopPropagation();
          this.#typed(event.detail.value);
        }}
      ></text-field>
      ${this.tried && this.quotations.reason.trim() === '' ? html`<p class="missing" role="alert">Say what was found: the customer is to agree to it.</p>` : nothing}
      ${this.#photos()}
      <h5>What it takes</h5>
      <p class="hint">
        Where the drawing shows it, change the job as you found it: the wall, the point, the way, the remedy. Price here whatever no
        drawing shows.
      </p>
      <extra-work
        .view=${this.view}
        .suggested=${this.quotations.reason}
        @extra-added=${(event: CustomEvent<ExtraAdded>) => this.#added(event.detail)}
      ></extra-work>
      ${isSame ? html`<p class="hint" role="status">Nothing has changed so far.</p>` : this.#change(variation)}`;
  }

  #change({
    beforePence,
    afterPence,
    moved,
    work,
  }: NonNullable<QuotationsView['variation']>): TemplateResult {
    return html`<p role="status">
        With what has changed in the job: <strong>${pounds(afterPence)}</strong> instead of ${pounds(beforePence)},
        <strong>${dearer(afterPence - beforePence, pounds)}</strong>.
      </p>
      <money-moved .moved=${{ ...moved, beforePence, afterPence }} .beforeWords=${'Agreed so far'}></money-moved>
      ${workLines(work)}
      <div class="acts">
        <button class="main" ?disabled=${this.quotations.busy} @click=${() => this.#offer()}>
          Put it to the customer
        </button>
      </div>
      <p class="hint">
        It is priced as the quotation was, not at today’s prices and terms, which the price beside the plan goes by. It is
        kept with the quotation as it is then. Go on with it once the customer has agreed.
      </p>`;
  }

  #typed(reason: string): void {
    send(this, 'quotation-asked', { do: 'type-reason', reason });
  }

  /** What was added says what was found, until somebody says it better. */
  #added({ words }: ExtraAdded): void {
    if (this.quotations.reason.trim() === '') this.#typed(words);
  }

  #photos(): TemplateResult {
    return html`<div class="photos">
      ${this.quotations.photos.map((photo, index) => this.#photo(photo, index + 1))}
      <label class="camera"
        >Take or add a photo<input
          type="file"
          accept="image/*"
          capture="environment"
          @change=${(event: Event) => this.#picked(event)}
      /></label>
    </div>`;
  }

  #photo({ url }: DraftPhoto, number: number): TemplateResult {
    return html`<figure>
      <img src=${url} alt=${`Photo ${number} for this variation`} />
      <button class="small" @click=${() => send(this, 'quotation-asked', { do: 'drop-photo', url })}>
        Remove<span class="visually-hidden"> photo ${number}</span>
      </button>
    </figure>`;
  }

  #picked(event: Event): void {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    if (file !== undefined) send(this, 'quotation-asked', { do: 'add-photo', file });
    // The same one can be picked again after it was removed.
    input.value = '';
  }

  #offer(): void {
    this.tried = true;
    if (this.quotations.reason.trim() === '') return;
    this.tried = false;
    send(this, 'quotation-asked', { do: 'vary', quotationId: this.quotation.id });
  }
}
customElements.define('variation-form', VariationForm);
declare global {
  interface HTMLElementTagNameMap {
    'variation-form': VariationForm;
  }
}
