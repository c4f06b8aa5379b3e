import { counted } from '#engine/rules/counted.ts';
import type { Outcome } from '#engine/rules/finding.ts';
import { outcomeWords } from './marks.ts';

/** How many checks come out so: "1 fail", "2 fails", "1 pass", "3 to decide". */
export function countWords(outcome: Outcome, count: number): string {
  if (outcome === 'fails') return counted(count, 'fail');
  if (outcome === 'passes') return `${count} ${count === 1 ? 'pass' : 'passes'}`;
  return `${count} ${outcomeWords[outcome].toLowerCase()}`;
}
