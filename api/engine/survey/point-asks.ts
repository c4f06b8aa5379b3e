import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { BackBox } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import { UNTOLD_LENGTH_MM } from '../ways/length-allowances.ts';
import type { LengthAllowances, Run } from '../ways/run.ts';
import type { Ask } from './ask.ts';
import { askOf, factState } from './fields.ts';

/** What is told at the points: where they are, how deep the boxes are that cables are joined at, how many cables are in them. */
export function pointAsks(worked: Worked): readonly Ask[] {
  return [...placeAsks(worked), ...boxAsks(worked), ...plateAsks(worked)];
}

/** The points that new cables lead from and to and that have no place, sorted. */
function unplacedPoints({ runs, job }: Worked): readonly string[] {
  const ends = runs
    .filter(({ lengthMm }) => lengthMm === null)
    .flatMap(({ from, to }) => [from, to])
    .flatMap(({ position, pointId }) => (position === null && pointId !== null ? [pointId] : []));
  return job.points.flatMap(({ id }) => (ends.includes(id) ? [id] : [])).sort();
}

/** The cables whose length nobody can tell, as if it were measured, and came out as it is counted. */
function placed(runs: readonly Run[], { derivedPercent }: LengthAllowances): readonly Run[] {
  const doubtMm = (UNTOLD_LENGTH_MM * derivedPercent) / 100;
  const lengths = {
    lengthMm: UNTOLD_LENGTH_MM,
    lowMm: UNTOLD_LENGTH_MM - doubtMm,
    highMm: UNTOLD_LENGTH_MM + doubtMm,
  };
  return runs.map((run) => (run.lengthMm === null ? { ...run, ...lengths } : run));
}

function placeAsks(worked: Worked): readonly Ask[] {
  const ends = new Set(
    worked.runs.flatMap(({ from, to }) => [from, to].flatMap(({ pointId }) => pointId ?? [])),
  );
  const points = worked.job.points
    .filter(({ id }) => ends.has(id))
    .toSorted((a, b) => (a.id < b.id ? -1 : 1));
  if (points.length === 0) return [];
  const unplaced = unplacedPoints(worked);
  return [
    askOf({
      id: 'places',
      short: 'places',
      words: 'Place the points: cable to a point without a place counts with a typical length, 2 to 15 m',
      why: 'The way of a cable is found between two places.',
      source: null,
      stage: 'rooms',
      when: 'visit',
      fields: points.map(({ id }) => ({
        subjectId: id,
        fact: 'place',
        state: unplaced.includes(id) ? 'open' : 'seen',
      })),
      rules: [],
      ...(unplaced.length > 0 ? { closing: { runs: placed } } : {}),
    }),
  ];
}

/** The point that was surveyed where a new one takes its place, else the point itself; undefined where it is new. */
function surveyedAt({ points }: Job, pointId: string | null): Point | undefined {
  const own = points.find(({ id }) => id === pointId);
  const point = points.find(({ id }) => id === own?.replaces) ?? own;
  return point?.status === 'wanted' ? undefined : point;
}

function plateState({ asFound, certainty }: Point, fact: 'boxDepthMm' | 'cablesSeen') {
  return factState(asFound?.[fact], certainty?.[fact] ?? certainty?.asFound);
}

/** The boxes found that get another cable, by id. */
const foundBoxes = ({ things, scheme, job }: Worked): readonly BackBox[] =>
  scheme === null
    ? []
    : things.boxes.filter(
        ({ state, pointId }) => state === 'found' && surveyedAt(job, pointId) !== undefined,
      );

function boxAsks(worked: Worked): readonly Ask[] {
  const boxes = foundBoxes(worked);
  if (boxes.length === 0) return [];
  const open = boxes.filter(({ action }) => action === 'unknown');
  return [
    {
      id: 'box-depths',
      short: 'box depths',
      words: 'Open the plates that cables are joined at and measure their boxes',
      why: 'A box too shallow for one more cable is exchanged, or gets a frame.',
      source: null,
      stage: 'rooms',
      when: 'isolated',
      fields: boxes.map((box) => {
        const point = surveyedAt(worked.job, box.pointId);
        return {
          subjectId: point?.id ?? box.id,
          fact: 'boxDepthMm',
          state: point === undefined ? 'open' : plateState(point, 'boxDepthMm'),
        };
      }),
      subjects: open.map(({ id }) => id).sort(),
      rules: ['BX1'],
      ...(open.length > 0
        ? {
            closing: {
              job: (job) => withDeepBoxes(job, open),
            },
          }
        : {}),
    },
  ];
}

/** The job with these boxes measured and found deep enough for what they get: at the point, and at the one whose place it takes. */
function withDeepBoxes(job: Job, boxes: readonly BackBox[]): Job {
  const wanted = new Map(
    boxes.flatMap(({ id, pointId, minimumDepthMm }) => {
      const point = surveyedAt(job, pointId);
      return [id, point?.id ?? id].map((one) => [one, minimumDepthMm] as const);
    }),
  );
  return {
    ...job,
    points: job.points.map((point) => {
      const depthMm = wanted.get(point.id);
      if (depthMm === undefined) return point;
      return {
        ...point,
        asFound: { ...point.asFound, boxDepthMm: Math.max(point.asFound?.boxDepthMm ?? 0, depthMm) },
        certainty: { ...point.certainty, boxDepthMm: 'measured', asFound: 'measured' },
      };
    }),
  };
}

function plateAsks(worked: Worked): readonly Ask[] {
  const tapped = (worked.scheme?.connections ?? []).flatMap((connection) =>
    'from' in connection && 'point' in connection.from ? [connection.from.point] : [],
  );
  const points = [...new Set(tapped)]
    .sort()
    .flatMap((id) => surveyedAt(worked.job, id) ?? [])
    .filter(({ kind }) => kind !== 'joint');
  if (points.length === 0) return [];
  return [
    askOf({
      id: 'cables-seen',
      short: 'cables in plates',
      words:
        'Take the plates off where new cable starts: how many cables are in them, and are they on the ring?',
      why: 'One on a spur, or full, takes no further cable: it then starts elsewhere, which is another way of doing it.',
      source: 'BS 7671 433.1.204, 526.2; IET On-Site Guide 8.4',
      stage: 'rooms',
      when: 'isolated',
      fields: points.map((point) => ({
        subjectId: point.id,
        fact: 'cablesSeen',
        state: plateState(point, 'cablesSeen'),
      })),
      rules: ['SP2', 'SP3', 'TM1'],
    }),
  ];
}
