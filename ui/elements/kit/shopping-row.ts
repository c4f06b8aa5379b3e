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
}

/** A thing on the shopping list: all of the row is what is touched to tick it. */
export function shoppingRow(
  { entry, state, forWords }: RowParts,
  tick: (entry: ShoppingEntry, is: boolean) => void,
): TemplateResult {
  const isHad = state.is === 'had';
  const notes = entryNotes(entry, forWords);
  return html`<li class=${isHad ? 'had' : ''}>
    <label>
      <input
        type="checkbox"
        .checked=${live(isHad)}
        @change=${(event: Event) => tick(entry, (event.target as HTMLInputElement).checked)}
      />
      <span class="what"
        ><span class="name"><strong>${askWords(entry)}</strong> ${entry.description}</span>
        ${state.is === 'changed' ? html`<small class="changed">${state.words}</small>` : nothing}
        ${notes.length === 0 ? nothing : html`<small>${notes.join(' · ')}</small>`}
        ${entry.nearMisses.map((miss) => html`<small>${nearMissWords(miss)}</small>`)}</span
      >
      <span class="cost">${entry.pence === null ? '' : pounds(entry.pence)}</span>
    </label>
  </li>`;
}
