import { html, nothing, type TemplateResult } from 'lit';
import type { LaneState } from '../../controllers/worker-lane.ts';

/** How a question to the search stands, where that has to be said: that it takes a while, or that it failed. */
export function laneLine(
  { status, trouble }: LaneState<unknown, unknown>,
  words: { readonly slow: string; readonly again: () => void },
): TemplateResult {
  return html`<p class="lane" role="status">${status === 'slow' ? words.slow : nothing}</p>
    ${
      status === 'failed'
        ? html`<div class="trouble" role="alert">
            <p>The search broke off: ${trouble}. Nothing in the job was changed.</p>
            <button @click=${words.again}>Try again</button>
          </div>`
        : nothing
    }`;
}
