import { html, nothing, type TemplateResult } from 'lit';
import { PARKING_SUM } from '#engine/price/parking.ts';
import type { Job, Terms } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { setParking } from '../../edits/terms.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { counted, pounds } from '../../written.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';

type Choice = 'each-visit' | 'days' | 'none';

const choices: readonly { readonly value: Choice; readonly label: string }[] = [
  { value: 'each-visit', label: 'For each day on site' },
  { value: 'days', label: 'For so many days' },
  { value: 'none', label: 'Not at all' },
];

/** What parking is charged for where the job does not say. */
function firmParking({ parking }: Terms): string {
  if (parking === 'each-visit') return 'The firm’s: for each day on site';
  return `The firm’s: ${parking === undefined || parking === 0 ? 'not at all' : counted(parking, 'day')}`;
}

function choiceOf(parking: Terms['parking']): Choice | null {
  if (parking === undefined || parking === 'each-visit') return parking ?? null;
  return parking === 0 ? 'none' : 'days';
}

/** The firm's charge for a day, and what the survey says of it, in words. */
function helpWords({ norms }: Library, { answers }: Job): string {
  const sum = norms.sums.find((one) => one.sum === PARKING_SUM);
  const isCharged = answers.some(
    ({ question, value }) => question === 'parking-at-the-house' && value === false,
  );
  const charge =
    sum === undefined
      ? 'The firm has no charge for a day’s parking: set one on its page, under Labour'
      : `${pounds(sum.pence)} a day, as set on the firm’s page under Labour`;
  return isCharged ? `The survey says that it costs. ${charge}` : charge;
}

/** Whether parking is charged on this job, and for how many days. */
export function parkingFields(from: EventTarget, { job, library, scheme }: JobView): TemplateResult {
  const { parking } = job.terms;
  const edit = (value: Terms['parking'] | null): void => send(from, 'job-edit', setParking(value));
  const usualDays = scheme?.price.visits.count ?? 1;
  return html`<choice-field
      label="Parking is charged"
      .help=${helpWords(library, job)}
      .value=${choiceOf(parking)}
      .options=${choices}
      .empty=${firmParking(library.terms)}
      @field-change=${(event: CustomEvent<FieldChange<Choice | null>>) => {
        event.stopPropagation();
        const { value } = event.detail;
        edit(value === 'days' ? usualDays : value === 'none' ? 0 : value);
      }}
    ></choice-field>
    ${
      choiceOf(parking) !== 'days'
        ? nothing
        : html`<number-field
            label="Days of parking"
            unit="days"
            .value=${parking}
            .min=${1}
            .max=${1000}
            whole
            @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
              event.stopPropagation();
              edit(event.detail.value);
            }}
          ></number-field>`
    }`;
}
