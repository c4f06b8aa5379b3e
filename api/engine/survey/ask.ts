import type { Job } from '#model/job.ts';
import type { LengthAllowances, Run } from '../ways/run.ts';

/** Where on the walk through a house something is asked: on the way in, at the meter and the board, in the rooms, above and below them. */
export type AskStage = 'outside' | 'board' | 'rooms' | 'voids';

/** The stages in the order of the walk. */
export const askStages: readonly AskStage[] = ['outside', 'board', 'rooms', 'voids'];

/** `visit`: to be told with the power on and nothing opened. `isolated`: waits until the board and plates may be opened, or a floor. */
export type AskWhen = 'visit' | 'isolated';

/** How a fact stands in the survey. `open`: nobody has said anything. */
export type FactState = 'open' | 'assumed' | 'seen' | 'measured';

/** One thing of which a fact is asked. */
export interface AskField {
  readonly subjectId: string;
  /** The name of the fact in the job file; null where no single field answers it. */
  readonly fact: string | null;
  readonly state: FactState;
}

/** How the survey would read once an ask is settled as the price counts on it. */
export interface Closing {
  /**
   * Where nothing that is counted changes by it: the questions whose turns of the price fall away. Absent: the house is worked
   * again as below.
   */
  readonly settles?: readonly string[];
  readonly job?: (job: Job) => Job;
  /** Of the cables as they are laid; absent: they stay as they are. */
  readonly runs?: (runs: readonly Run[], allowances: LengthAllowances) => readonly Run[];
  /** Whether cables go another way then, and are laid anew; absent: they stay. */
  readonly movesCable?: true;
  /** A name for the closed house, where it reads the same for every scheme that asks the same; absent: it does not. */
  readonly sharedAs?: string;
}

/** One thing that a survey finds out, whether it has or not. */
export interface Ask {
  /** The name of the question; for what the checklist asks, its id there. */
  readonly id: string;
  /** Its name where there is little room: "Ze", "bond to gas". */
  readonly short: string;
  /** What to do, in plain words. */
  readonly words: string;
  /** What hangs on it, in plain words. */
  readonly why: string;
  /** The published source of why it is asked; null: common practice. */
  readonly source: string | null;
  readonly stage: AskStage;
  readonly when: AskWhen;
  /** At least one, in a stated order. */
  readonly fields: readonly AskField[];
  /** The things of it that are not settled, sorted; what is only assumed is not. Empty: it is answered. */
  readonly subjects: readonly string[];
  /** The rules that look at it, by id. */
  readonly rules: readonly string[];
  /** Absent: no figure hangs on it by itself. */
  readonly closing?: Closing;
  /** What of money hangs on it where no figure can be given, as a sentence; absent: nothing but what the figure says. */
  readonly money?: string;
}
