import type { Remedy } from '#model/scheme.ts';
import { type Judges, judge, schemeOf } from './gate.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { endsByCause } from './search-ground.ts';
import type { SearchSpace } from './search-space.ts';
import type { Workshop } from './workshop.ts';

/** What one circuit that was there costs as soon as a scheme touches it, thousandths of a penny. */
export interface CircuitCharge {
  readonly circuitId: string;
  /** Isolating, proving, testing, certifying. */
  readonly touched: number;
  /** What the remedies cost that joining any of `needing` on to it asks for; 0 where none is asked for. */
  readonly remedies: number;
  /** The wanted points that ask for them, as a mask. */
  readonly needing: number;
}

/** The rules that look at a new point and its circuit alone, whatever way it is joined: what they ask for is certain. */
const ofPointAndCircuit: ReadonlySet<string> = new Set(['RC1']);

const isSame = (a: Remedy, b: Remedy): boolean => a.kind === b.kind && a.at === b.at;

/**
 * What each circuit charges once. Found by joining each wanted point to it alone, the cheapest way there is, and
 * asking the rules.
 */
export function circuitCharges(
  shop: Workshop,
  space: SearchSpace<SchemeColumn>,
  judges: Judges,
): readonly CircuitCharge[] {
  const columns = [...space.layers.flatMap((layer) => layer.columns), ...space.free];
  const circuitIds = [...new Set(columns.flatMap((column) => column.circuitIds))].toSorted();
  return circuitIds.map((circuitId) => chargeOf(shop, columns, { circuitId, judges }));
}

function chargeOf(
  shop: Workshop,
  columns: readonly SchemeColumn[],
  { circuitId, judges }: { circuitId: string; judges: Judges },
): CircuitCharge {
  const { ground } = shop;
  const certain = { ...judges, rules: judges.rules.filter(({ id }) => ofPointAndCircuit.has(id)) };
  let touched = 0;
  let remedies = 0;
  let needing = 0;
  for (const [i] of ground.wanted.entries()) {
    const probe = columns.find((column) => column.mask === 1 << i && column.circuitIds.includes(circuitId));
    if (probe === undefined) continue;
    touched = endsByCause(ground, probe.parts()).get(circuitId) ?? 0;
    const judged = judge(ground, schemeOf(ground, 'probe', probe.parts()), certain);
    if (
      !judged.passes ||
      !judged.scheme.remedies.some((each) => isSame(each, { kind: 'rcbo', at: circuitId }))
    )
      continue;
    needing |= 1 << i;
    remedies = judged.remedyMillipence;
  }
  return { circuitId, touched, remedies, needing };
}
