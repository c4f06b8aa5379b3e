import type { Site } from '#model/building.ts';
import type { Outcome } from '../../rules/finding.ts';
import { forPerson, type RecordField, toldField } from './record-field.ts';
import type { Recording } from './recording.ts';

/** Premises that are one household's dwelling, whoever owns them. */
const DWELLINGS: readonly Site['premises'][] = ['house', 'flat'];

/** What the scheme does that the checks do not let pass: whether it is a departure is for a person to say. */
function departures({ findings }: Recording): RecordField {
  const own = findings.filter(({ origin, source }) => origin === 'scheme' && source.includes('BS 7671'));
  const said = (what: string, of: Outcome): readonly string[] => {
    const titles = own.filter(({ outcome }) => outcome === of).map(({ title }) => title);
    return titles.length === 0 ? [] : [`${what}: ${[...new Set(titles)].join('; ')}.`];
  };
  const note = said('By the checks the scheme does not meet it in', 'fails').join(' ');
  return forPerson({
    id: 'departures',
    label: 'Departures from BS 7671 (120.3, 133.1.3, 133.5)',
    note: note === '' ? null : note,
  });
}

/**
 * The omission of an RCD that 411.3.3 permits.
 * Source: BS 7671:2018+A2:2022 411.3.3: not in a dwelling; elsewhere by a documented risk assessment.
 */
function permittedException({ worked }: Recording): RecordField {
  const head = { id: 'exception', label: 'Permitted exception to 411.3.3, risk assessment attached' };
  return DWELLINGS.includes(worked.job.site.premises)
    ? toldField(head, { value: 'none: there is none in a dwelling', certainty: undefined, from: 'table' })
    : forPerson({ ...head, note: 'Not in a dwelling; elsewhere only by a documented risk assessment.' });
}

/** The day that somebody has said the work was finished on; to be written where nobody has. */
function completed({ worked: { job, scheme } }: Recording): RecordField {
  const head = { id: 'completed', label: 'Date on which the work was completed' };
  return job.built === undefined || job.built.scheme !== scheme?.id
    ? forPerson(head)
    : toldField(head, { value: job.built.on, certainty: 'seen' });
}

/** Whose work it is, where, when, and what of it departs from the standard. */
export function workFields(recording: Recording): readonly RecordField[] {
  const { site } = recording.worked.job;
  const address = site.address.filter((line) => line.trim() !== '').join(', ');
  return [
    toldField(
      { id: 'client', label: 'Client' },
      { value: site.customer.trim(), certainty: site.certainty?.customer },
    ),
    toldField(
      { id: 'address', label: 'Address of the work' },
      { value: address, certainty: site.certainty?.address },
    ),
    completed(recording),
    departures(recording),
    permittedException(recording),
  ];
}
