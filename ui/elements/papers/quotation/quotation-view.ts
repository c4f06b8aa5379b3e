import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type {
  QuotationDocument,
  QuotedForm,
  QuotedLine,
  QuotedParty,
  QuotedPassage,
} from '#engine/quotation/document.ts';
import { sumHeads } from '#engine/quotation/sum-heads.ts';
import { vatWithin } from '#engine/quotation/vat-said.ts';
import { pounds } from '../../../written.ts';
import { controlsCss } from '../../shared-styles.ts';
import { optionTemplate } from './quotation-option.ts';
import { quotationCss } from './quotation-styles.ts';

const line = ({ words, forOptions }: QuotedLine): TemplateResult =>
  html`${forOptions === null ? nothing : html`<strong>${forOptions}: </strong>`}${words}`;

function lines(title: string, of: readonly QuotedLine[]): TemplateResult | typeof nothing {
  if (of.length === 0) return nothing;
  return html`<h3>${title}</h3><ul>${of.map((one) => html`<li>${line(one)}</li>`)}</ul>`;
}

const passage = ({ heading, paragraphs }: QuotedPassage): TemplateResult | typeof nothing =>
  paragraphs.length === 0
    ? nothing
    : html`<h3>${heading}</h3>${paragraphs.map((words) => html`<p>${words}</p>`)}`;

const form = ({ heading, intro, lines: fields }: QuotedForm): TemplateResult => html`<h3>${heading}</h3>
  ${intro.map((words) => html`<p>${words}</p>`)}
  <dl class="form">${fields.map(({ label, value }) => html`<dt>${label}</dt><dd>${value}</dd>`)}</dl>`;

const party = (title: string, { name, lines: rest }: QuotedParty): TemplateResult => html`<div>
  <p class="label">${title}</p>
  <p><strong>${name}</strong></p>
  ${rest.map((words) => html`<p>${words}</p>`)}
</div>`;

/** A quotation or an estimate as its customer reads it on a phone: the words and sums of the PDF, and no others. */
export class QuotationView extends LitElement {
  static override properties: PropertyDeclarations = {
    paper: { attribute: false },
    drawings: { attribute: false },
  };
  static override styles = [controlsCss, quotationCss];
  declare paper: QuotationDocument;
  declare drawings: QuotationDrawings;

  override render(): TemplateResult {
    const { paper, drawings } = this;
    return html`${this.#head()}
      <h3>What you asked for</h3>
      <ul>${paper.asked.map((words) => html`<li>${words}</li>`)}</ul>
      ${this.#prices()} ${this.#compared()} ${paper.weighed.map(passage)}
      ${paper.schemes.map((scheme) => optionTemplate(scheme, paper, drawings))}
      ${lines('What is in the price', paper.included)} ${lines('What is not in the price', paper.excluded)}
      ${this.#assumed()} ${passage(paper.unexpected)} ${this.#extras()} ${passage(paper.payment)}
      ${lines('Certificate, and telling building control', paper.papers)} ${passage(paper.about)}
      <h3>Take care</h3>
      <ul>${[...paper.cautions, paper.rulesWords].map((words) => html`<li>${words}</li>`)}</ul>
      ${this.#glossary()} ${form(paper.acceptance)} ${this.#cancellation()}`;
  }

  #head(): TemplateResult {
    const { paper } = this;
    const { title, jobTitle, reference, revision, dateWords, state, place } = paper;
    return html`<h2>${title}</h2>
      <p>${jobTitle}</p>
      <p class="label">${reference}, revision ${revision}, ${dateWords}. State of the job: ${state}</p>
      <div class="parties">
        ${party('From', paper.firm)} ${party('For', paper.customer)}
        <div><p class="label">Where</p>${place.map((words) => html`<p>${words}</p>`)}</div>
      </div>
      ${[paper.draft, paper.notIssued, paper.demoNote].map((words) => (words == null ? nothing : html`<p class="notice">${words}</p>`))}
      <p>${paper.kindWords}</p>`;
  }

  #prices(): TemplateResult | typeof nothing {
    const { schemes, validWords } = this.paper;
    if (schemes.length === 0) return nothing;
    return html`<div class="prices">
        ${schemes.map(
          ({ heading, nickname, price }) => html`<div>
            <p>${heading}</p>
            <p>${nickname}</p>
            <p class="sum">${pounds(price.grossPence)}</p>
            <p>${vatWithin(price)}</p>
            ${price.range === null ? nothing : html`<p>may come to ${pounds(price.range.lowPence)} to ${pounds(price.range.highPence)}</p>`}
          </div>`,
        )}
      </div>
      <p>${validWords}.</p>`;
  }

  #compared(): TemplateResult | typeof nothing {
    const { compared, schemes } = this.paper;
    if (compared.length === 0) return nothing;
    return html`<h3 id="compared">The options side by side</h3>
      <div class="wide" role="region" aria-labelledby="compared" tabindex="0">
        <table>
          <thead>
            <tr>
              <td></td>
              ${schemes.map(({ heading }) => html`<th scope="col">${heading}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${compared.map(
              ({ what, cells }) =>
                html`<tr><th scope="row">${what}</th>${cells.map((cell) => html`<td>${cell}</td>`)}</tr>`,
            )}
          </tbody>
        </table>
      </div>`;
  }

  #assumed(): TemplateResult | typeof nothing {
    const { assumed } = this.paper;
    if (assumed.length === 0) return nothing;
    return html`<h3>What the price takes for granted</h3>
      <div class="rows">
        ${assumed.map(
          (one) => html`<div>
            ${line(one)}
            <p class="label">If it is not so: ${one.otherwise}.</p>
            ${one.sumWords === '' ? nothing : html`<p class="label">Can move the price by: ${one.sumWords}</p>`}
          </div>`,
        )}
      </div>`;
  }

  #extras(): TemplateResult | typeof nothing {
    const { extras } = this.paper;
    if (extras.length === 0) return nothing;
    return html`<h3>What else we saw, or can do</h3>
      <p>None of this is in the price. Say so if you want any of it.</p>
      <div class="rows">
        ${extras.map(
          (one) => html`<div>
            ${line(one)}
            <p class="label">${one.remedy} ${one.sumWords === '' ? '' : `${sumHeads(this.paper).alone}: ${one.sumWords}`}</p>
          </div>`,
        )}
      </div>`;
  }

  #glossary(): TemplateResult | typeof nothing {
    const { glossary } = this.paper;
    if (glossary.length === 0) return nothing;
    return html`<h3>Words used here</h3>
      <ul>${glossary.map(({ word, meaning }) => html`<li><strong>${word}:</strong> ${meaning}</li>`)}</ul>`;
  }

  #cancellation(): TemplateResult | typeof nothing {
    const { cancellation } = this.paper;
    if (cancellation === null) return nothing;
    return html`${passage(cancellation.notice)} ${form(cancellation.form)} ${form(cancellation.earlyStart)}`;
  }
}
customElements.define('quotation-view', QuotationView);
declare global {
  interface HTMLElementTagNameMap {
    'quotation-view': QuotationView;
  }
}
