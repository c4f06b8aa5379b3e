import { css, html, LitElement, nothing, type PropertyDeclarations, svg, type TemplateResult } from 'lit';
import { amountSaid, standingSaid } from '#drawing/work/task-words.ts';
import type { WorkTask } from '#engine/work/task-list.ts';
import type { TaskStanding } from '#engine/work/task-progress.ts';
import type { FieldChange } from '../../fields/field-element.ts';
import '../../fields/tick-field.ts';
import '../../fields/yes-no-field.ts';
import { controlsCss } from '../../shared-styles.ts';
import { workSheetCss } from './work-sheet-styles.ts';

/**
 * One task: a box to tick; where it holds the work, what has to be so, to be answered by yes or no. On paper a box to tick by hand.
 *
 * @fires task-ticked - detail: { task, is }; null takes the answer away
 */
export class TaskRow extends LitElement {
  static override properties: PropertyDeclarations = {
    task: { attribute: false },
    standing: { attribute: false },
  };
  static override styles = [
    controlsCss,
    workSheetCss,
    css`
      :host {
        display: block;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
        break-inside: avoid;
      }
      svg {
        width: 16px;
        height: 16px;
        margin-top: 3px;
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.4;
      }
      .hold {
        margin: 4px 0 0;
        padding: 6px 10px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
      .hold svg {
        margin-right: 6px;
        stroke-width: 2;
        vertical-align: text-bottom;
      }
      .hold[data-standing='done'] {
        background: none;
        border-left-color: var(--pass);
      }
      .hold[data-standing='stopped'] {
        border-left-color: var(--fail);
      }
      .look {
        margin: 4px 0 0;
        padding: 2px 10px;
        border-left: 4px solid var(--ask);
      }
      .look[data-standing='stopped'] {
        border-left-color: var(--fail);
      }
      .print {
        display: none;
      }
      @media print {
        tick-field,
        yes-no-field {
          display: none;
        }
        .print {
          display: inline;
        }
      }
    `,
  ];
  declare task: WorkTask;
  declare standing: TaskStanding;

  override render(): TemplateResult {
    const { task, standing } = this;
    const { words, marks, hold } = task;
    const said = standingSaid(task, standing);
    const more = [amountSaid(task), marks.join(', ')].filter((each) => each !== '').join(' · ');
    return html`<div>
        ${
          hold === null
            ? html`<tick-field
                class="screen"
                .label=${words}
                .value=${standing.is === 'done'}
                @field-change=${(event: CustomEvent<FieldChange<boolean>>) => this.#tell(event)}
              ></tick-field>`
            : html`<strong class="screen">${words}</strong>`
        }
        <span class="print">${box(standing.is === 'done')} <strong>${words}</strong></span>
        <div class="soft">${more}</div>
      </div>
      ${hold === null ? nothing : this.#hold(hold)}
      <div role="status" class=${said === '' ? 'visually-hidden' : 'look'} data-standing=${standing.is}>${said}</div>`;
  }

  #hold(hold: string): TemplateResult {
    const { is } = this.standing;
    const answer = is === 'done' ? true : is === 'stopped' ? false : null;
    return html`<div class="hold" data-standing=${is}>
      <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M5 1h6l4 4v6l-4 4H5l-4-4V5z" /></svg>
      <strong>Hold:</strong> ${hold}
      <yes-no-field
        label="Is it so?"
        .value=${answer}
        @field-change=${(event: CustomEvent<FieldChange<boolean | null>>) => this.#tell(event)}
      ></yes-no-field>
    </div>`;
  }

  #tell(event: CustomEvent<FieldChange<boolean | null>>): void {
    event.stopPropagation();
    this.dispatchEvent(
      new CustomEvent('task-ticked', {
        detail: { task: this.task, is: event.detail.value },
        bubbles: true,
        composed: true,
      }),
    );
  }
}

/** A box, ticked or to be ticked by hand. */
const box = (isDone: boolean): TemplateResult => html`<svg viewBox="0 0 16 16" aria-hidden="true">
  <rect x="1" y="1" width="14" height="14" />${isDone ? svg`<path d="M4 8l3 3 5-7" />` : nothing}
</svg>`;

customElements.define('task-row', TaskRow);
declare global {
  interface HTMLElementTagNameMap {
    'task-row': TaskRow;
  }
  interface HTMLElementEventMap {
    'task-ticked': CustomEvent<{ readonly task: WorkTask; readonly is: boolean | null }>;
  }
}
