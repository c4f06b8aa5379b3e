import { html, nothing, type TemplateResult } from 'lit';
import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { QuotationDocument, QuotedPrice, QuotedScheme } from '#engine/quotation/document.ts';
import { type SumHeads, sumHeads } from '#engine/quotation/sum-heads.ts';
import { pounds } from '../../../written.ts';
import './svg-drawing.ts';

const list = (lines: readonly string[]): TemplateResult => html`<ul>
  ${lines.map((words) => html`<li>${words}</li>`)}
</ul>`;

const block = (title: string, lines: readonly string[]): TemplateResult | typeof nothing =>
  lines.length === 0 ? nothing : html`<h4>${title}</h4>${list(lines)}`;

const sum = (words: string, pence: number, whole = false): TemplateResult =>
  html`<tr class=${whole ? 'whole' : ''}><th scope="row">${words}</th><td>${pounds(pence)}</td></tr>`;

function priceTable(price: QuotedPrice, heads: SumHeads): TemplateResult {
  const { parts, netPence, vatPercent, vatPence, grossPence, depositPence, balancePence, range } = price;
  return html`<h4>Price</h4>
    <table class="money">
      <tbody>
        ${parts.map(({ words, pence }) => sum(words, pence))} ${heads.net === null ? nothing : sum(heads.net, netPence)}
        ${vatPercent > 0 ? sum(`VAT at ${vatPercent} %`, vatPence) : nothing}
        ${sum(heads.gross, grossPence, true)}
        ${
          depositPence === null
            ? nothing
            : html`${sum('of which before the work', depositPence)} ${sum('and afterwards', balancePence)}`
        }
      </tbody>
    </table>
    ${range === null ? nothing : html`<p>What you pay may come to anything from ${pounds(range.lowPence)} to ${pounds(range.highPence)}${heads.after}.</p>`}
    <p>${price.vatWords}</p>`;
}

function drawn(
  { schemeId }: QuotedScheme,
  { storeys, legend }: QuotationDrawings,
  isFirst: boolean,
): TemplateResult | typeof nothing {
  const own = storeys.filter((storey) => storey.schemeId === schemeId);
  if (own.length === 0) return nothing;
  return html`<h4>The drawing</h4>
    <div class="drawings">
      ${own.map(
        ({ storeyName, svg }) =>
          html`<div><p class="label">${storeyName}</p>
            <svg-drawing .svg=${svg} .label=${`Where the new points and cables are: ${storeyName}`}></svg-drawing></div>`,
      )}
    </div>
    ${isFirst ? html`<svg-drawing class="legend" .svg=${legend.svg} label="What the signs in the drawing mean"></svg-drawing>` : nothing}`;
}

/** One option of a customer's paper. */
export const optionTemplate = (
  scheme: QuotedScheme,
  paper: QuotationDocument,
  drawings: QuotationDrawings,
): TemplateResult => html`<section class="option">
  <h3>${scheme.heading}, ${scheme.nickname}: ${pounds(scheme.price.grossPence)}</h3>
  ${scheme.withheld === null ? nothing : html`<p class="notice">${scheme.withheld}</p>`} ${list(scheme.how)}
  ${block('Also done', scheme.youGet)} ${priceTable(scheme.price, sumHeads(paper))}
  ${block('How long, and the power', scheme.time)}
  ${scheme.felt.length === 0 ? nothing : html`<h4>Where you will notice it</h4>`}
  <div class="rows">
    ${scheme.felt.map(({ room, words }) => html`<div><strong>${room}</strong>${list(words)}</div>`)}
  </div>
  ${drawn(scheme, drawings, paper.schemes[0] === scheme)}
</section>`;
