import { html, nothing, type TemplateResult } from 'lit';
import { surveyGapWords } from '#engine/price/survey-gaps-of.ts';
import type { PriceBuildUp } from '#engine/price/totals.ts';
import { percent, pounds } from '../../written.ts';

type Priced = Pick<
  PriceBuildUp,
  'contingencyPercent' | 'contingencySource' | 'contingencyParts' | 'surveyGaps'
>;

/** What a contingency goes by, in a few words. */
export function contingencyWords({ contingencyPercent, contingencySource, surveyGaps }: Priced): string {
  const rate = percent(contingencyPercent);
  if (contingencySource === 'terms')
    return surveyGaps.length === 0
      ? `${rate}, as set in the terms; the survey leaves nothing open`
      : `${rate}, as set in the terms. Left open by the survey, and to be met out of it:`;
  return surveyGaps.length === 0
    ? `${rate}: the survey leaves nothing open`
    : `${rate}, by what the survey leaves open:`;
}

/** How a contingency comes about: each gap of the survey, with its pence where the survey sets it. */
export function contingencyHow(price: Priced): TemplateResult {
  const { contingencySource, contingencyParts, surveyGaps } = price;
  const rows = surveyGaps.map((gap) => ({
    words: surveyGapWords[gap],
    pence: contingencyParts.find((part) => part.gap === gap)?.pence ?? null,
  }));
  return html`${contingencyWords(price)}
  ${
    rows.length === 0
      ? nothing
      : html`<ul class="parts">
          ${rows.map(
            ({ words, pence }) =>
              html`<li><b>${contingencySource === 'survey' && pence !== null ? pounds(pence) : '·'}</b><span>${words}</span></li>`,
          )}
        </ul>`
  }`;
}
