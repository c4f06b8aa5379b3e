import type { Remedy } from '#model/scheme.ts';
import { remedyKey } from '../../circuit/remedy-key.ts';
import { type Judges, judge, schemeOf } from './gate.ts';
import { housePart } from './house-part.ts';
import { keptCost, kindOfPoint } from './kept-costs.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { endsByCause, type SearchGround } from './search-ground.ts';
import type { SearchSpace } from './search-space.ts';
import { noWorks, type Works } from './works.ts';
import type { Workshop } from './workshop.ts';

/** What one circuit that was there takes as soon as a scheme touches it. */
export interface CircuitCharge {
  readonly circuitId: string;
  /** What isolating, proving, testing and certifying weigh. */
  readonly touched: number;
  /** What the remedies weigh that joining any of `needing` on to it asks for; 0 where none is asked for. */
  readonly remedies: number;
  /** The same, not weighed. */
  readonly works: { readonly touched: Works; readonly remedies: Works };
  /** The wanted points that ask for them, as a mask. */
  readonly needing: number;
}

/**
 * The rules that look at a new point and its circuit alone, whatever way it is joined: what they ask for is certain. They
 * read the wiring and no cable's way, capacity or proof.
 */
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
  const probes = probesOf(space);
  return [...probes.keys()]
    .toSorted()
    .map((circuitId) => chargeOf(shop, { circuitId, probes: probes.get(circuitId) ?? new Map() }, judges));
}

/** The first column that joins one point alone to a circuit, by its mask. */
type Probes = ReadonlyMap<number, SchemeColumn>;

/** The probes of every circuit that any column touches. */
function probesOf({ layers, free }: SearchSpace<SchemeColumn>): ReadonlyMap<string, Probes> {
  const byCircuit = new Map<string, Map<number, SchemeColumn>>();
  for (const columns of [...layers.map((layer) => layer.columns), free])
    for (const column of columns)
      for (const circuitId of column.circuitIds) {
        const own = byCircuit.get(circuitId) ?? new Map<number, SchemeColumn>();
        byCircuit.set(circuitId, own);
        if (!own.has(column.mask)) own.set(column.mask, column);
      }
  return byCircuit;
}

function chargeOf(
  shop: Workshop,
  { circuitId, probes }: { readonly circuitId: string; readonly probes: Probes },
  { rules, proofsFound }: Judges,
): CircuitCharge {
  const { ground, weigh } = shop;
  const certain = { proofsFound, byWiring: true, rules: rules.filter(({ id }) => ofPointAndCircuit.has(id)) };
  let touched = noWorks;
  let remedies = noWorks;
  let needing = 0;
  for (const [i, wanted] of ground.wanted.entries()) {
    const probe = probes.get(1 << i);
    if (probe === undefined) continue;
    touched = keptCost(ground.kept, `touched ${circuitId}`, () => {
      return endsByCause(ground, probe.parts()).get(circuitId) ?? noWorks;
    });
    const name = `remedy ${circuitId} ${kindOfPoint(ground, wanted)}`;
    const remedy = keptCost(ground.kept, name, () => remedyOf(ground, probe, { circuitId, certain }));
    if (remedy.millipence < 0) continue;
    needing |= 1 << i;
    remedies = remedy;
  }
  const works = { touched, remedies };
  return { circuitId, touched: weigh(touched), remedies: weigh(remedies), works, needing };
}

/** What the remedies cost that are sure to be asked for, by their names. */
export function remedyCosts(charges: readonly CircuitCharge[]): ReadonlyMap<string, Works> {
  return new Map(
    charges
      .filter(({ needing }) => needing !== 0)
      .map(({ circuitId, works }) => [remedyKey({ kind: 'rcbo', at: circuitId }), works.remedies]),
  );
}

/** Stands for: no remedy is asked for. */
const NO_REMEDY: Works = { millipence: -1, mess: 0 };

/** What the RCBO takes that joining one point on asks for. */
function remedyOf(
  ground: SearchGround,
  probe: SchemeColumn,
  { circuitId, certain }: { circuitId: string; certain: Judges },
): Works {
  const scheme = schemeOf(ground, 'probe', probe.parts());
  const asksFor = { kind: 'rcbo', at: circuitId } as const;
  // These rules look at the circuit alone, so the part of the house that it is in is enough.
  const house = housePart(ground.house, scheme.connections, [asksFor]);
  const judged = judge({ ...ground, house }, scheme, certain);
  return judged.passes && judged.scheme.remedies.some((each) => isSame(each, asksFor))
    ? judged.remedyWorks
    : NO_REMEDY;
}
