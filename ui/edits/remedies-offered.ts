import { remedyKey } from '#engine/circuit/remedy-key.ts';
import type { Finding } from '#engine/rules/finding.ts';
import type { Remedy, Scheme } from '#model/scheme.ts';
import { hasRemedy } from './add-remedy.ts';

/** A remedy that a check asks for, with what it would add to the price. */
export interface OfferedRemedy {
  readonly remedy: Remedy;
  /** VAT included; null where it is not priced. */
  readonly pence: number | null;
  /** The titles of the checks that it would put right. */
  readonly titles: readonly string[];
}

/** Remedies that the findings of a scheme name and that it has not, each once, in the order of the findings. */
export function remediesOffered(scheme: Scheme, findings: readonly Finding[]): readonly OfferedRemedy[] {
  const offers = new Map<string, OfferedRemedy>();
  for (const { fix, outcome, title, consequencePence } of findings) {
    if (fix === null || outcome === 'passes' || hasRemedy(scheme, fix)) continue;
    const key = remedyKey(fix);
    const known = offers.get(key);
    const titles = [...new Set([...(known?.titles ?? []), title])];
    offers.set(key, { remedy: known?.remedy ?? fix, pence: known?.pence ?? consequencePence, titles });
  }
  return [...offers.values()];
}
