import type { NetworkEdge } from '../circuit/network.ts';
import { RING_CABLE_A } from '../circuit/ring-cable-limits.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import { remembered } from '../plan/remembered.ts';
import type { Segment } from '../ways/run.ts';
import type { Facts } from './facts.ts';
import { type InstalledCapacity, installedCapacity } from './installed-capacity.ts';

/** A cable of the ring, with what it carries as installed. */
export interface LegTogether {
  readonly edge: NetworkEdge;
  readonly installed: InstalledCapacity;
}

/** Two or more cables of one ring in one tube or channel. */
export interface LegsTogether {
  /** What the tube or channel is called in the job. */
  readonly bundle: string;
  /** In the order of the ring. */
  readonly legs: readonly LegTogether[];
  /** How far they lie together at the most, mm: the shortest of their stretches there. */
  readonly lengthMm: number;
}

const isEnclosed = ({ medium, containment }: Segment): boolean =>
  medium === 'surface-channel' ||
  containment === 'channel' ||
  containment === 'oval' ||
  containment === 'conduit';

/** Metres by tube or channel of one cable, as far as its way is told. */
function enclosedMm(facts: Facts, { id, legId }: NetworkEdge): ReadonlyMap<string, number> {
  const run = facts.runs.find((each) => each.id === id) ?? facts.foundRuns.get(legId ?? '');
  const lengths = new Map<string, number>();
  for (const segment of run?.segments ?? [])
    if (segment.bundle !== null && isEnclosed(segment))
      lengths.set(segment.bundle, (lengths.get(segment.bundle) ?? 0) + segment.lengthMm);
  return lengths;
}

/** The tubes and channels in which cables of one ring lie together, by circuit; parts of one leg count as one cable. */
export const ringLegsTogether = remembered(
  (facts: Facts): ReadonlyMap<string, readonly LegsTogether[]> =>
    new Map([...facts.shapes.values()].map((shape) => [shape.circuitId, togetherIn(facts, shape)])),
);

function togetherIn(facts: Facts, { ringEdges }: CircuitShape): readonly LegsTogether[] {
  const inside = new Map<string, Map<string, { edge: NetworkEdge; lengthMm: number }>>();
  for (const edge of ringEdges) {
    if (edge.kind !== 'cable') continue;
    for (const [bundle, lengthMm] of enclosedMm(facts, edge)) {
      const cables = inside.get(bundle) ?? new Map<string, { edge: NetworkEdge; lengthMm: number }>();
      inside.set(bundle, cables);
      const cable = edge.legId ?? edge.id;
      if (!cables.has(cable)) cables.set(cable, { edge, lengthMm });
    }
  }
  return [...inside]
    .filter(([, cables]) => cables.size > 1)
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([bundle, cables]) => ({
      bundle,
      lengthMm: Math.min(...[...cables.values()].map(({ lengthMm }) => lengthMm)),
      legs: [...cables.values()].map(({ edge }) => ({
        edge,
        installed: installedCapacity(facts, edge, RING_CABLE_A),
      })),
    }));
}

/** Whether a cable falls short where it lies with others: of two legs in one tube, by the grouping factor. */
export const isShortTogether = ({ installed }: LegTogether): boolean =>
  installed.verdict === 'short' && installed.groupFactor < 1;

/** Edges of a ring that fall short in a tube or channel together with another leg of it. */
export function shortTogether(facts: Facts, circuitId: string): ReadonlySet<string> {
  const together = ringLegsTogether(facts).get(circuitId) ?? [];
  const short = together.filter(({ legs }) => legs.some(isShortTogether));
  return new Set(short.flatMap(({ legs }) => legs.filter(isShortTogether).map(({ edge }) => edge.id)));
}
