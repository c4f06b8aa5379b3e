import type { Job } from '#model/job.ts';
import type { Scheme } from '#model/scheme.ts';

/** What a survey can leave open that changes what is bought. */
export type MatterKind = 'box' | 'spur' | 'rcd' | 'rcbo' | 'surge' | 'floor';

/** The order in which matters are listed. */
export const kindOrder: readonly MatterKind[] = ['box', 'spur', 'rcd', 'rcbo', 'surge', 'floor'];

/** What an outcome makes of the job as surveyed and of a scheme; absent: it leaves that as it is. */
export interface OutcomeChange {
  readonly job?: (job: Job) => Job;
  /** A scheme that it does not concern is given back as it is. */
  readonly scheme?: (scheme: Scheme) => Scheme;
}

/** One way in which it may turn out. */
export interface OpenOutcome {
  readonly id: string;
  /** For people: what is found, and what is done then. */
  readonly words: string;
  readonly change: OutcomeChange;
}

/** Something that nobody has looked at, and that the kit hangs on. */
export interface OpenMatter {
  /** The kind and what it is about: `box/r1`. */
  readonly id: string;
  readonly kind: MatterKind;
  /** Ids of what it is about, for lighting on the plan. */
  readonly subjects: readonly string[];
  /** A question for people. */
  readonly words: string;
  /** The first is what the scheme is counted by; it changes nothing. */
  readonly outcomes: readonly [OpenOutcome, ...OpenOutcome[]];
}

/** The label that people know a point by. */
export const labelOfPoint = ({ points }: Job, pointId: string): string =>
  points.find(({ id }) => id === pointId)?.label ?? pointId;

/**
 * One matter for two that are the same fact, asked by two schemes or by two cables of one: a point that takes no further
 * cable sends each of them elsewhere. What the others change is the same whoever asks.
 */
export function sameMatter(one: OpenMatter, other: OpenMatter): OpenMatter {
  if (one.kind !== 'spur') return one;
  const [first, ...rest] = one.outcomes.map((outcome): OpenOutcome => {
    const twin = other.outcomes.find(({ id }) => id === outcome.id)?.change.scheme;
    const own = outcome.change.scheme;
    if (own === undefined || twin === undefined) return outcome;
    return { ...outcome, change: { scheme: (scheme) => twin(own(scheme)) } };
  });
  return first === undefined ? one : { ...one, outcomes: [first, ...rest] };
}
