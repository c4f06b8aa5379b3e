import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { nearMissWords } from '#drawing/shopping/cut-lists.ts';
import { askWords, entryNotes } from '#drawing/shopping/entry-words.ts';
import type { ShoppingEntry } from '#engine/price/shopping/shopping-list.ts';
import type { TickState } from '../../shopping/ticks.ts';
import { pounds } from '../../written.ts';

/** An entry with what is said of it. */
export interface RowParts {
  readonly entry: ShoppingEntry;
  readonly state: TickState;
  /** What it is for; empty where nothing is known. */
  readonly forWords: string;
  /** That it was not in stock, what was taken instead, why it is there in case, and what of it goes back. */
  readonly marks: readonly string[];
  /** True where something else was taken. */
  readonly isInstead: boolean;
  /** Where it is asked what was taken instead; nothing where nobody asks. */
  readonly form: TemplateResult | typeof nothing;
}

/** What is done with an entry. */
export interface RowActs {
  readonly tick: (entry: ShoppingEntry, is: boolean) => void;
  readonly notInStock: (entry: ShoppingEntry) => void;
}

/** A thing on the shopping list: all of the row but the button at its end is what is touched to tick it. */
export function shoppingRow(
  { entry, state, forWords, marks, isInstead, form }: RowParts,
  acts: RowActs,
): TemplateResult {
  const isHad = state.is === 'had';
  const notes = entryNotes(entry, forWords);
  return html`<li class=${isHad || isInstead ? 'had' : ''}>
    <div class="row">
      <label>
        <input
          type="checkbox"
          .checked=${live(isHad)}
          @change=${(event: Event) => acts.tick(entry, (event.target as HTMLInputElement).checked)}
        />
        <span class="what"
          ><span class="name"><strong>${askWords(entry)}</strong> ${entry.description}</span>
          ${state.is === 'changed' ? html`<small class="changed">${state.words}</small>` : nothing}
          ${marks.map((mark) => html`<small class="mark">${mark}</small>`)}
          ${notes.length === 0 ? nothing : html`<small>${notes.join(' · ')}</small>`}
          ${entry.nearMisses.map((miss) => html`<small>${nearMissWords(miss)}</small>`)}</span
        >
      </label>
      <div class="end">
        <span class="cost">${entry.pence === null ? '' : pounds(entry.pence)}</span>
        ${
          entry.place === 'van' || (isHad && !isInstead)
            ? nothing
            : html`<button class="small" @click=${() => acts.notInStock(entry)}>
                ${isInstead ? 'Change' : 'Not in stock'}<span class="visually-hidden">: ${entry.description}</span>
              </button>`
        }
      </div>
    </div>
    ${form}
  </li>`;
}
