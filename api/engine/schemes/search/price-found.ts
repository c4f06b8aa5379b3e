import type { Scheme } from '#model/scheme.ts';
import { estimateScheme } from '../estimate-scheme.ts';
import type { OfKind } from './best-of-kinds.ts';
import { restsOn } from './cut-legs.ts';
import type { Disturbance, Fallback, FoundScheme, SearchResult, SearchStep } from './found-schemes.ts';
import type { LookedBy } from './look-by-aim.ts';
import type { Passing } from './passing.ts';
import { penceOf, proofOfPence, proofOfPoints } from './proofs.ts';
import { kindOf, schemeWords } from './scheme-words.ts';
import type { ToSearch } from './search.ts';
import type { SearchGround } from './search-ground.ts';
import type { WithoutGuesses } from './without-guesses.ts';
import { type Works, worksTogether } from './works.ts';

/** All that was looked at and is to be priced. */
export interface Found {
  readonly toSearch: ToSearch;
  readonly ground: SearchGround;
  /** By money and by disturbance; null where that was not asked for. */
  readonly pence: LookedBy | null;
  readonly mess: LookedBy | null;
  /** Those that disturb least by the whole of their work, and those in between. */
  readonly calm: readonly Passing[];
  readonly between: readonly Passing[];
  readonly ofKinds: readonly OfKind[];
  /** Where the best by money or by disturbance rests on legs whose way is only assumed, the best without; else null. */
  readonly sure: { readonly pence: WithoutGuesses | null; readonly mess: WithoutGuesses | null };
  /** How many of the cheapest are wanted. */
  readonly most: number;
  /** What is locked takes. */
  readonly offset: Works;
}

interface Priced {
  readonly name: string;
  readonly found: FoundScheme;
}

/** Prices what was found in full, each scheme once whatever found it, and gives the answer: a step a scheme. */
export function* priceFound(found: Found): Generator<SearchStep, SearchResult> {
  const { pence, mess, ofKinds, sure, offset } = found;
  const priced: Priced[] = [];
  for (const [name, passing] of schemesOnce(found)) {
    const scheme = foundScheme(found, passing);
    priced.push({ name, found: scheme });
    yield { step: 'priced', found: scheme };
  }
  const ordered = priced
    .toSorted((a, b) => inOrder(a.found, b.found))
    .map(({ name, found: scheme }, i) => ({ name, scheme: withId(scheme, `found/${i + 1}`) }));
  const idOf = (passing: Passing): string | null =>
    ordered.find(({ name }) => name === nameOf(passing))?.scheme.scheme.id ?? null;
  const schemes = ordered.map(({ scheme }) => scheme);
  const none = { optimal: false, boundPence: 0, gap: null };
  return {
    ...(pence === null ? none : proofOfPence(pence.looked, offset.millipence)),
    examined: (pence?.looked.examined ?? 0) + ofKinds.reduce((sum, { examined }) => sum + examined, 0),
    fallback: fallbackOf(sure.pence, idOf),
    disturbance:
      mess === null
        ? null
        : { ...disturbanceOf(mess, schemes, offset), fallback: fallbackOf(sure.mess, idOf) },
    schemes,
    bestOfKind: ofKinds.map(({ kind, best, why, reason, examined, bound }) => ({
      kind,
      schemeId: best === null ? null : idOf(best),
      ...{ why, reason, examined },
      boundPence: bound === null ? null : Math.round((bound + offset.millipence) / 1000),
    })),
    leftOut: (pence ?? mess)?.leftOut ?? [],
  };
}

/** Every scheme to be priced by its name, what is the same only once, in the order in which they were looked for. */
function schemesOnce({ pence, calm, between, ofKinds, sure, most }: Found): ReadonlyMap<string, Passing> {
  const all = [
    ...(pence?.looked.passing.slice(0, most) ?? []),
    ...ofKinds.flatMap(({ best }) => best ?? []),
    ...calm,
    ...between,
    ...[sure.pence, sure.mess].flatMap((without) => without?.best ?? []),
  ];
  const once = new Map<string, Passing>();
  for (const passing of all) if (!once.has(nameOf(passing))) once.set(nameOf(passing), passing);
  return once;
}

/** What a scheme does, whatever found it. */
const nameOf = ({ scheme: { connections, remedies } }: Passing): string =>
  JSON.stringify([connections, remedies]);

/** By the full price; of those alike by what they cost to do, then by what they disturb. */
const inOrder = (a: FoundScheme, b: FoundScheme): number =>
  a.estimate.totals.grossPence - b.estimate.totals.grossPence ||
  a.worksPence - b.worksPence ||
  a.worksPoints - b.worksPoints;

function fallbackOf(
  without: WithoutGuesses | null,
  idOf: (passing: Passing) => string | null,
): Fallback | null {
  if (without === null) return null;
  return { schemeId: without.best === null ? null : idOf(without.best), optimal: without.optimal };
}

/** How little can be disturbed: by the search for it, or by a scheme that the search for money found. */
function disturbanceOf(
  { looked }: LookedBy,
  schemes: readonly FoundScheme[],
  offset: Works,
): Omit<Disturbance, 'fallback'> {
  const least = schemes.reduce<FoundScheme | null>(
    (best, one) =>
      best === null ||
      one.worksPoints < best.worksPoints ||
      (one.worksPoints === best.worksPoints && one.worksPence < best.worksPence)
        ? one
        : best,
    null,
  );
  return {
    ...proofOfPoints(looked, offset.mess, least?.worksPoints ?? null),
    examined: looked.examined,
    schemeId: least?.scheme.id ?? null,
  };
}

function foundScheme({ toSearch, ground, offset }: Found, passing: Passing): FoundScheme {
  const { columns, scheme, works } = passing;
  const named: Scheme = { ...scheme, name: schemeWords(ground.house.job, scheme.connections) };
  const whole = worksTogether([works, offset]);
  return {
    scheme: named,
    kind: kindOf(columns),
    worksPence: penceOf(whole),
    worksPoints: whole.mess,
    restsOn: restsOn(ground.house.job, scheme.connections),
    estimate: estimateScheme(named, { ...toSearch, isLive: true }),
  };
}

function withId(found: FoundScheme, id: string): FoundScheme {
  const { worked } = found.estimate;
  const scheme = { ...found.scheme, id };
  return {
    ...found,
    scheme,
    estimate: {
      ...found.estimate,
      id,
      worked: { ...worked, scheme: worked.scheme === null ? null : { ...worked.scheme, id } },
    },
  };
}
