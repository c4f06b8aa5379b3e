import { countWords } from '#drawing/count-words.ts';
import { unpricedOf } from '#engine/price/unpriced.ts';
import { outcomeCount } from '#engine/rules/outcome-count.ts';
import type { SchemeEstimate, SurveyAsk } from '#engine/schemes/estimate-result.ts';
import { boxMatters } from '#engine/schemes/outcomes/box-matters.ts';
import { floorMatters } from '#engine/schemes/outcomes/floor-matters.ts';
import type { OpenMatter } from '#engine/schemes/outcomes/open-matter.ts';
import { rcboMatters } from '#engine/schemes/outcomes/rcd-matters.ts';
import { surgeMatters } from '#engine/schemes/outcomes/surge-matters.ts';
import type { Job } from '#model/job.ts';
import { type Step, stepNames, steps } from './job-view.ts';
import { counted } from './written.ts';

/**
 * How far a step of a job is: `done`, with all before it; `in-part`, as `done` for what follows, but something is open
 * here that the work can go on without for now; `to-do`, as something lacks; `waits`: nothing lacks here, but a
 * step before it is open still; `ready`: papers can be fetched. Whether papers went out is not recorded.
 */
export type StepMark = 'done' | 'in-part' | 'to-do' | 'waits' | 'ready';

/** How far a step is, and what still lacks or is open in words: "2 points not placed". */
export interface StepState {
  readonly mark: StepMark;
  /** Empty where nothing lacks. */
  readonly lacks: string;
}

/** What lacks in what was found; somebody has to have told how it hangs together, or answered what the checks ask. */
function lacksFound(job: Job): string {
  const found = job.points.some(({ status }) => status === 'existing');
  if (job.circuits.length === 0) return 'no circuit yet';
  if (!found) return 'no point found yet';
  return job.legs.length > 0 || job.answers.length > 0 ? '' : 'cables and questions open';
}

/** What the survey asks for and nobody told yet. */
function openFound(survey: readonly Pick<SurveyAsk, 'state'>[]): string {
  const open = survey.filter(({ state }) => state === 'open' || state === 'put-off').length;
  return open === 0 ? '' : `${counted(open, 'thing')} not known`;
}

function lacksWanted({ points }: Job): string {
  const wanted = points.filter(({ status }) => status === 'wanted' || status === 'replaced');
  if (wanted.length === 0) return 'nothing wanted yet';
  const unplaced = wanted.filter(({ place }) => place === undefined);
  return unplaced.length === 0 ? '' : `${counted(unplaced.length, 'point')} not placed`;
}

/** The scheme does something and fails nothing; to leave a wanted point unconnected would be to fail. */
const isWay = ({ complies, worked: { scheme } }: SchemeEstimate): boolean =>
  complies !== 'no' && scheme !== null && scheme.connections.length + scheme.remedies.length > 0;

function lacksWay(schemes: readonly SchemeEstimate[]): string {
  if (schemes.length === 0) return 'no scheme yet';
  if (schemes.some(isWay)) return '';
  return schemes.length === 1 ? 'the scheme fails a check' : 'every scheme fails a check';
}

/** What is still to be decided or proved of the scheme that has least of it. */
function openWay(ways: readonly SchemeEstimate[]): string {
  const open = ways.map(({ findings }) => ({
    decide: outcomeCount(findings, 'decide'),
    'not-proven': outcomeCount(findings, 'not-proven'),
  }));
  const [least] = open.toSorted((a, b) => a.decide + a['not-proven'] - b.decide - b['not-proven']);
  if (least === undefined) return '';
  return (['decide', 'not-proven'] as const)
    .filter((outcome) => least[outcome] > 0)
    .map((outcome) => countWords(outcome, least[outcome]))
    .join(', ');
}

/** What nobody has looked at of the scheme that is shown, else of that which has least of it, and that its kit hangs on; not what is bought for either way. */
function openKit({ packFor = [] }: Job, ways: readonly SchemeEstimate[], shown: string | null): string {
  const isBoughtFor = ({ id }: OpenMatter): boolean =>
    packFor.some(({ question, outcomes }) => question === id && outcomes.length > 1);
  const withKit = ways.filter(hasKit);
  const own = withKit.filter(({ id }) => id === shown);
  const open = (own.length > 0 ? own : withKit).map(({ worked }) => ({
    boxes: boxMatters(worked).filter((matter) => !isBoughtFor(matter)).length,
    rcbos: rcboMatters(worked).filter((matter) => !isBoughtFor(matter)).length,
    surge: surgeMatters(worked).filter((matter) => !isBoughtFor(matter)).length,
    floors: floorMatters(worked).filter((matter) => !isBoughtFor(matter)).length,
  }));
  const count = ({ boxes, rcbos, surge, floors }: (typeof open)[number]): number =>
    boxes + rcbos + surge + floors;
  const [least] = open.toSorted((a, b) => count(a) - count(b));
  if (least === undefined) return '';
  return [
    ...(least.boxes === 0 ? [] : [`${counted(least.boxes, 'box', 'boxes')} not looked at`]),
    ...(least.rcbos === 0 ? [] : [`${counted(least.rcbos, 'RCBO')} not asked for`]),
    ...(least.surge === 0 ? [] : ['surge protection not asked']),
    ...(least.floors === 0 ? [] : [`${counted(least.floors, 'floor')} not tried`]),
  ].join(', ');
}

const hasKit = ({ price }: SchemeEstimate): boolean => price.bill.length > 0;

function unpriced(scheme: SchemeEstimate): number {
  const { materials, tasks, sums } = unpricedOf(scheme);
  return materials + tasks + sums;
}

function lacksPrice(ways: readonly SchemeEstimate[]): string {
  const open = ways.filter(hasKit).map(unpriced);
  if (open.length === 0) return 'no kit yet';
  const fewest = Math.min(...open);
  return fewest === 0 ? '' : `${counted(fewest, 'line')} without a price`;
}

/**
 * How far each step of a job is, and what it still lacks.
 *
 * @param survey the survey's one list, of the shown scheme or of the house.
 * @param shown the scheme that is looked at, by id: its kit is told where it may go ahead.
 * @param schemes of the job as they stand; kit and price want one that joins everything and fails nothing.
 */
export function stepStates(
  job: Job,
  schemes: readonly SchemeEstimate[],
  survey: readonly Pick<SurveyAsk, 'state'>[],
  shown: string | null = null,
): Readonly<Record<Step, StepState>> {
  const ways = schemes.filter(isWay);
  const lacks: Readonly<Record<Step, string>> = {
    'as-found': lacksFound(job),
    wanted: lacksWanted(job),
    ways: lacksWay(schemes),
    kit: ways.some(hasKit) ? '' : 'no scheme that may go ahead yet',
    price: lacksPrice(ways),
    papers: '',
  };
  const open: Partial<Record<Step, string>> = {
    'as-found': openFound(survey),
    ways: openWay(ways),
    kit: openKit(job, ways, shown),
  };
  const firstOpen = steps.find((step) => lacks[step] !== '') ?? 'papers';
  const stateOf = (step: Step): StepState => {
    if (lacks[step] !== '') return { mark: 'to-do', lacks: lacks[step] };
    const isPast = steps.indexOf(step) < steps.indexOf(firstOpen);
    if (isPast && open[step]) return { mark: 'in-part', lacks: open[step] };
    if (isPast) return { mark: 'done', lacks: '' };
    if (step === firstOpen) return { mark: 'ready', lacks: '' };
    return { mark: 'waits', lacks: `${stepNames[firstOpen]} is open still` };
  };
  return {
    'as-found': stateOf('as-found'),
    wanted: stateOf('wanted'),
    ways: stateOf('ways'),
    kit: stateOf('kit'),
    price: stateOf('price'),
    papers: stateOf('papers'),
  };
}
