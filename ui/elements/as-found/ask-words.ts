import type { AskState, SurveyAsk } from '#engine/schemes/estimate-result.ts';
import type { AskStage } from '#engine/survey/ask.ts';
import { isUnsettled } from '#engine/survey/fields.ts';
import type { JobView } from '../../job-view.ts';
import { wholePounds } from '../../written.ts';

/** The stages of the walk, as their heads read. */
export const stageTitles: Readonly<Record<AskStage, string>> = {
  outside: 'On the way in',
  board: 'At the meter and the board',
  rooms: 'In the rooms',
  voids: 'Above and below the rooms',
};

/** How an ask stands, in a word or two. */
export const stateWords: Readonly<Record<AskState, string>> = {
  open: 'Not asked yet',
  'put-off': 'Cannot be told yet',
  assumed: 'Assumed',
  seen: 'Seen',
  measured: 'Measured',
};

/** The one list that the survey asks: of the shown scheme, else of the house; while something moves, as it was before. */
export function surveyOf({ scheme, estimate }: Pick<JobView, 'scheme' | 'estimate'>): readonly SurveyAsk[] {
  const whole = estimate.schemes.find(({ id }) => id === scheme?.id);
  return whole?.survey ?? estimate.asFound.survey;
}

/** Whether something of an ask is still to be found out; what is only assumed is. */
export const isUnsettledAsk = ({ fields, subjects }: Pick<SurveyAsk, 'fields' | 'subjects'>): boolean =>
  subjects.length > 0 || fields.some(isUnsettled);

/** Whether nobody has said anything of some of it, nor that it cannot be told yet. */
export const isUnanswered = ({ state }: Pick<SurveyAsk, 'state'>): boolean => state === 'open';

/** "12 of 31 answered". */
export const progressWords = (asks: readonly SurveyAsk[]): string =>
  `${asks.filter((ask) => !isUnanswered(ask)).length} of ${asks.length} answered`;

/** What of the price hangs on an ask: "£213", empty where nothing does. */
export const worthShort = ({ worth }: Pick<SurveyAsk, 'worth'>): string =>
  worth === null ? '' : wholePounds(worth.rangePence);

/** The same in a sentence: by how much dearer and cheaper it may come; without a figure, what else of money hangs on it. */
export function worthSentence({ worth, money }: Pick<SurveyAsk, 'worth' | 'money'>): string {
  if (worth === null) return money ?? 'No money hangs on it by itself.';
  const { lowPence, highPence } = worth;
  const ways = [
    ...(highPence > 0 ? [`${wholePounds(highPence)} dearer`] : []),
    ...(lowPence > 0 ? [`${wholePounds(lowPence)} cheaper`] : []),
  ];
  return `Because of it the price may still come out ${ways.join(' or ')}.`;
}

/** What waits for an ask among the checks of a scheme or of the house: their titles, each once. */
export function waitingChecks({ rules }: Pick<SurveyAsk, 'rules'>, view: JobView): readonly string[] {
  const { scheme, estimate } = view;
  const findings = scheme?.findings ?? estimate.asFound.findings;
  const titles = findings.flatMap(({ rule, outcome, title }) =>
    rules.includes(rule) && outcome === 'not-proven' ? [title] : [],
  );
  return [...new Set(titles)];
}
