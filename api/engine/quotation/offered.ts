import type { Job } from '#model/job.ts';
import type { Estimate, SchemeEstimate } from '../schemes/estimate-result.ts';
import type { OptionLetter, OptionSum } from './document.ts';
import { listed } from './said.ts';

/** A scheme that is offered, by the letter that the customer knows it by. */
export interface Offered {
  readonly letter: OptionLetter;
  readonly scheme: SchemeEstimate;
}

const letters: readonly OptionLetter[] = ['A', 'B', 'C'];

/**
 * The schemes that a job offers, in their order, three at most: those chosen, else the cheapest that does not fail, else
 * the first; none for a job without any.
 */
export function offeredSchemes({ quoting }: Pick<Job, 'quoting'>, estimate: Estimate): readonly Offered[] {
  const chosen = (quoting?.schemes ?? []).flatMap(
    (id) => estimate.schemes.find((one) => one.id === id) ?? [],
  );
  const usual = estimate.schemes.find(({ id }) => id === estimate.cheapestId) ?? estimate.schemes[0];
  const schemes = chosen.length > 0 ? [...new Set(chosen)] : usual === undefined ? [] : [usual];
  return schemes.slice(0, letters.length).map((scheme, i) => ({ letter: letters[i] ?? 'A', scheme }));
}

/** Some of the options in words, as "Options A and C"; null where they are all that is offered. */
export function optionWords(of: readonly OptionLetter[], offered: readonly Offered[]): string | null {
  if (offered.every(({ letter }) => of.includes(letter))) return null;
  return `Option${of.length === 1 ? '' : 's'} ${listed(of)}`;
}

/**
 * What each option has to say, the same words said once: in the order in which they first come.
 *
 * @param wordsOf what one option says, each once.
 */
export function saidByOptions(
  offered: readonly Offered[],
  wordsOf: (scheme: SchemeEstimate) => readonly string[],
): readonly { readonly words: string; readonly letters: readonly OptionLetter[] }[] {
  const by = new Map<string, OptionLetter[]>();
  for (const { letter, scheme } of offered)
    for (const words of new Set(wordsOf(scheme))) by.set(words, [...(by.get(words) ?? []), letter]);
  return [...by].map(([words, letters]) => ({ words, letters }));
}

/**
 * Sums of options in words, the same once: "£88", or "A: £88, B: £91" where they differ or are not of all.
 *
 * @param money how a sum is written.
 */
export function sumsSaid(
  sums: readonly OptionSum[],
  offered: readonly Offered[],
  money: (pence: number) => string,
): string {
  const written = new Set(sums.map(({ grossPence }) => money(grossPence)));
  const [only] = written;
  if (only === undefined) return '';
  if (written.size === 1 && sums.length === offered.length) return only;
  return sums.map(({ letter, grossPence }) => `${letter}: ${money(grossPence)}`).join(', ');
}
