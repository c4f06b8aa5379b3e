import { html, type TemplateResult } from 'lit';
import type { Place } from '#model/installation.ts';
import type { PartState } from '../controllers/screen-parts.ts';
import '../elements/part-coming.ts';
import { type JobView, kitParts, paperParts, type StepPart } from '../job-view.ts';
import type { QuotationsView } from '../quotations/quotations-view.ts';

/** What a step is shown by besides the job. */
interface StepSight {
  /** How far its files are. */
  readonly state: PartState;
  /** The place that was tapped on the plan while a step waited for one; else null. */
  readonly tapped: Place | null;
  readonly part: StepPart;
  /** What of the survey is to be answered; null for nothing. */
  readonly ask: string | null;
  /** What was issued of the job, for its papers. */
  readonly quotations: QuotationsView;
}

/** The sheet of the step that a job is at, or that it is coming. */
export function stepElement(
  view: JobView,
  { state, tapped, part, ask, quotations }: StepSight,
): TemplateResult {
  if (state !== 'there') return html`<part-coming class="step" .state=${state}></part-coming>`;
  switch (view.step) {
    case 'as-found':
      return html`<as-found-step class="step" .view=${view} .tapped=${tapped} .ask=${ask}></as-found-step>`;
    case 'wanted':
      return html`<wanted-step class="step" .view=${view} .tapped=${tapped}></wanted-step>`;
    case 'ways':
      return html`<ways-step class="step" .view=${view}></ways-step>`;
    case 'kit':
      return html`<kit-step class="step" .view=${view} .shown=${kitParts.find((each) => each === part) ?? 'bill'}></kit-step>`;
    case 'price':
      return html`<price-step class="step" .view=${view}></price-step>`;
    case 'papers':
      return html`<papers-step class="step" .view=${view} .quotations=${quotations} .shown=${paperParts.find((each) => each === part) ?? 'files'}></papers-step>`;
  }
}

/** Two schemes side by side, or that they are coming. */
export function compareElement(
  view: JobView,
  state: PartState,
  [a, b]: readonly [a: string | null, b: string | null],
): TemplateResult {
  if (state !== 'there') return html`<part-coming class="step" .state=${state}></part-coming>`;
  return html`<compare-view class="step" .view=${view} .a=${a} .b=${b}></compare-view>`;
}
