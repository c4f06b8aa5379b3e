import type { Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import type { Worked } from '../connections/worked.ts';
import type { LengthAllowances, Run } from '../ways/run.ts';
import { runLength } from '../ways/run-length.ts';
import type { Ask } from './ask.ts';
import { askOf, factState } from './fields.ts';

/** What is told above and below the rooms: whether floors lift, and where cables can run. */
export function voidAsks(worked: Worked): readonly Ask[] {
  return worked.scheme === null ? [] : [...floorAsks(worked), ...wayAsks(worked)];
}

/** The storeys under whose floors new cable runs, in the job's order. */
function storeysCrossed({ runs, job }: Worked): readonly Storey[] {
  const crossed = new Set(
    runs.flatMap((run) =>
      run.segments.filter(({ medium }) => medium.startsWith('void')).map(({ storeyId }) => storeyId),
    ),
  );
  return job.storeys.filter(({ id }) => crossed.has(id));
}

/** Those of them of which nobody has said whether they lift; sorted. */
export const storeysNotTried = (worked: Worked): readonly string[] =>
  storeysCrossed(worked)
    .filter(({ floor }) => floor.liftable === undefined)
    .map(({ id }) => id)
    .sort();

function floorAsks(worked: Worked): readonly Ask[] {
  const storeys = storeysCrossed(worked);
  if (storeys.length === 0) return [];
  const open = storeysNotTried(worked);
  const lifted = (job: Job): Job => ({
    ...job,
    storeys: job.storeys.map((storey) =>
      open.includes(storey.id) ? { ...storey, floor: { ...storey.floor, liftable: true } } : storey,
    ),
  });
  return [
    askOf({
      id: 'boards-liftable',
      short: 'floors',
      words: 'Find out whether the floors lift where cables run under them',
      why: 'A floor that does not lift is opened and closed at a cost, or the cable goes another way.',
      source: null,
      stage: 'voids',
      when: 'visit',
      fields: storeys.map(({ id, floor }) => ({
        subjectId: id,
        fact: 'liftable',
        state: factState(floor.liftable, floor.certainty?.liftable),
      })),
      rules: ['RT3'],
      ...(open.length > 0
        ? { closing: { job: lifted, movesCable: true, sharedAs: ['lift', ...open].join(' ') } }
        : {}),
    }),
  ];
}

const isAssumed = ({ segments }: Run): boolean => segments.some(({ certainty }) => certainty === 'assumed');

/** The ways of the new cables, seen: as certain as those that were worked out from a full survey. */
const seen = (runs: readonly Run[], allowances: LengthAllowances): readonly Run[] => {
  const asDerived = { ...allowances, assumedPercent: allowances.derivedPercent };
  return runs.map((run) => ({ ...run, ...runLength(run.segments, [run.from, run.to], asDerived) }));
};

function wayAsks({ runs }: Worked): readonly Ask[] {
  const laid = runs.filter(({ segments }) => segments.length > 0);
  if (laid.length === 0) return [];
  return [
    askOf({
      id: 'ways',
      short: 'ways',
      words: 'Look where the new cables can run: under which boards, past what',
      why: 'A way that nobody has seen may turn out longer, or not to be there.',
      source: null,
      stage: 'voids',
      when: 'isolated',
      fields: laid.map((run) => ({
        subjectId: run.id,
        fact: null,
        state: isAssumed(run) ? 'assumed' : 'seen',
      })),
      rules: ['RT2', 'RT3'],
      ...(laid.some(isAssumed) ? { closing: { runs: seen } } : {}),
    }),
  ];
}
