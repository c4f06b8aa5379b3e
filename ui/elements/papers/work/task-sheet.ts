import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { partWords, questionOf, reckonedSaid, taskProgressSaid } from '#drawing/work/task-words.ts';
import { type TaskPart, taskList, type WorkTask } from '#engine/work/task-list.ts';
import { standingOf, type TaskProgress, taskProgress } from '#engine/work/task-progress.ts';
import { tickTask } from '../../../edits/site-work.ts';
import { send } from '../../../job-events.ts';
import type { JobView } from '../../../job-view.ts';
import { controlsCss } from '../../shared-styles.ts';
import './task-row.ts';
import { workSheetHead } from './work-sheet-head.ts';
import { workSheetCss } from './work-sheet-styles.ts';

/**
 * The shown scheme as a list to work by, in working order, with the holds at which the work stops; what is done is ticked, each hold answered.
 *
 * @fires job-edit
 */
export class TaskSheet extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    workSheetCss,
    css`
      section,
      .progress {
        max-width: 44rem;
      }
      h3 {
        break-after: avoid;
      }
      .progress {
        position: sticky;
        z-index: 1;
        top: 0;
        display: flex;
        flex-wrap: wrap;
        gap: 4px 12px;
        align-items: center;
        justify-content: space-between;
        margin: 12px 0 0;
        padding: 6px 0;
        background: var(--sheet);
        border-bottom: 1px solid var(--line);
      }
      .progress button {
        min-height: 44px;
      }
    `,
  ];
  declare view: JobView;

  constructor() {
    super();
    this.addEventListener('task-ticked', (event) => {
      event.stopPropagation();
      const { scheme } = this.view;
      if (scheme !== null) send(this, 'job-edit', tickTask(scheme.id, event.detail.task, event.detail.is));
    });
  }

  override render(): TemplateResult {
    const { scheme, job } = this.view;
    if (scheme === null) return html`<p class="hint">Wants a scheme: make one in <em>Ways</em>.</p>`;
    const parts = taskList(scheme);
    const done = job.done ?? [];
    const progress = taskProgress(parts, done, scheme.id);
    return html`${workSheetHead(this.view, 'Tasks in working order')}
      <div class="progress">
        <span role="status">${taskProgressSaid(progress)}</span>
        ${this.#next(progress)}
      </div>
      ${parts.map((part) => this.#part(part, (task) => standingOf(done, scheme.id, task)))}`;
  }

  #next({ next }: TaskProgress): TemplateResult | typeof nothing {
    if (next === null) return nothing;
    const words = next.hold === null ? next.words : questionOf(next.hold);
    return html`<button class="screen" @click=${() => this.#show(next)}>Next: ${shortened(words)}</button>`;
  }

  #part(
    { group, tasks, reckoned }: TaskPart,
    standing: (task: WorkTask) => ReturnType<typeof standingOf>,
  ): TemplateResult {
    return html`<section data-part=${group}>
      <h3>${partWords[group].title}</h3>
      <p class="soft">${partWords[group].caution}</p>
      ${reckoned.length === 0 ? nothing : html`<p class="soft">${reckonedSaid(reckoned)}</p>`}
      ${tasks.map((task) => html`<task-row data-task=${task.id} .task=${task} .standing=${standing(task)}></task-row>`)}
    </section>`;
  }

  #show({ id }: WorkTask): void {
    const row = [...this.renderRoot.querySelectorAll('task-row')].find(({ task }) => task.id === id);
    row?.scrollIntoView({ block: 'center' });
    row?.shadowRoot?.querySelector<HTMLElement>('tick-field, yes-no-field')?.focus({ preventScroll: true });
  }
}

const MOST_LETTERS = 36;
const shortened = (words: string): string =>
  words.length > MOST_LETTERS ? `${words.slice(0, MOST_LETTERS).trimEnd()}…` : words;

customElements.define('task-sheet', TaskSheet);
declare global {
  interface HTMLElementTagNameMap {
    'task-sheet': TaskSheet;
  }
}
