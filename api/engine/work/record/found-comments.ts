import type { Finding, Outcome } from '../../rules/finding.ts';
import type { Recording } from './recording.ts';

/** Something of the existing installation for the record: found, and not caused by the work. */
export interface FoundComment {
  readonly rule: string;
  readonly title: string;
  /** `fails`: not as the standard asks. `decide` and `advice`: seen, and to be judged. `not-proven`: not looked at, or it could not be told. */
  readonly outcome: Exclude<Outcome, 'passes'>;
  /** What was found, in words for the record. */
  readonly words: string;
  readonly remedy: string | null;
  readonly source: string;
}

/**
 * Checks whose findings are no comment on the installation: what is offered, what the work itself has to heed or to measure, what no
 * wire shows. By rule, or by rule and message.
 */
const notOfTheInstallation: ReadonlySet<string> = new Set([
  // The house as drawn, its owner, what may be in its walls.
  'HG1',
  'PR4',
  'SC3',
  'RT13',
  // Offers, and data that a design is made with.
  'PR1 recommended',
  'PR2 offer',
  'PR2 wanted',
  'AD1 askMaker',
  'SP6 long',
  // Hold points of the work, and how it is made dead.
  'ST4 hold',
  'ST4 lowVoltage',
  'ST5 hold',
  'SU6 distributor',
  'SU6 both',
]);

/** What is skipped, for the test that holds it against the rules. */
export const skippedComments: readonly string[] = [...notOfTheInstallation];

const isComment = ({ rule, messageId, origin, outcome }: Finding): boolean =>
  origin === 'found' &&
  outcome !== 'passes' &&
  !notOfTheInstallation.has(rule) &&
  !notOfTheInstallation.has(`${rule} ${messageId}`);

const keyOf = ({ rule, subject }: Finding): string => `${rule} ${subject}`;

/**
 * The comments on the existing installation: what was found and not caused by the scheme, of the circuits that it touches and of the
 * supply; of the rest of the house what fails. What the scheme puts right is none. From the gravest to the mildest, the same once.
 *
 * Source: BS 7671 644.1.2 (defects found that the work does not put right are recorded).
 */
export function foundComments({ findings, findingsAsFound }: Recording): readonly FoundComment[] {
  const judged = new Set(findings.map(keyOf));
  const elsewhere = findingsAsFound.filter(
    (finding) => finding.outcome === 'fails' && !judged.has(keyOf(finding)),
  );
  const comments = [...elsewhere, ...findings].filter(isComment).map(commentOf);
  const words = comments.map((comment) => comment.words);
  return comments
    .filter((comment, i) => words.indexOf(comment.words) === i)
    .toSorted((a, b) => weight.indexOf(a.outcome) - weight.indexOf(b.outcome));
}

const weight: readonly Outcome[] = ['fails', 'decide', 'advice', 'not-proven'];

function commentOf({ rule, title, outcome, message, remedy, source }: Finding): FoundComment {
  if (outcome === 'passes') throw new Error(`A finding of ${rule} that passes is no comment.`);
  return { rule, title, outcome, words: message, remedy, source };
}
