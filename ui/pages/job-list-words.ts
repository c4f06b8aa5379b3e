import { html, type TemplateResult } from 'lit';
import type { JobLine } from '../controllers/job-list.ts';
import { counted } from '../written.ts';

/** Said above a list that is as this device last heard it. */
export function awayNotice(listed: readonly JobLine[]): TemplateResult {
  const waiting = listed.filter(({ stand }) => stand === 'waits').length;
  return html`<p class="away" role="status">
    <strong>No connection.</strong> ${
      waiting === 0
        ? 'This is the list as this device last had it. What you do is kept here.'
        : `${counted(waiting, 'job')} kept on this device, sent when there is one.`
    }
  </p>`;
}

/** Said in the place of a list without jobs. */
export const noJobs = (putDemos: () => void): TemplateResult => html`<div class="empty">
  <h2>No jobs yet</h2>
  <ol>
    <li><strong>New job</strong> begins with an empty house: say what is found, what is wanted, and how it is joined.</li>
    <li><strong>Open a job file</strong> takes one that was sent to you; it can be dropped on this page, too.</li>
    <li><strong>Demo jobs</strong> show what a finished one looks like.</li>
  </ol>
  <button @click=${putDemos}>Put the demo jobs on the list</button>
</div>`;
