import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import type { PriceRange } from '../price/totals.ts';
import type { OpenQuestion } from './estimate-result.ts';
import { priceSchemeWithRange } from './price-scheme-with-range.ts';
import { type SurveyGap, surveyGaps } from './survey-gaps.ts';
import { type House, sameHouse, workHouse, workScheme } from './work-scheme.ts';

const widthPence = (range: PriceRange): number => range.highPence - range.lowPence;

/** A scheme worked in a house, before any gap is closed. */
interface Before {
  readonly house: House;
  readonly scheme: Scheme;
  readonly worked: Worked;
  readonly library: Library;
}

function widthWith({ scheme, library }: Before, house: House, worked: Worked | null): number {
  const again = workScheme(house, scheme, worked?.runs);
  return widthPence(priceSchemeWithRange(house, again, library).range);
}

function withGapClosed(before: Before, gap: SurveyGap, subjects: readonly string[]): number {
  const { house, worked } = before;
  const job = gap.closed(house.job, subjects, worked);
  return gap.movesCable
    ? widthWith(before, workHouse(job, house.tariff, house.allowances), null)
    : widthWith(before, sameHouse(house, job), worked);
}

/** The ways of the new cables, seen: as certain as those that were worked out from a full survey. */
function withWaysSeen(before: Before): number {
  const { house } = before;
  const allowances = { ...house.allowances, assumedPercent: house.allowances.derivedPercent };
  return widthWith(before, { ...house, allowances }, null);
}

/**
 * What is not known and widens the price, dearest first: each gap is closed in turn and the scheme priced
 * again; its worth is by how much the range then narrows. Gaps that would narrow nothing are left out.
 */
export function openQuestions(
  house: House,
  worked: Worked,
  range: PriceRange,
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
  return asked
    .filter((question) => question.worthPence > 0)
    .sort((a, b) => b.worthPence - a.worthPence || (a.question < b.question ? -1 : 1));
}
