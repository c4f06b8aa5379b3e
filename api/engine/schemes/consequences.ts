import type { Library } from '#model/library.ts';
import type { Remedy, Scheme } from '#model/scheme.ts';
import { remedyKey } from '../circuit/remedy-key.ts';
import type { Finding } from '../rules/finding.ts';
import type { Run } from '../ways/run.ts';
import { grossPenceAt } from './price-worked.ts';
import { type House, workScheme } from './work-scheme.ts';

/** The scheme that remedies are added to, as priced. */
export interface PricedBefore {
  readonly house: House;
  readonly scheme: Scheme;
  readonly runs: readonly Run[];
  readonly grossPence: number;
  /** The contingency it was priced at, which its remedies are priced at too. */
  readonly contingencyPercent: number;
  readonly library: Library;
}

/**
 * Says what each finding's remedy would add to the price, VAT included: the scheme is worked and priced
 * once more with the remedy in it. Findings without a priced remedy, or whose remedy is in the scheme
 * already, keep null.
 */
export function withConsequences(findings: readonly Finding[], before: PricedBefore): readonly Finding[] {
  const { house, scheme, library } = before;
  const had = new Set(scheme.remedies.map(remedyKey));
  const known = new Map<string, number>();
  const priceOf = (fix: Remedy): number => {
    const key = remedyKey(fix);
    const found = known.get(key);
    if (found !== undefined) return found;
    const worked = workScheme(house, { ...scheme, remedies: [...scheme.remedies, fix] }, before.runs);
    const pence = grossPenceAt(worked, library, before.contingencyPercent) - before.grossPence;
    known.set(key, pence);
    return pence;
  };
  return findings.map((finding) =>
    finding.fix === null || finding.outcome === 'passes' || had.has(remedyKey(finding.fix))
      ? finding
      : { ...finding, consequencePence: priceOf(finding.fix) },
  );
}
