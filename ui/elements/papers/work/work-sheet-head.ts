import { html, type TemplateResult } from 'lit';
import { stateTag } from '#engine/state-tag.ts';
import { cautionsOf } from '#engine/work/cautions-of.ts';
import type { JobView } from '../../../job-view.ts';
import { dayWords } from '../../../written.ts';

/** What every sheet that is worked from has on its head and before its first line: which job and state it is of, and the usual cautions. */
export function workSheetHead({ job, scheme, date, estimate }: JobView, name: string): TemplateResult {
  const cautions = cautionsOf((scheme ?? estimate.asFound).worked);
  return html`<div class="paper-head">
      <h2>${name}, ${job.reference}</h2>
      <p>${job.title}: ${scheme?.name ?? 'as found'}. ${dayWords(date)}, state ${stateTag(job)}.</p>
    </div>
    <div class="caution">
      <p class="screen">${cautions.map(({ short }) => short).join(' ')}</p>
      ${cautions.map(({ words }) => html`<p class="paper-only">${words}</p>`)}
      <p class="paper-only">Cores are proved by test, never by colour alone. ${estimate.editionNote}</p>
    </div>
    <button class="screen" @click=${() => window.print()}>Print this sheet</button>`;
}
