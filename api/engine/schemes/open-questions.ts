import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import type { PriceRange } from '../price/totals.ts';
import type { OpenQuestion } from './estimate-result.ts';
import { countsOnUnknownRcbo, priceSchemeWithRange } from './price-scheme-with-range.ts';
import { type House, workHouse, workScheme } from './work-scheme.ts';

/** A gap of the survey, how it would be closed, and the job as it would read if it were (for the better). */
interface Gap {
  readonly question: string;
  readonly words: string;
  readonly subjects: (worked: Worked) => readonly string[];
  readonly closed: (house: House, worked: Worked) => House;
}

const rework = (house: House, job: Job): House => workHouse(job, house.tariff, house.allowances);

const isUnexplored = (worked: Worked, circuitId: string): boolean => {
  const evidence = worked.foundShapes.get(circuitId)?.evidence;
  return evidence === 'claimed' || evidence === 'none';
};

const gaps: readonly Gap[] = [
  {
    question: 'ring-order',
    words: 'Read the ring end to end and from both ends: how it runs is known by its label only',
    subjects: (worked) => worked.circuitIds.filter((id) => isUnexplored(worked, id)),
    closed: (house, worked) =>
      rework(house, {
        ...house.job,
        circuits: house.job.circuits.map((circuit) =>
          worked.circuitIds.includes(circuit.id)
            ? { ...circuit, certainty: { ...circuit.certainty, order: 'measured' } }
            : circuit,
        ),
      }),
  },
  {
    question: 'ways',
    words: 'Look where the new cables can run: under which boards, past what',
    subjects: (worked) =>
      worked.runs
        .filter((run) => run.segments.some((segment) => segment.certainty === 'assumed'))
        .map((run) => run.id),
    closed: (house) =>
      workHouse(house.job, house.tariff, {
        ...house.allowances,
        assumedPercent: house.allowances.derivedPercent,
      }),
  },
  {
    question: 'box-depths',
    words: 'Open the plates that cables are joined at and measure their boxes',
    subjects: (worked) => worked.things.boxes.filter((box) => box.action === 'unknown').map((box) => box.id),
    closed: (house, worked) => {
      const unknown = new Set(
        worked.things.boxes.filter((box) => box.action === 'unknown').map((box) => box.id),
      );
      const points = house.job.points.map((point) =>
        unknown.has(point.id) ? { ...point, asFound: { ...point.asFound, boxDepthMm: 35 } } : point,
      );
      return rework(house, { ...house.job, points });
    },
  },
  {
    question: 'boards-liftable',
    words: 'Find out whether the floors lift where cables run under them',
    subjects: (worked) => {
      const crossed = new Set(
        worked.runs.flatMap((run) =>
          run.segments
            .filter((segment) => segment.medium.startsWith('void'))
            .map((segment) => segment.storeyId),
        ),
      );
      return worked.job.storeys
        .filter((storey) => crossed.has(storey.id) && storey.floor.liftable === undefined)
        .map((storey) => storey.id);
    },
    closed: (house) =>
      rework(house, {
        ...house.job,
        storeys: house.job.storeys.map((storey) => ({
          ...storey,
          floor: { ...storey.floor, liftable: storey.floor.liftable ?? true },
        })),
      }),
  },
  {
    question: 'rcbo-available',
    words: 'Look at the board: does its maker still sell an RCBO for it?',
    subjects: (worked) =>
      countsOnUnknownRcbo(worked)
        ? worked.job.boards.filter((board) => board.rcboAvailable === undefined).map((board) => board.id)
        : [],
    closed: (house) =>
      rework(house, {
        ...house.job,
        boards: house.job.boards.map((board) => ({ ...board, rcboAvailable: board.rcboAvailable ?? true })),
      }),
  },
];

const widthPence = (range: PriceRange): number => range.highPence - range.lowPence;

/**
 * What is not known and widens the price, dearest first: each gap is closed in turn and the scheme priced
 * again; its worth is by how much the range then narrows. Gaps that would narrow nothing are left out.
 */
export function openQuestions(house: House, scheme: Scheme, library: Library): readonly OpenQuestion[] {
  const worked = workScheme(house, scheme);
  const nowPence = widthPence(priceSchemeWithRange(house, worked, library).range);
  return gaps
    .flatMap((gap) => {
      const subjects = gap.subjects(worked);
      if (subjects.length === 0) return [];
      const closed = gap.closed(house, worked);
      const thenPence = widthPence(priceSchemeWithRange(closed, workScheme(closed, scheme), library).range);
      return [
        {
          question: gap.question,
          subjects: [...subjects].sort(),
          words: gap.words,
          worthPence: nowPence - thenPence,
        },
      ];
    })
    .filter((question) => question.worthPence > 0)
    .sort((a, b) => b.worthPence - a.worthPence || (a.question < b.question ? -1 : 1));
}
