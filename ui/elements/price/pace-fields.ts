import { html, type TemplateResult } from 'lit';
import { multipliersOf } from '#engine/labour/multipliers.ts';
import type { Terms } from '#model/job.ts';
import type { Library, Multiplier } from '#model/library.ts';
import { setDrying, setFurniture, setMultiplier } from '../../edits/terms.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/tick-field.ts';
import { workStages } from './work-stages.ts';

const dryings = [
  { value: 'wait', label: 'Waited for on the day' },
  { value: 'second-visit', label: 'Come back for: a second visit' },
] as const;

const movers = [
  { value: 'customer', label: 'The customer, before we come' },
  { value: 'firm', label: 'Us: priced by the room' },
] as const;

/** The stages that a multiplier counts at, in words. */
export function stagesWritten({ on }: Pick<Multiplier, 'on'>): string {
  const named = workStages.filter(([stage]) => on.includes(stage)).map(([, words]) => words.toLowerCase());
  return named.length === 0 ? 'no stage' : named.join(', ');
}

/** How plaster is given its time, and what makes this job slower or faster than the norms. */
export function paceFields(from: EventTarget, { job, library }: JobView): TemplateResult {
  const { terms } = job;
  return html`<choice-field
      label="Plaster that has to set is"
      .value=${terms.drying ?? null}
      .options=${dryings}
      .empty=${'As it turns out'}
      @field-change=${(event: CustomEvent<FieldChange<Terms['drying'] | null>>) => {
        event.stopPropagation();
        send(from, 'job-edit', setDrying(event.detail.value));
      }}
    ></choice-field>
    <choice-field
      label="Furniture is moved by"
      .help=${job.site.occupied === false ? 'Nobody lives in the house: there is none to move' : 'Each room that is worked in, once'}
      .value=${terms.furniture ?? null}
      .options=${movers}
      .empty=${'Not said: not priced'}
      @field-change=${(event: CustomEvent<FieldChange<Terms['furniture'] | null>>) => {
        event.stopPropagation();
        send(from, 'job-edit', setFurniture(event.detail.value));
      }}
    ></choice-field>
    <div class="wide ticks" role="group" aria-label="What makes this job slower or faster">
      <p class="hint">
        Slower or faster than the norms: their minutes are multiplied once by each that is ticked, in prices and in the search.
        <a href="/firm?part=labour">Set the figures</a>
      </p>
      ${multipliersOf(library.norms).map((one) => tick(from, terms, one))}
      ${goneOf(terms, library).map((id) => gone(from, id))}
    </div>`;
}

/** Those that the job chose and the firm has no more. */
const goneOf = ({ multipliers = [] }: Terms, { norms }: Library): readonly string[] =>
  multipliers.filter((id) => !multipliersOf(norms).some((one) => one.id === id));

const gone = (from: EventTarget, id: string): TemplateResult => html`<tick-field
  .label=${`“${id}”`}
  help="No longer on the firm’s list: counts for nothing"
  .value=${true}
  @field-change=${(event: CustomEvent<FieldChange<boolean>>) => {
    event.stopPropagation();
    send(from, 'job-edit', setMultiplier(id, id, event.detail.value));
  }}
></tick-field>`;

function tick(
  from: EventTarget,
  terms: Terms,
  { id, words, factor, on, origin }: Multiplier,
): TemplateResult {
  const memory = origin === 'demo' ? '; from memory, not yours yet' : '';
  return html`<tick-field
    .label=${words === '' ? 'Without a name' : words}
    .help=${`× ${factor}, ${stagesWritten({ on })}${memory}`}
    .value=${(terms.multipliers ?? []).includes(id)}
    @field-change=${(event: CustomEvent<FieldChange<boolean>>) => {
      event.stopPropagation();
      send(from, 'job-edit', setMultiplier(id, words, event.detail.value));
    }}
  ></tick-field>`;
}
