import type { Remedy } from '#model/scheme.ts';
import type { Facts } from './facts.ts';
import type { Origin, Outcome } from './finding.ts';

/** What a check returns for one subject; the words are filled in from the rule's messages. */
export interface CheckResult<M extends string> {
  readonly outcome: Outcome;
  readonly messageId: M;
  readonly subjectId: string;
  readonly origin: Origin;
  /** Values for the `{names}` of the message and the remedy. */
  readonly values?: Readonly<Record<string, string | number>>;
  readonly actual?: number | string;
  readonly limit?: number | string;
  readonly unit?: string;
  readonly fix?: Remedy;
  /** Only for fails and not-proven: this subject is a stop gate, and shut. */
  readonly stopGate?: boolean;
}

/** A rule: a declarative head, one check over facts already worked out, words apart from logic. */
export interface Rule {
  /** Never reused: findings, tests and printed papers quote it. */
  readonly id: string;
  readonly title: string;
  /** "BS 7671 433.1.204", or "common practice". */
  readonly source: string;
  /** Whether it has anything to say of this job: the circuit shapes it binds, the premises, the nation. */
  readonly applies: (facts: Facts) => boolean;
  /** Sentences by id, with `{value}` places. */
  readonly messages: Readonly<Record<string, string>>;
  /** What would put it right, by message id. */
  readonly remedies: Readonly<Record<string, string>>;
  /** Whether `fails` is among its outcomes (then a not-proven of it keeps a scheme from complying). */
  readonly couldFail: boolean;
  readonly check: (facts: Facts) => readonly CheckResult<string>[];
}

/** Declares a rule; the generic makes a misspelt message id a compile error. */
export function rule<M extends string>(spec: {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly applies?: (facts: Facts) => boolean;
  readonly messages: Readonly<Record<M, string>>;
  readonly remedies?: Partial<Readonly<Record<M, string>>>;
  readonly couldFail: boolean;
  readonly check: (facts: Facts) => readonly CheckResult<M>[];
}): Rule {
  return {
    ...spec,
    applies: spec.applies ?? (() => true),
    remedies: { ...spec.remedies } as Record<string, string>,
  };
}
