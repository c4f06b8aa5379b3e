import { html, nothing, type TemplateResult } from 'lit';
import { OVERHEAD_REFUSED, overheadIsRefused } from '#engine/price/overhead.ts';
import { USUAL_DAY_HOURS } from '#engine/price/visits.ts';
import type { Norms, Overhead } from '#model/library.ts';
import { setOverhead, setRateBasis } from '../../edits/norms.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';

const bases = [
  { value: 'charged', label: 'Charged to customers' },
  { value: 'cost', label: 'The hour’s cost to us' },
] as const;

const kinds = [
  { value: 'percent', label: 'A percentage of cost' },
  { value: 'day', label: 'A sum a day' },
] as const;

type Kind = (typeof kinds)[number]['value'];

function begun(kind: Kind | null): Overhead | null {
  if (kind === null) return null;
  return kind === 'percent' ? { percent: 0 } : { pencePerDay: 0, hoursPerDay: USUAL_DAY_HOURS };
}

/** What the hourly rate is, and the overhead that is put on top of it where it is at cost. */
export function overheadFields(from: EventTarget, norms: Norms): TemplateResult {
  const { overhead, rateBasis = 'charged' } = norms;
  const kind: Kind | null = overhead === undefined ? null : 'percent' in overhead ? 'percent' : 'day';
  return html`<choice-field
      label="That rate is"
      .help=${rateBasis === 'cost' ? 'Overhead, then mark-up or margin come on top' : 'Overhead and profit are in it'}
      .value=${rateBasis}
      .options=${bases}
      .empty=${null}
      @field-change=${(event: CustomEvent<FieldChange<NonNullable<Norms['rateBasis']>>>) => sendLibraryEdit(from, setRateBasis(event.detail.value))}
    ></choice-field>
    <choice-field
      label="Overhead"
      .help=${overheadIsRefused(norms) ? OVERHEAD_REFUSED : 'Van, tools, insurance, rent: what is spent whether you work or not'}
      .value=${kind}
      .options=${kinds}
      .empty=${'None'}
      @field-change=${(event: CustomEvent<FieldChange<Kind | null>>) => sendLibraryEdit(from, setOverhead(begun(event.detail.value)))}
    ></choice-field>
    ${overhead === undefined ? nothing : sizeFields(from, overhead)}`;
}

function sizeFields(from: EventTarget, overhead: Overhead): TemplateResult {
  if ('percent' in overhead)
    return html`<number-field
      label="Overhead, percent"
      unit="%"
      needed
      .value=${overhead.percent}
      .min=${0}
      .max=${1000}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(from, setOverhead({ percent: event.detail.value ?? 0 }))}
    ></number-field>`;
  return html`<number-field
      label="Overhead a day"
      unit="£"
      needed
      help="A month’s, divided by the days worked in it"
      .value=${overhead.pencePerDay / 100}
      .min=${0}
      .max=${10_000_000}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(from, setOverhead({ ...overhead, pencePerDay: Math.round((event.detail.value ?? 0) * 100) }))}
    ></number-field>
    <number-field
      label="Hours charged in a day"
      unit="h"
      needed
      .value=${overhead.hoursPerDay}
      .min=${0.5}
      .max=${24}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(from, setOverhead({ ...overhead, hoursPerDay: event.detail.value ?? USUAL_DAY_HOURS }))}
    ></number-field>`;
}
