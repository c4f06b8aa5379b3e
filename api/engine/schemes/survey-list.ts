import type { Library } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import { remembered } from '../plan/remembered.ts';
import type { PriceEnds } from '../price/price-range.ts';
import { type Ask, askStages, type Closing } from '../survey/ask.ts';
import { asksOf } from '../survey/asks-of.ts';
import { isUnsettled } from '../survey/fields.ts';
import type { AskState, AskWorth, SurveyAsk } from './estimate-result.ts';
import { endsOfRange, endsOnceTold } from './price-scheme-with-range.ts';
import { type House, sameHouse, workHouse, workScheme } from './work-scheme.ts';

/** A scheme worked in a house and priced, before anything is settled. */
export interface ToSurvey {
  readonly house: House;
  readonly worked: Worked;
  readonly range: PriceEnds;
  readonly library: Library;
}

/** Schemes of one house often ask the same: the house as it reads once that is settled is worked out once for all of them. */
const closedOnce = remembered((house: House) => {
  const known = new Map<string, House>();
  return (closing: Closing): House => {
    const { sharedAs } = closing;
    const found = sharedAs === undefined ? undefined : known.get(sharedAs);
    if (found !== undefined) return found;
    const closed = closedHouse(house, closing);
    if (sharedAs !== undefined) known.set(sharedAs, closed);
    return closed;
  };
});

function closedHouse(house: House, { job, movesCable }: Closing): House {
  if (job === undefined) return house;
  const closed = job(house.job);
  return movesCable === true
    ? workHouse(closed, house.tariff, house.allowances, house.firmTerms)
    : sameHouse(house, closed);
}

/** The range once an ask is settled: the same stages, in the house and with the cables as they would be. */
function endsOnceSettled({ house, worked, library }: ToSurvey, closing: Closing): PriceEnds {
  const closed = closedOnce(house)(closing);
  const laid = closing.runs?.(worked.runs, house.allowances) ?? worked.runs;
  const settled = workScheme(closed, worked.scheme, closing.movesCable === true ? undefined : laid);
  return endsOfRange({ house: closed, worked: settled, library });
}

/** Null where settling it would not make the range narrower. */
function worthOf(
  toSurvey: ToSurvey,
  { closing, subjects }: Ask,
  onceTold: (settled: readonly string[]) => PriceEnds,
): AskWorth | null {
  if (closing === undefined || subjects.length === 0 || toSurvey.worked.scheme === null) return null;
  const { lowPence, highPence } = toSurvey.range;
  // Where nothing that is counted changes, what falls away is what might have turned out otherwise.
  const settled =
    closing.settles === undefined ? endsOnceSettled(toSurvey, closing) : onceTold(closing.settles);
  const worth = { lowPence: settled.lowPence - lowPence, highPence: highPence - settled.highPence };
  const rangePence = worth.lowPence + worth.highPence;
  return rangePence > 0 ? { ...worth, rangePence } : null;
}

function stateOf({ fields, id, subjects }: Ask, putOff: ReadonlySet<string>): AskState {
  const has = (state: string): boolean => fields.some((field) => field.state === state);
  if (subjects.length > 0 && has('open')) return putOff.has(id) ? 'put-off' : 'open';
  if (fields.some(isUnsettled)) return putOff.has(id) ? 'put-off' : 'assumed';
  return has('seen') ? 'seen' : 'measured';
}

/** The questions of which somebody said that they cannot be told for now: answers that hold nothing. */
const putOffIn = ({ job }: Worked): ReadonlySet<string> =>
  new Set(job.answers.flatMap(({ question, value }) => (value === null ? [question] : [])));

/**
 * The survey's one list for a scheme, or for the house where there is none: what is asked, how it stands, and what of the
 * price's range hangs on it, found by pricing the scheme with it settled as the price counts on it. In the order of the walk, within a stage by that worth, ties as one
 * meets them.
 */
export function surveyList(toSurvey: ToSurvey): readonly SurveyAsk[] {
  const putOff = putOffIn(toSurvey.worked);
  const onceTold = endsOnceTold(toSurvey);
  const asks = asksOf(toSurvey.worked).map((ask): SurveyAsk => {
    const { closing: _, ...told } = ask;
    return { ...told, state: stateOf(ask, putOff), worth: worthOf(toSurvey, ask, onceTold) };
  });
  return askStages.flatMap((stage) =>
    asks
      .filter((ask) => ask.stage === stage)
      .toSorted((a, b) => (b.worth?.rangePence ?? 0) - (a.worth?.rangePence ?? 0)),
  );
}

/** The list without prices: of the house as found, for whatever comes. */
export const surveyOfHouse = (worked: Worked): readonly SurveyAsk[] => {
  const putOff = putOffIn(worked);
  return asksOf(worked).map((ask) => {
    const { closing: _, ...told } = ask;
    return { ...told, state: stateOf(ask, putOff), worth: null };
  });
};
