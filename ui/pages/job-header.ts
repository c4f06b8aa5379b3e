import { html, nothing, type TemplateResult } from 'lit';
import type { JobDesk } from '../controllers/job-desk.ts';
import type { JobRoute } from '../controllers/router.ts';
import { surveyOf } from '../elements/as-found/ask-words.ts';
import '../elements/step-run.ts';
import type { JobView } from '../job-view.ts';
import { stepStates } from '../steps-done.ts';
import { keepingLine } from './job-notice.ts';
import { stepHrefs } from './step-hrefs.ts';
import { undoTools } from './undo-button.ts';

/** What the head of a job's page goes by beside the job. */
interface HeaderSight {
  readonly route: JobRoute;
  readonly phone: boolean;
  /** How many photos wait to be sent. */
  readonly photosWaiting: number;
}

/** The head of a job's page: its name, its steps, undo and redo; on a phone the steps lie below it, at the foot of the window. */
export function jobHeader(desk: JobDesk, { route, phone, photosWaiting }: HeaderSight): TemplateResult {
  const { view } = desk;
  const steps = view === null ? nothing : stepsOf(view, route);
  return html`<header>
      <div class="title">
        <p>
          <a href="/">All jobs</a>
          <span class="reference">${view?.job.reference}</span>
          ${view === null ? nothing : keepingLine(desk, photosWaiting)}
        </p>
        <h1 tabindex="-1">${view?.job.title ?? 'Job'}</h1>
      </div>
      ${phone ? nothing : steps}
      ${desk.refusal === null ? undoTools(desk) : nothing}
    </header>
    ${phone ? steps : nothing}`;
}

const stepsOf = ({ job, scheme, estimate }: JobView, route: JobRoute): TemplateResult =>
  html`<step-run
    .step=${route.step}
    .states=${stepStates(job, estimate.schemes, surveyOf({ scheme, estimate }), scheme?.id ?? null)}
    .hrefs=${stepHrefs(job, route)}
  ></step-run>`;
