import { counted } from '#engine/rules/counted.ts';
import type { Finding, Outcome } from '#engine/rules/finding.ts';
import { outcomeCount } from '#engine/rules/outcome-count.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { countWords } from './count-words.ts';

/** How the checks of a scheme come out as a whole. */
export interface Verdict {
  /** The gravest thing that is open; passes only when nothing fails, is to be decided or is not proven. */
  readonly outcome: Outcome;
  /** In full, with all that is open: "Fails nothing; 6 to decide, 2 not proven". */
  readonly words: string;
  /** What the mark stands for, for where there is little room: "6 to decide". */
  readonly short: string;
}

const open = ['fails', 'decide', 'not-proven'] as const;
type Open = (typeof open)[number];

type Counts = Readonly<Record<Open, number>>;

function countsOf(findings: readonly Finding[]): Counts {
  const count = (outcome: Open): number => outcomeCount(findings, outcome);
  return { fails: count('fails'), decide: count('decide'), 'not-proven': count('not-proven') };
}

/** What a verdict begins with, and what remains to be told behind it. */
interface Head {
  readonly outcome: Outcome;
  readonly lead: string;
  readonly short: string;
  readonly told?: Open;
}

/**
 * What keeps the scheme from going ahead comes first, then what fails as found and stands in no scheme's way, then what is
 * to be decided, then what is not proven and keeps nothing.
 */
function headOf({ complies, findings }: Judged, counts: Counts): Head {
  const gating = findings.filter(({ outcome, gates }) => outcome === 'fails' && gates).length;
  if (complies === 'no') {
    const short = `Fails ${counted(gating, 'check')}`;
    return { outcome: 'fails', lead: `${short}: it may not go ahead`, short, told: 'fails' };
  }
  if (complies === 'not-proven') {
    const lead = `${countWords('not-proven', counts['not-proven'])}: too little is known to go ahead`;
    return { outcome: 'not-proven', lead, short: 'Not proven', told: 'not-proven' };
  }
  if (counts.fails > 0)
    return {
      outcome: 'fails',
      lead: `Adds no failure; ${countWords('fails', counts.fails)} as found`,
      short: `${countWords('fails', counts.fails)} as found`,
      told: 'fails',
    };
  const gravest = open.find((outcome) => counts[outcome] > 0);
  if (gravest === undefined) return { outcome: 'passes', lead: 'Passes every check made', short: 'Passes' };
  return { outcome: gravest, lead: 'Fails nothing', short: countWords(gravest, counts[gravest]) };
}

type Judged = Pick<SchemeEstimate, 'complies' | 'findings'>;

/** The checks of a scheme in one mark and one line; the mark is always that of the gravest thing that is open. */
export function verdictOf(scheme: Judged): Verdict {
  const counts = countsOf(scheme.findings);
  const { outcome, lead, short, told } = headOf(scheme, counts);
  const rest = open
    .filter((one) => one !== told && counts[one] > 0)
    .map((one) => countWords(one, counts[one]));
  return { outcome, short, words: rest.length === 0 ? lead : `${lead}; ${rest.join(', ')}` };
}

/** What is said of the cheapest scheme: only one that nothing unproved stands in the way of may go ahead. */
export const cheapestWords = ({ complies }: Pick<SchemeEstimate, 'complies'>): string =>
  complies === 'yes' ? 'cheapest that may go ahead' : 'cheapest of those that fail nothing so far';
