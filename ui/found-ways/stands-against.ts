import { produce } from 'immer';
import { estimate } from '#engine/estimate.ts';
import type { Finding } from '#engine/rules/finding.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { addFirstTry, firstTries, whyNotTry } from '../edits/schemes.ts';

/** Neither the date nor the revision changes a finding. */
const anyDay = { date: '2000-01-01', revision: 1 };

/** The rule on points that a scheme leaves out: of what is held fast alone it says nothing. */
const LEFT_OUT = 'CN2';

const keyOf = ({ rule, subject }: Finding): string => `${rule} ${subject}`;

/** What a scheme fails by and no remedy cures. */
const incurable = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter(({ outcome, origin, fix }) => outcome === 'fails' && origin === 'scheme' && fix === null);

function firstTried(job: Job, library: Library): readonly Scheme[] {
  const { worked } = estimate({ ...job, schemes: [] }, library, anyDay, { depth: 'live' }).asFound;
  const possible = firstTries.filter((which) => whyNotTry(worked, which) === null);
  return possible.flatMap((which) => {
    const { edit, schemeId } = addFirstTry(worked, which);
    return produce(worked.job, edit.change).schemes.filter(({ id }) => id === schemeId);
  });
}

/**
 * What stands against every way to join the wanted points, where a search finds none that passes: what fails by itself of
 * what is held fast, and what the plainest ways of all kinds fail by alike, a point in a forbidden place among it. Empty
 * where it is not the same with all of them.
 */
export function standsAgainst(job: Job, library: Library, locked: readonly Connection[]): readonly Finding[] {
  const held: Scheme = { id: 'held-fast', name: '', connections: [...locked], remedies: [], locks: [] };
  const tried = firstTried(job, library);
  const { schemes } = estimate({ ...job, schemes: [held, ...tried] }, library, anyDay, { depth: 'live' });
  const [own = [], first = [], ...others] = schemes.map(({ findings }) => incurable(findings));
  const elsewhere = others.map((findings) => new Set(findings.map(keyOf)));
  const all = [
    ...own.filter(({ rule }) => rule !== LEFT_OUT),
    ...first.filter((one) => elsewhere.every((keys) => keys.has(keyOf(one)))),
  ];
  return [...new Map(all.map((one) => [keyOf(one), one])).values()];
}
