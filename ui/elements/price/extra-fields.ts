import { html, type TemplateResult } from 'lit';
import type { Extra } from '#model/extra.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { ExtraFacts } from '../../edits/extras.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { materialsHelp, placeChoices } from './extra-choices.ts';

/** What the fields of extra work are shown from, and who hears of a change. */
interface ExtraFields {
  readonly extra: Omit<Extra, 'id' | 'words'>;
  readonly job: Job;
  readonly library: Library;
  readonly set: (facts: ExtraFacts) => void;
}

type MinutesKey = 'lowMin' | 'typicalMin' | 'highMin';

function minutesField(
  { extra, set }: ExtraFields,
  [key, label, help]: readonly [MinutesKey, string, string],
): TemplateResult {
  return html`<number-field
    .label=${label}
    .help=${help}
    unit="min"
    .value=${extra[key] ?? null}
    .min=${0}
    .max=${1e6}
    @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
      event.stopPropagation();
      set({ [key]: event.detail.value });
    }}
  ></number-field>`;
}

/** Minutes, materials and the place of extra work. */
export function extraFields(fields: ExtraFields): TemplateResult {
  const { extra, job, library, set } = fields;
  const { materialsPence } = extra;
  return html`${minutesField(fields, ['typicalMin', 'Minutes of work', 'At the firm’s hourly rate'])}
    <number-field
      label="Its materials cost"
      unit="£"
      .help=${materialsHelp(library)}
      .value=${materialsPence === undefined ? null : materialsPence / 100}
      .min=${0}
      .max=${10_000_000}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        event.stopPropagation();
        const { value } = event.detail;
        set({ materialsPence: value === null ? null : Math.round(value * 100) });
      }}
    ></number-field>
    ${
      extra.typicalMin === undefined
        ? ''
        : html`${minutesField(fields, ['lowMin', 'At least', 'Empty: as above'])}${minutesField(fields, ['highMin', 'At most', 'Empty: as above'])}`
    }
    <choice-field
      label="Where"
      .value=${extra.at ?? null}
      .options=${placeChoices(job)}
      .empty=${'Nowhere in particular'}
      @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
        event.stopPropagation();
        set({ at: event.detail.value });
      }}
    ></choice-field>`;
}
