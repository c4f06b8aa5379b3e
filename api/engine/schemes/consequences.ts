import type { Library } from '#model/library.ts';
import type { Remedy, Scheme } from '#model/scheme.ts';
import type { Finding } from '../rules/finding.ts';
import { grossPenceOf } from './price-worked.ts';
import { type House, workScheme } from './work-scheme.ts';

const keyOf = (fix: Remedy): string => `${fix.kind} ${fix.at ?? ''}`;

/**
 * Says what each finding's remedy would add to the price, VAT included: the scheme is worked and priced
 * once more with the remedy in it. Findings without a priced remedy, or whose remedy is in the scheme
 * already, keep null.
 */
export function withConsequences(
  findings: readonly Finding[],
  house: House,
  scheme: Scheme,
  library: Library,
): readonly Finding[] {
  const had = new Set(scheme.remedies.map(keyOf));
  const grossPence = grossPenceOf(workScheme(house, scheme), library);
  const known = new Map<string, number>();
  const priceOf = (fix: Remedy): number => {
    const key = keyOf(fix);
    const before = known.get(key);
    if (before !== undefined) return before;
    const worked = workScheme(house, { ...scheme, remedies: [...scheme.remedies, fix] });
    const pence = grossPenceOf(worked, library) - grossPence;
    known.set(key, pence);
    return pence;
  };
  return findings.map((finding) =>
    finding.fix === null || finding.outcome === 'passes' || had.has(keyOf(finding.fix))
      ? finding
      : { ...finding, consequencePence: priceOf(finding.fix) },
  );
}
