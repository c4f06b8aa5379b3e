import { html, nothing, type TemplateResult } from 'lit';
import type { ServerRefusal } from '../controllers/api-client.ts';
import '../elements/fault-list.ts';

/** Why a job could not be opened, and what can be done about it. */
export function jobRefused(
  refusal: ServerRefusal | null,
  act: { readonly bringBack: () => void; readonly tryAgain: () => void },
): TemplateResult {
  const gone = refusal?.code === 'no-such-job';
  return html`<div class="warning" role="alert">
      <h2>${gone ? 'This job is not on the list' : 'The job cannot be opened'}</h2>
      <p>${refusal?.message}</p>
      <button @click=${gone ? act.bringBack : act.tryAgain}>${gone ? 'Bring it back' : 'Try again'}</button>
      <a class="button" href="/">All jobs</a>
    </div>
    ${
      refusal === null || refusal.faults.length === 0
        ? nothing
        : html`<fault-list
            name=${refusal.code === 'library-unreadable' ? 'of prices and norms' : 'of the job'}
            .faults=${refusal.faults}
          ></fault-list>`
    }`;
}
