import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import { messPoints } from '../labour/mess.ts';
import { planPurchase } from '../price/buying/plan-purchase.ts';
import { complies } from '../rules/complies.ts';
import type { Rule } from '../rules/rule.ts';
import { runRules } from '../rules/run-rules.ts';
import { withConsequences } from './consequences.ts';
import type { SchemeEstimate } from './estimate-result.ts';
import { factsOf, type Proofs } from './facts-of.ts';
import { openQuestions } from './open-questions.ts';
import { libraryGaps } from './price-list-gaps.ts';
import { priceSchemeWithRange } from './price-scheme-with-range.ts';
import { stalePrices } from './stale-prices.ts';
import { surveyList } from './survey-list.ts';
import { vatCheck } from './vat-check.ts';
import { type House, workScheme } from './work-scheme.ts';

/** What schemes of one house are estimated with. */
export interface ToEstimate {
  readonly house: House;
  readonly proofsFound: Proofs;
  readonly library: Library;
  /** All that is checked, in the order of the printed list. */
  readonly rules: readonly Rule[];
  /** Without the worth of open questions and the pence of remedies; bought for at first sight. */
  readonly isLive: boolean;
  /** The day that the estimate carries, ISO; absent: the age of prices is not looked at. */
  readonly date?: string;
}

/** Works, checks, counts and prices one scheme. */
export function estimateScheme(scheme: Scheme, toEstimate: ToEstimate): SchemeEstimate {
  const { house, library, isLive, proofsFound, rules, date } = toEstimate;
  const worked = workScheme(house, scheme);
  const priced = priceSchemeWithRange({ house, worked, library });
  const { prices } = library;
  const purchase = planPurchase({
    takeoff: priced.takeoff,
    prices,
    stock: house.job.stock,
    depth: isLive ? 'quick' : 'whole',
  });
  const { bill, other } = priced.price;
  const gaps = libraryGaps({ prices, purchase, bill, labour: priced.labour, other });
  const vat = vatCheck(priced.price.vatClaim, priced.price.vatPercent);
  const facts = factsOf(worked, library, proofsFound);
  const aged = date === undefined ? [] : [stalePrices(priced.price.bill, library.prices, date)];
  const findings = runRules(facts, [...rules, gaps, vat, ...aged]);
  const survey = isLive ? [] : surveyList({ house, worked, range: priced.range, library });
  return {
    id: scheme.id,
    name: scheme.name,
    complies: complies(findings),
    totals: priced.price.totals,
    range: priced.range,
    survey,
    openQuestions: openQuestions(survey),
    runs: worked.runs,
    joints: worked.things.joints,
    boxes: worked.things.boxes,
    fusedUnits: worked.things.fusedUnits,
    takeoff: priced.takeoff,
    labour: priced.labour,
    messPoints: messPoints(priced.labour, library.norms),
    price: priced.price,
    purchase,
    proof: [...facts.proofs.values()],
    findings: isLive
      ? findings
      : withConsequences(findings, {
          house,
          scheme,
          runs: worked.runs,
          grossPence: priced.price.totals.grossPence,
          contingencyPercent: priced.price.contingencyPercent,
          library,
        }),
    worked,
  };
}
