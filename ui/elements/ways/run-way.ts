import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { runName } from '#drawing/ways/run-name.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { leastDisturbingRun } from '#engine/least-disturbing-run.ts';
import { isSameData } from '#engine/plan/same-data.ts';
import type { Run } from '#engine/ways/run.ts';
import type { Waypoint } from '#model/cable.ts';
import type { Library } from '#model/library.ts';
import { pinRun, whyNotPinned } from '../../edits/pin-run.ts';
import { send } from '../../job-events.ts';
import { whyNotDrawn } from '../../way-drawing/way-draft.ts';
import { controlsCss } from '../shared-styles.ts';
import { runWithLength } from './run-name.ts';

const isSameWay = (a: Run, b: Run): boolean => a.id === b.id && isSameData(a.segments, b.segments);

/** How a new cable of the shown scheme runs, found or set by hand, with what can be done about it. @fires job-edit, way-drawn */
export class RunWay extends LitElement {
  static override properties: PropertyDeclarations = {
    worked: { attribute: false },
    library: { attribute: false },
    run: { attribute: false },
    isLeast: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 8px;
        align-items: center;
        margin-top: 8px;
        font-size: 0.875rem;
      }
    `,
  ];
  declare worked: Worked;
  declare library: Library;
  declare run: Run;
  /** Whether it was asked for the least disturbing way and takes it already. */
  declare private isLeast: boolean;

  constructor() {
    super();
    this.isLeast = false;
  }

  /** What was said of a way holds as long as the cable runs so, however often the job is worked out meanwhile. */
  override willUpdate(changed: Map<string, unknown>): void {
    const before = changed.get('run') as Run | undefined;
    if (before !== undefined && !isSameWay(before, this.run)) this.isLeast = false;
  }

  override render(): TemplateResult {
    const { run, worked } = this;
    const why = whyNotDrawn(run) ?? whyNotPinned(worked, run);
    return html`<span>${runWithLength(worked, run)}: ${run.pinned ? 'its way is set' : 'its way is found'}</span>
      ${why === null ? this.#ways() : html`<span class="hint">It cannot be drawn: ${why}.</span>`}
      ${
        run.pinned
          ? html`<button class="small" @click=${() => this.#pin([])}>Let it find its own way</button>`
          : nothing
      }`;
  }

  #ways(): TemplateResult {
    const { run } = this;
    const schemeId = this.worked.scheme?.id ?? '';
    const target = { what: 'run', schemeId, runId: run.id } as const;
    return html`<button class="small" @click=${() => send(this, 'way-drawn', { do: 'begin', target })}>
        ${run.pinned ? 'Draw it on' : 'Draw its way'}
      </button>
      ${
        this.isLeast
          ? html`<span class="hint" role="status">No way disturbs the house less.</span>`
          : html`<button class="small" @click=${() => this.#least()}>Least disturbing way</button>`
      }`;
  }

  #least(): void {
    const via = leastDisturbingRun(this.worked.job, this.library, this.run);
    if (via === null) this.isLeast = true;
    else this.#pin(via);
  }

  #pin(via: readonly Waypoint[]): void {
    const { run, worked } = this;
    const at = { schemeId: worked.scheme?.id ?? '', connectionId: run.connectionId ?? '' };
    send(this, 'job-edit', pinRun(worked, at, { run, name: runName(worked, run), via }));
  }
}
customElements.define('run-way', RunWay);
declare global {
  interface HTMLElementTagNameMap {
    'run-way': RunWay;
  }
}
