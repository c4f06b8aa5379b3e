import { html, nothing, type TemplateResult } from 'lit';
import { nodeLabel } from '#drawing/node-label.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Run } from '#engine/ways/run.ts';
import { pinRun, whyNotPinned } from '../../edits/pin-run.ts';
import { send } from '../../job-events.ts';
import { whyNotDrawn } from '../../way-drawing/way-draft.ts';
import { metres } from '../../written.ts';

/** A cable by its ends: "R8 to W2". */
export const runName = (worked: Worked, { from, to }: Run): string =>
  `${nodeLabel(worked, from.nodeId)} to ${nodeLabel(worked, to.nodeId)}`;

/**
 * How a new cable of the shown scheme runs, found or drawn by hand, with what can be done about it.
 *
 * @param host sends the events.
 */
export function runWay(host: EventTarget, worked: Worked, run: Run): TemplateResult {
  const schemeId = worked.scheme?.id ?? '';
  const name = runName(worked, run);
  const why = whyNotDrawn(run) ?? whyNotPinned(worked, run);
  const at = { schemeId, connectionId: run.connectionId ?? '' };
  const length = run.lengthMm === null ? '' : `, ${metres(run.lengthMm)}`;
  return html`<div class="run">
    <span>${name}${length}: ${run.pinned ? 'drawn by hand' : 'its way is found'}</span>
    ${
      why === null
        ? html`<button
            class="small"
            @click=${() => send(host, 'way-drawn', { do: 'begin', target: { what: 'run', schemeId, runId: run.id } })}
          >
            ${run.pinned ? 'Draw it on' : 'Draw its way'}
          </button>`
        : html`<span class="hint">It cannot be drawn: ${why}.</span>`
    }
    ${
      run.pinned
        ? html`<button class="small" @click=${() => send(host, 'job-edit', pinRun(worked, at, { run, name, via: [] }))}>
            Let it find its own way
          </button>`
        : nothing
    }
  </div>`;
}
