import { type CircuitFit, isPlaced } from './circuit-fit.ts';
import { NINETEEN_IN_TWENTY_SPREADS } from './confidence.ts';
import type { FittedPoint } from './fit-circuit.ts';
import type { InferredParent, InferredPoint } from './inferred-circuit.ts';
import { pointWords, type UntoldPoint } from './point-words.ts';
import { type LikelyParent, spurParents } from './spur-parents.ts';

/** Less lopsided than this, nothing is said of ring or spur. */
const UNDECIDED = 0.6;
/** Less likely a spur than this, none is spoken of. */
const BEYOND_DOUBT = 0.02;
/** Smaller poor contacts are none to speak of, mΩ. */
const LEAST_CONTACT_MILLIOHM = 5;

/** Every point of a circuit as its readings place it: by fraction from end A, then by spur length, then by id. */
export function inferredPoints(fit: CircuitFit, labelOf: (id: string) => string): readonly InferredPoint[] {
  const spurs = fit.fitted.points.flatMap(({ point, placed, spurConfidence }) =>
    placed === null || spurConfidence === null || roleOf(spurConfidence) === 'ring'
      ? []
      : [{ point: point.id, placed, confidence: spurConfidence }],
  );
  const inOrder = fit.fitted.points
    .filter(isPlaced)
    .toSorted((a, b) => a.placed.fraction - b.placed.fraction);
  const parents = spurParents(spurs, inOrder);
  return fit.fitted.points
    .map((point) => told(fit, point, { labelOf, parents: parents.get(point.point.id) ?? [] }))
    .toSorted(byPlace);
}

function byPlace(a: InferredPoint, b: InferredPoint): number {
  const last = Number.POSITIVE_INFINITY;
  return (
    compare(a.fraction ?? last, b.fraction ?? last) ||
    compare(a.spurMm ?? 0, b.spurMm ?? 0) ||
    (a.point < b.point ? -1 : 1)
  );
}

const compare = (a: number, b: number): number => (a === b ? 0 : a - b);

function told(
  fit: CircuitFit,
  fitted: FittedPoint,
  {
    labelOf,
    parents,
  }: { readonly labelOf: (id: string) => string; readonly parents: readonly LikelyParent[] },
): InferredPoint {
  const { lengthMm } = fit.loop;
  const { placed, spur, spurConfidence, isRead, point } = fitted;
  const role = roleOf(spurConfidence);
  const along = (fraction: number | null): number | null =>
    fraction === null || lengthMm === null ? null : fraction * lengthMm;
  const mayBeSpur = spurConfidence !== null && spurConfidence > BEYOND_DOUBT;
  const isCounted = (point.asFound?.cablesSeen ?? 0) > 0;
  const plusMinus = placed === null ? null : NINETEEN_IN_TWENTY_SPREADS * placed.spread;
  const untold: UntoldPoint = {
    point: point.id,
    fraction: placed?.fraction ?? null,
    fractionPlusMinus: plusMinus,
    alongMm: along(placed?.fraction ?? null),
    alongPlusMinusMm: along(plusMinus),
    role,
    by: isRead ? (isCounted ? 'both' : 'readings') : isCounted ? 'cables' : null,
    spurConfidence,
    spurMm: mayBeSpur && spur !== null ? along(spur.fraction) : null,
    spurPlusMinusMm: mayBeSpur && spur !== null ? along(NINETEEN_IN_TWENTY_SPREADS * spur.spread) : null,
    contactMilliohm: mayBeSpur ? contactOf(fit, fitted) : null,
    parents: parents.map((parent) => parentTold(parent, labelOf)),
  };
  const confidence = spurConfidence === null ? 0 : Math.max(spurConfidence, 1 - spurConfidence);
  return { ...untold, confidence, words: pointWords(untold, labelOf) };
}

function roleOf(spurConfidence: number | null): InferredPoint['role'] {
  if (spurConfidence === null) return 'cannot-say';
  if (spurConfidence >= UNDECIDED) return 'spur';
  return spurConfidence <= 1 - UNDECIDED ? 'ring' : 'cannot-say';
}

/** What at the link reads the same as the spur, on the loop that tells most. */
function contactOf({ fitted }: CircuitFit, { spur }: FittedPoint): number | null {
  const linked = fitted.channels.find(({ how }) => how === 'linked');
  if (spur === null || linked === undefined) return null;
  const milliohm = Math.round((spur.fraction * linked.totalOhm * 1000) / 5) * 5;
  return milliohm < LEAST_CONTACT_MILLIOHM ? null : milliohm;
}

function parentTold({ place, confidence }: LikelyParent, labelOf: (id: string) => string): InferredParent {
  if (place.kind === 'point')
    return { point: place.point, between: null, confidence, words: `From ${labelOf(place.point)}.` };
  const { before, after } = place;
  const name = (id: string | null): string => (id === null ? 'the board' : labelOf(id));
  return {
    point: null,
    between: { before, after },
    confidence,
    words: `By a joint between ${name(before)} and ${name(after)}.`,
  };
}
