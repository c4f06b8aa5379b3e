import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import type { SearchResult } from '#engine/schemes/search/found-schemes.ts';
import type { SearchOptions } from '#engine/schemes/search/search.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { worksApart, worksOfScheme } from '#engine/schemes/search/works-of-scheme.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import {
  type Force,
  forceOf,
  isLookedFor,
  joiningsIn,
  schemeOf,
  schemesBelow,
  together,
} from './brute-force.ts';
import type { Joining } from './joinings.ts';
import { numbersOf } from './random-house.ts';
import type { VariedHouse } from './varied-house.ts';
import { groupingsOf } from './written-down.ts';

/** The demo library: prices and minutes that are invented, but of the usual size. */
export const library = demoLibrary();

/** Legs are cut a metre apart, as the search says that it does. */
const APART_MM = 1000;

/** What the search found in a house, and everything that can be written down against it. */
export interface BruteTrial {
  readonly force: Force;
  readonly found: SearchResult;
  /** What a finished scheme costs, thousandths of a penny. */
  readonly priceOf: (scheme: Scheme) => number;
}

/** Searches a house, and gets everything ready to try it by force. */
export function bruteTrial(
  { job, allowAssumedLegs }: VariedHouse,
  options: SearchOptions = {},
  apartMm = APART_MM,
): BruteTrial {
  const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
  const ground = searchGround(house, library, { ways: waysInHouse(house, library), allowAssumedLegs });
  const priceOf = (scheme: Scheme): number => worksOfScheme(ground, scheme).millipence;
  const apartOf = (scheme: Scheme): number => worksApart(ground, scheme).millipence;
  const force = forceOf({ house, library, allowed: allowAssumedLegs, apartMm, priceOf, apartOf });
  const found = findSchemes(job, library, {
    ...{ aim: 'pence', most: 1, kinds: false },
    ...options,
    allowAssumedLegs,
  });
  return { force, found, priceOf };
}

/** The found scheme of the least works cost, with that; null where nothing was found. */
export function leastFound({ found, priceOf }: BruteTrial) {
  const [best] = found.schemes.toSorted((a, b) => a.worksPence - b.worksPence);
  return best === undefined ? null : { scheme: best.scheme, millipence: priceOf(best.scheme) };
}

/** A scheme that passes, tried by force. */
export interface Cheaper {
  readonly connections: readonly Connection[];
  readonly millipence: number;
}

/** Every scheme below a limit that passes all rules; what each part fails alone it is passed over for. */
export function passingBelow({ force, priceOf }: BruteTrial, limit: number): readonly Cheaper[] {
  return [...schemesBelow(force, limit)].flatMap(({ joinings, remedies }): readonly Cheaper[] => {
    const drafts = joinings.flatMap((joining) => joining.drafts());
    // Where two parts share a place, the whole may cost more than its parts: a box that a third cable is too much for.
    if (priceOf(schemeOf(drafts, remedies)) >= limit) return [];
    const verdict = force.judge(drafts, false, remedies);
    if (verdict === null) return [];
    const scheme = schemeOf(drafts, verdict.remedies);
    const millipence = priceOf(scheme);
    return millipence < limit ? [{ connections: scheme.connections, millipence }] : [];
  });
}

/** A force with some of its joinings alone. */
export const only = (force: Force, isIn: (joining: Joining) => boolean): Force => ({
  ...force,
  joinings: new Map([...force.joinings].map(([mask, list]) => [mask, list.filter(isIn)])),
});

/** So many schemes at random out of all that could be put together, whatever they cost or break. */
export function randomSchemes(force: Force, seed: number, count: number): readonly (readonly Joining[])[] {
  const next = numbersOf(seed);
  const one = <T>(list: readonly T[]): T | undefined => list[Math.floor(next() * list.length)];
  const wanted = force.trial.house.job.points.filter(({ status }) => status === 'wanted').length;
  const groupings = groupingsOf(2 ** wanted - 1);
  return Array.from({ length: count }, () =>
    (one(groupings) ?? []).flatMap((mask) => one(force.joinings.get(mask) ?? []) ?? []),
  ).filter(
    (joinings) =>
      joinings.reduce((sum, { mask }) => sum | mask, 0) === 2 ** wanted - 1 && isLookedFor(force, joinings),
  );
}

/** What was there and what a joining touches of it: points, legs, origins. */
function touchedBy(force: Force, joining: Joining): ReadonlySet<string> {
  const { job } = force.trial.house;
  const there = new Set([
    ...job.points.flatMap(({ id, status }) => (status === 'existing' ? [id] : [])),
    ...job.legs.map(({ id }) => id),
    ...job.circuits.map(({ id }) => id),
  ]);
  const named = [...JSON.stringify(joining.drafts()).matchAll(/"([^"]+)"/g)].map(([, word]) => word ?? '');
  const legs = job.legs.filter(({ id }) => named.includes(id));
  const ends = legs.flatMap(({ from, to }) =>
    [from, to].map((end) => ('point' in end ? end.point : end.origin)),
  );
  return new Set([...named, ...ends].filter((id) => there.has(id)));
}

/** Whether no two joinings touch the same thing, so that nothing is shared between them but their circuit. */
export function areApart(force: Force, joinings: readonly Joining[]): boolean {
  const touched = joinings.flatMap((joining) => [...touchedBy(force, joining)]);
  return new Set(touched).size === touched.length;
}

/** By how much a scheme's price differs from the sum of its parts, thousandths of a penny; remedies left out. */
export function offParts({ force }: BruteTrial, joinings: readonly Joining[]): number {
  const bare: Force = { ...force, alone: () => null };
  const parts = together(bare, joinings).millipence;
  const saved = joinings.reduce((sum, joining) => sum + (joining.saved ?? 0), 0);
  return force.trial.apartOf(schemeOf(joinings.flatMap((joining) => joining.drafts()))) - parts - saved;
}

/** Half a penny, thousandths: sums are of whole thousandths, and the search says whole pence. */
export const SLIP = 500;

/** What came of a house, for a trial of many. */
export interface JudgedHouse {
  /** In words; none where the search was right. */
  readonly faults: readonly string[];
  /** Works cost of the best, thousandths of a penny; null where nothing passes. */
  readonly least: number | null;
  readonly written: number;
  readonly judged: number;
}

/** Schemes that are tried at random where the search finds none. */
const TRIED_IN_VAIN = 60;

/** Searches a house, tries it by force, and estimates what was found from scratch. */
export function judgedHouse(house: VariedHouse): JudgedHouse {
  const trial = bruteTrial(house, { most: 5 });
  const { force, found } = trial;
  const best = leastFound(trial);
  const faults: string[] = [];
  if (best === null) {
    const passing = randomSchemes(force, 1, TRIED_IN_VAIN).filter(
      (joinings) => force.judge(joinings.flatMap((each) => each.drafts())) !== null,
    );
    if (passing.length > 0) faults.push('nothing found, though some scheme passes');
  } else {
    if (!found.optimal) faults.push('not proved');
    if (joiningsIn(force, best.scheme.connections) === null)
      faults.push(`not written down: ${best.scheme.name}`);
    const [cheaper] = passingBelow(trial, best.millipence - SLIP).toSorted(
      (a, b) => a.millipence - b.millipence,
    );
    if (cheaper !== undefined)
      faults.push(
        `${pounds(cheaper.millipence)} instead of ${pounds(best.millipence)}: ${JSON.stringify(cheaper.connections)}`,
      );
    faults.push(...failsAnew(house, found));
  }
  const written = [...force.joinings.values()].reduce((sum, list) => sum + list.length, 0);
  return { faults, least: best?.millipence ?? null, written, judged: force.counts.judged };
}

const pounds = (millipence: number): string => `£${(millipence / 1e5).toFixed(2)}`;

/** What fails by a found scheme's own doing when it is estimated from scratch, in all depth, or has another price then; in words. */
export function failsAnew({ job }: VariedHouse, { schemes }: SearchResult): readonly string[] {
  const own = schemes.map(({ scheme }) => ({ ...scheme, id: scheme.id.replace('/', '-') }));
  const again = estimate({ ...job, schemes: own }, library, { date: '2026-11-25', revision: 1 });
  const othersPriced = again.schemes.filter(
    ({ totals }, i) => JSON.stringify(totals) !== JSON.stringify(schemes[i]?.estimate.totals),
  );
  const fails = again.schemes.flatMap(({ name, findings }) =>
    findings
      .filter(({ outcome, origin, gates }) => outcome === 'fails' && origin === 'scheme' && gates)
      .map(({ rule, message }) => `${name}: ${rule} ${message}`),
  );
  return [...fails, ...othersPriced.map(({ name }) => `${name}: another price`)];
}
