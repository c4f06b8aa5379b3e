import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import { remembered } from '../plan/remembered.ts';
import type { PriceEnds } from '../price/price-range.ts';
import { UNTOLD_LENGTH_MM } from '../ways/length-allowances.ts';
import type { Run } from '../ways/run.ts';
import { runLength } from '../ways/run-length.ts';
import type { OpenQuestion } from './estimate-result.ts';
import { endsOfRange } from './price-scheme-with-range.ts';
import { type HouseGap, type SurveyGap, surveyGaps } from './survey-gaps.ts';
import { type House, sameHouse, workHouse, workScheme } from './work-scheme.ts';

const widthPence = (range: PriceEnds): number => range.highPence - range.lowPence;

/** A scheme worked in a house, before any gap is closed. */
interface Before {
  readonly house: House;
  readonly scheme: Scheme;
  readonly worked: Worked;
  readonly library: Library;
}

function widthWith({ scheme, library }: Before, house: House, laid?: readonly Run[]): number {
  const worked = workScheme(house, scheme, laid);
  return widthPence(endsOfRange({ house, worked, library }));
}

function withGapClosed(before: Before, gap: SurveyGap, subjects: readonly string[]): number {
  const { house, worked } = before;
  if (gap.kind === 'of-scheme')
    return widthWith(before, sameHouse(house, gap.closed(house.job, subjects, worked)), worked.runs);
  const closed = closedOnce(house)(gap, subjects);
  return widthWith(before, closed, gap.movesCable ? undefined : worked.runs);
}

/** Schemes of one house often ask the same: the house with that gap closed is worked out once for all of them. */
const closedOnce = remembered((house: House) => {
  const known = new Map<string, House>();
  return (gap: HouseGap, subjects: readonly string[]): House => {
    const key = [gap.question, ...subjects].join(' ');
    const found = known.get(key) ?? houseClosed(house, gap, subjects);
    known.set(key, found);
    return found;
  };
});

function houseClosed(house: House, gap: HouseGap, subjects: readonly string[]): House {
  const job = gap.closed(house.job, subjects);
  return gap.movesCable
    ? workHouse(job, house.tariff, house.allowances, house.firmTerms)
    : sameHouse(house, job);
}

/** The ways of the new cables, seen: as certain as those that were worked out from a full survey. */
function withWaysSeen(before: Before): number {
  const { house, worked } = before;
  const allowances = { ...house.allowances, assumedPercent: house.allowances.derivedPercent };
  const seen = worked.runs.map((run) => ({
    ...run,
    ...runLength(run.segments, [run.from, run.to], allowances),
  }));
  return widthWith(before, house, seen);
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
function withPointsPlaced(before: Before): number {
  const { house, worked } = before;
  const doubtMm = (UNTOLD_LENGTH_MM * house.allowances.derivedPercent) / 100;
  const lengths = {
    lengthMm: UNTOLD_LENGTH_MM,
    lowMm: UNTOLD_LENGTH_MM - doubtMm,
    highMm: UNTOLD_LENGTH_MM + doubtMm,
  };
  const placed = worked.runs.map((run) => (run.lengthMm === null ? { ...run, ...lengths } : run));
  return widthWith(before, house, placed);
}

/**
 * What is not known and widens the price, dearest first: each gap is closed in turn and the scheme priced
 * again; its worth is by how much the range then narrows. Gaps that would narrow nothing are left out.
 */
export function openQuestions(
  house: House,
  worked: Worked,
  range: PriceEnds,
  library: Library,
): readonly OpenQuestion[] {
  const { scheme } = worked;
  if (scheme === null) return [];
  const before = { house, scheme, worked, library };
  const nowPence = widthPence(range);
  const asked = surveyGaps.flatMap((gap) => {
    const subjects = gap.subjects(worked);
    if (subjects.length === 0) return [];
    const worthPence = nowPence - withGapClosed(before, gap, subjects);
    return [{ question: gap.question, subjects, words: gap.words, worthPence }];
  });
  const assumed = worked.runs.filter((run) => run.segments.some(({ certainty }) => certainty === 'assumed'));
  if (assumed.length > 0) {
    asked.push({
      question: 'ways',
      subjects: assumed.map((run) => run.id).sort(),
      words: 'Look where the new cables can run: under which boards, past what',
      worthPence: nowPence - withWaysSeen(before),
    });
  }
  const unplaced = unplacedPoints(worked);
  if (unplaced.length > 0) {
    asked.push({
      question: 'places',
      subjects: unplaced,
      words: 'Place the points: cable to a point without a place counts with a typical length, 2 to 15 m',
      worthPence: nowPence - withPointsPlaced(before),
    });
  }
  return asked
    .filter((question) => question.worthPence > 0)
    .sort((a, b) => b.worthPence - a.worthPence || (a.question < b.question ? -1 : 1));
}
