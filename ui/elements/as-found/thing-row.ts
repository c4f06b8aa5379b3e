import { html, nothing, type TemplateResult } from 'lit';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';

/** A thing in a list, shown by one line that opens into its form. */
export interface ThingRow {
  readonly id: string;
  readonly name: string;
  /** What is known of it, in a few words. */
  readonly facts: string;
  /** More of it, a line each. */
  readonly more?: readonly string[];
  /** What stands at the line's end: what is missing of it. */
  readonly state?: string;
  /** True where the name is too long for the narrow column of labels. */
  readonly wide?: boolean;
  readonly form: () => TemplateResult;
}

/** A line of a list that looks at its thing, here and on the plan; the form is open below it while it is looked at. */
export function thingRow({ chosen }: Pick<JobView, 'chosen'>, row: ThingRow): TemplateResult {
  const isOpen = chosen === row.id;
  const look = (event: Event): void => {
    if (event.currentTarget !== null)
      send(event.currentTarget, 'thing-chosen', { subjectId: isOpen ? null : row.id });
  };
  const state =
    row.state === undefined || row.state === ''
      ? nothing
      : html`<span class="state missing">${row.state}</span>`;
  return html`<li data-thing=${row.id}>
    <button class=${row.wide === true ? 'row wide' : 'row'} aria-expanded=${isOpen} @click=${look}>
      <span class="name">${row.name}</span>
      ${row.wide === true ? html`${state}<span class="more">${row.facts}</span>` : html`<span>${row.facts}</span>${state}`}
      ${(row.more ?? []).map((line) => html`<span class="more">${line}</span>`)}
    </button>
    ${isOpen ? html`<div class="open">${row.form()}</div>` : nothing}
  </li>`;
}

/** A button that takes a thing out of the job, with what goes along with it; the plan lets go of it. */
export const removeButton = (
  name: string,
  remove: (from: EventTarget) => void,
  along = 'its cables',
): TemplateResult =>
  html`<button
    class="small"
    @click=${(event: Event) => {
      const { currentTarget } = event;
      if (currentTarget === null) return;
      remove(currentTarget);
      send(currentTarget, 'thing-chosen', { subjectId: null });
    }}
  >
    Remove ${name} and ${along}
  </button>`;
