import { html, type TemplateResult } from 'lit';
import type { Place } from '#model/installation.ts';
import '../elements/as-found/as-found-step.ts';
import '../elements/kit/kit-step.ts';
import '../elements/papers/papers-step.ts';
import '../elements/price/price-step.ts';
import '../elements/wanted/wanted-step.ts';
import '../elements/ways/ways-step.ts';
import { type JobView, kitParts, paperParts, type StepPart } from '../job-view.ts';
import type { QuotationsView } from '../quotations/quotations-view.ts';

/** What a step is shown by besides the job. */
interface StepSight {
  /** The place that was tapped on the plan while a step waited for one; else null. */
  readonly tapped: Place | null;
  readonly part: StepPart;
  /** What of the survey is to be answered; null for nothing. */
  readonly ask: string | null;
  /** What was issued of the job, for its papers. */
  readonly quotations: QuotationsView;
}

/** The sheet of the step that a job is at. */
export function stepElement(view: JobView, { tapped, part, ask, quotations }: StepSight): TemplateResult {
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
