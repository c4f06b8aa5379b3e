import { html, nothing, type TemplateResult } from 'lit';
import type { ServerRefusal } from '../controllers/api-client.ts';
import '../elements/fault-list.ts';

/** What can be done about a job that could not be opened. */
export interface RefusedActs {
  readonly bringBack: () => void;
  readonly tryAgain: () => void;
  readonly update: () => void;
}

/** What each refusal is called, and what leads on from it. */
function wayOn(code: string | undefined, acts: RefusedActs): readonly [string, string, () => void] {
  switch (code) {
    case 'no-such-job':
      return ['This job is not on the list', 'Bring it back', acts.bringBack];
    case 'job-newer':
      return ['This job needs a newer Ringwright', 'Update', acts.update];
    case 'library-newer':
      return ['Your prices and norms need a newer Ringwright', 'Update', acts.update];
    case 'not-reached':
      return ['This job is not on this device', 'Try again', acts.tryAgain];
    default:
      return ['The job cannot be opened', 'Try again', acts.tryAgain];
  }
}

/** What is said beside the server's words: somebody without a connection cannot see to a server. */
const moreWords = (code: string | undefined): string =>
  code === 'not-reached' ? 'A job that was opened here once can be worked on without one.' : '';

/** The faults of what is damaged: of what is newer nothing is. */
function faults({ code, faults }: ServerRefusal): TemplateResult | typeof nothing {
  if (faults.length === 0 || code.endsWith('-newer')) return nothing;
  const name = code === 'library-unreadable' ? 'of prices and norms' : 'of the job';
  return html`<fault-list name=${name} .faults=${faults}></fault-list>`;
}

/** Why a job could not be opened, and what can be done about it. */
export function jobRefused(refusal: ServerRefusal | null, acts: RefusedActs): TemplateResult {
  const [title, words, act] = wayOn(refusal?.code, acts);
  return html`<div class="warning" role="alert">
      <h2>${title}</h2>
      <p>${refusal?.message} ${moreWords(refusal?.code)}</p>
      <button @click=${act}>${words}</button>
      <a class="button" href="/">All jobs</a>
    </div>
    ${refusal === null ? nothing : faults(refusal)}`;
}
