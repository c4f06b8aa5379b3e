import { html, type TemplateResult } from 'lit';
import type { ArchiveFault } from '#archive/archive-fault.ts';
import type { Asset, Job } from '#model/job.ts';
import type { JobLine } from '../controllers/job-list.ts';
import { jobHref } from '../controllers/router.ts';
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

/** Said of an archive that cannot be opened. */
export const archiveNotice = (name: string, { path, message, remedy }: ArchiveFault): TemplateResult =>
  html`<div class="warning" role="alert">
    <p><strong>${name} cannot be opened.</strong> ${path === 'file' ? 'In it' : html`<code>${path}</code>`}: ${message}. ${remedy}. Nothing was changed.</p>
  </div>`;

/** Said of a job from an archive that has not all of its pictures. */
export const missingNotice = ({ id, title }: Job, missing: readonly Asset[]): TemplateResult =>
  html`<div class="warning" role="status">
    <p>
      “${title}” was read whole, but ${counted(missing.length, 'picture')} of it ${missing.length === 1 ? 'is' : 'are'} not in the file:
      ${missing.map(({ name }) => name).join(', ')}. In the job their places say so.
    </p>
    <a class="button" href=${jobHref(id)}>Go to the job</a>
  </div>`;

/** Said in the place of a list without jobs. */
export const noJobs = (putDemos: () => void): TemplateResult => html`<div class="empty">
  <h2>No jobs yet</h2>
  <ol>
    <li><strong>New job</strong> begins with an empty house: say what is found, what is wanted, and how it is joined.</li>
    <li><strong>Open a job file</strong> takes one that was sent to you, with its photos or without; it can be dropped on this page, too.</li>
    <li><strong>Demo jobs</strong> show what a finished one looks like.</li>
  </ol>
  <button @click=${putDemos}>Put the demo jobs on the list</button>
</div>`;

/** An opened job that the list has already: it is opened beside that one, or left. */
export const twinNotice = (
  twin: Job,
  open: () => void,
): TemplateResult => html`<div class="warning" role="alert">
  <p>“${twin.title}” is on the list already, perhaps in another state. Nothing was changed.</p>
  <button @click=${open}>Open the file as a copy</button>
  <a class="button" href=${jobHref(twin.id)}>Go to the one on the list</a>
</div>`;
