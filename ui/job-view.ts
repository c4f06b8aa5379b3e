import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { WaysView } from './controllers/way-finder.ts';
import type { MovedChannel } from './moved/moved-channel.ts';
import type { DrawnWay } from './way-drawing/way-draft.ts';

/** The steps of a job on screen, in the order of the work. */
export const steps = ['as-found', 'wanted', 'ways', 'kit', 'price', 'papers'] as const;
export type Step = (typeof steps)[number];

/** The steps as people read them. */
export const stepNames: Readonly<Record<Step, string>> = {
  'as-found': 'As found',
  wanted: 'Wanted',
  ways: 'Ways',
  kit: 'Kit',
  price: 'Price',
  papers: 'Papers',
};

/** What is shown of the house: the plan of a storey, a circuit as it is wired, or the volt drop along it. */
export const planViews = ['plan', 'circuit', 'drop'] as const;
export type PlanView = (typeof planViews)[number];

/** What the step Kit shows: the bill, the list to shop by, what is cut from which length, or what is still open. */
export const kitParts = ['bill', 'shopping', 'cuts', 'open'] as const;
export type KitPart = (typeof kitParts)[number];

/** What the step Papers shows: the files to fetch and the quotations, how everything is connected, the tasks in working order, cuts with joists and boards, or the tests. */
export const paperParts = ['files', 'connections', 'tasks', 'floors', 'tests'] as const;
export type PaperPart = (typeof paperParts)[number];

/** What of a step is shown, of those that have parts; a step that has no such part shows its first. */
export type StepPart = KitPart | PaperPart;
export const stepParts: readonly StepPart[] = [...kitParts, ...paperParts];

/** What is shopped by or worked from: nobody looks at the plan beside it, and on paper it has a sheet of its own. */
export const isSheetAlone = (step: Step, part: StepPart): boolean =>
  (step === 'kit' && part === 'shopping') ||
  (step === 'papers' && paperParts.some((each) => each === part && each !== 'files'));

/** How far the keeping of the job has got; `gone`: it was deleted, and what is here is kept nowhere else on the list. */
export type Keeping = 'kept' | 'keeping' | 'not-kept' | 'changed-elsewhere' | 'gone';

/**
 * What every step and every panel of a job is shown from; replaced whole at each change, never changed.
 * Pages make it, elements read it.
 */
export interface JobView {
  readonly job: Job;
  readonly library: Library;
  /** The date that outputs carry, ISO. */
  readonly date: string;
  readonly revision: number;
  /** All schemes worked out; while something moves, of the job as it was before. */
  readonly estimate: Estimate;
  /** The shown scheme of the job as it is this moment; null when the job has no scheme. */
  readonly scheme: SchemeEstimate | null;
  /**
   * True while `estimate` lags behind `job`: only `scheme` is of this moment, without the worth of open questions. While
   * another thread follows the hand (`moved`), all of it is as it was when the point was taken.
   */
  readonly moving: boolean;
  /** What follows a point under the hand, past the page: for the few elements that show it as it moves. */
  readonly moved: MovedChannel;
  readonly step: Step;
  /** Empty when the job has no storey. */
  readonly storeyId: string;
  /** The thing that is being looked at: a point, leg, wall, board, circuit, connection … by id. */
  readonly chosen: string | null;
  /** What is lit on the plan: the causes of a line, the subjects of a finding. */
  readonly lit: ReadonlySet<string>;
  readonly keeping: Keeping;
  /** What was searched for, and the found scheme that is on the plan in place of the shown one. */
  readonly ways: WaysView;
  /** The way that is being drawn by hand; null for none. */
  readonly drawing: DrawnWay | null;
}
