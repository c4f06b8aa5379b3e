import type { CircuitFit } from './circuit-fit.ts';
import { beforeConfidence, NINETEEN_IN_TWENTY_SPREADS, type Placed } from './confidence.ts';
import type { InferredLeg } from './inferred-circuit.ts';
import { LENGTH_SPREAD } from './loop-totals.ts';

interface Stop {
  /** Null at the board. */
  readonly point: string | null;
  readonly placed: Placed;
}

/** The ring's legs from end A to end B by the readings; none where fewer than one point is placed. */
export function inferredLegs(fit: CircuitFit, labelOf: (id: string) => string): readonly InferredLeg[] {
  if (fit.ring.length === 0) return [];
  const stops: readonly Stop[] = [
    { point: null, placed: { fraction: 0, spread: 0 } },
    ...fit.ring.map(({ point, placed }) => ({ point: point.id, placed })),
    { point: null, placed: { fraction: 1, spread: 0 } },
  ];
  return stops.slice(1).map((to, i) => legBetween(fit, stops[i] ?? to, to, labelOf));
}

function legBetween(
  { loop }: CircuitFit,
  from: Stop,
  to: Stop,
  labelOf: (id: string) => string,
): InferredLeg {
  const fraction = Math.max(0, to.placed.fraction - from.placed.fraction);
  const fractionPlusMinus = NINETEEN_IN_TWENTY_SPREADS * Math.hypot(from.placed.spread, to.placed.spread);
  const lengthMm = loop.lengthMm === null ? null : fraction * loop.lengthMm;
  const plusMinusMm =
    loop.lengthMm === null || lengthMm === null
      ? null
      : Math.hypot(fractionPlusMinus * loop.lengthMm, lengthMm * LENGTH_SPREAD);
  const name = (id: string | null, end: string): string => (id === null ? end : labelOf(id));
  const ends = `${name(from.point, 'end A')} to ${name(to.point, 'end B')}`;
  const long =
    lengthMm === null
      ? `${(fraction * 100).toFixed(1)} % of the loop`
      : `${(lengthMm / 1000).toFixed(1)} m ± ${((plusMinusMm ?? 0) / 1000).toFixed(1)} m`;
  return {
    from: from.point,
    to: to.point,
    fraction,
    fractionPlusMinus,
    lengthMm,
    plusMinusMm,
    confidence: beforeConfidence(from.placed, to.placed),
    words: `${ends}: ${long}.`,
  };
}
