import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { amountSaid, partWords } from '#drawing/work/task-words.ts';
import { type TaskPart, taskList, type WorkTask } from '#engine/work/task-list.ts';
import type { JobView } from '../../../job-view.ts';
import { controlsCss } from '../../shared-styles.ts';
import { workSheetHead } from './work-sheet-head.ts';
import { workSheetCss } from './work-sheet-styles.ts';

/** The shown scheme as a list to work by, in working order, with the holds at which the work stops. */
export class TaskSheet extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    workSheetCss,
    css`
      ol {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: 24px minmax(0, 1fr);
        gap: 2px 8px;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
        break-inside: avoid;
      }
      h3 {
        break-after: avoid;
      }
      svg {
        width: 16px;
        height: 16px;
        margin-top: 3px;
        fill: none;
        stroke: var(--ink-soft);
        stroke-width: 1.4;
      }
      .stop {
        stroke: var(--ink);
        stroke-width: 2;
      }
      .hold {
        display: grid;
        grid-template-columns: 24px minmax(0, 1fr);
        gap: 8px;
        grid-column: 2;
        margin: 4px 0 0;
        padding: 6px 10px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    const { scheme } = this.view;
    if (scheme === null) return html`<p class="hint">Wants a scheme: make one in <em>Ways</em>.</p>`;
    return html`${workSheetHead(this.view, 'Tasks in working order')} ${taskList(scheme).map(part)}`;
  }
}

const part = ({ group, tasks }: TaskPart): TemplateResult => html`<section data-part=${group}>
  <h3>${partWords[group].title}</h3>
  <p class="soft">${partWords[group].caution}</p>
  <ol>
    ${tasks.map(task)}
  </ol>
</section>`;

function task(told: WorkTask): TemplateResult {
  const amount = amountSaid(told);
  return html`<li>
    <svg viewBox="0 0 16 16" aria-hidden="true"><rect x="1" y="1" width="14" height="14" /></svg>
    <div>
      <strong>${told.words}</strong>
      <div class="soft">${[amount, told.marks.join(', ')].filter((words) => words !== '').join(' · ')}</div>
    </div>
    ${
      told.hold === null
        ? nothing
        : html`<p class="hold">
            <svg class="stop" viewBox="0 0 16 16" aria-hidden="true"><path d="M5 1h6l4 4v6l-4 4H5l-4-4V5z" /></svg>
            <span><strong>Hold:</strong> ${told.hold}</span>
          </p>`
    }
  </li>`;
}

customElements.define('task-sheet', TaskSheet);
declare global {
  interface HTMLElementTagNameMap {
    'task-sheet': TaskSheet;
  }
}
