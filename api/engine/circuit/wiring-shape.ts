import type { Job } from '#model/job.ts';
import { bridgeIds } from './bridges.ts';
import type { Territory } from './circuit-territory.ts';
import type { Network, NetworkCircuit, NetworkEdge, NodeId } from './network.ts';
import { type Links, linksOf, reachedFrom } from './network-graph.ts';
import type { CircuitShapeName } from './shape.ts';

/** A circuit's wiring with its shape: what is reached from the origin before any fuse, and what of it is on cycles. */
export interface ShapedWiring {
  readonly shape: CircuitShapeName;
  readonly claimed: 'ring' | 'radial' | null;
  /** All cables of the circuit. */
  readonly cables: Links;
  readonly fuses: Links;
  readonly unfused: ReadonlySet<NodeId>;
  /** The origin and what stays joined to it when any one cable is cut; the ring, if there is one. */
  readonly core: ReadonlySet<NodeId>;
  /** The cables of the core. */
  readonly coreCables: readonly NetworkEdge[];
}

/** Works out what shape a circuit has from its cables; fuses part it from what lies behind them. */
export function shapedWiring(
  job: Job,
  network: Network,
  { circuit, territory }: { circuit: NetworkCircuit; territory: Territory },
): ShapedWiring {
  const ids = territory.nodes.map(({ id }) => id);
  const cables = linksOf(ids, territory.cables);
  const fuses = linksOf(ids, territory.fuses);
  const unfused = reachedFrom([circuit.id], cables);
  const bridges = bridgeIds(cables);
  const core = reachedFrom([circuit.id], cables, ({ edge }) => !bridges.has(edge.id));
  const coreCables = territory.cables.filter(
    ({ id, from, to }) => core.has(from) && core.has(to) && !bridges.has(id),
  );
  const cablesReached = territory.cables.filter(({ from }) => unfused.has(from)).length;
  const cycles = cablesReached - unfused.size + 1;
  const isFuseBridged = territory.fuses.some(({ from, to }) => unfused.has(from) && unfused.has(to));
  const claimed = circuit.circuit?.shape ?? null;
  const shape = ((): CircuitShapeName => {
    if (territory.joinedTo.length > 0 || cycles > 1 || isFuseBridged) return 'interconnected';
    if (cycles === 1) return coreCables.length > 0 ? 'ring' : 'lollipop';
    return shapeWithoutCycle(job, network, circuit);
  })();
  return { shape, claimed, cables, fuses, unfused, core, coreCables };
}

/**
 * A tree of cable: what the survey claims, and how many ends it found at the board, tell a broken ring from
 * a radial. A claimed radial may have two cables at the board, unless they are told to be ends A and B.
 */
function shapeWithoutCycle(job: Job, network: Network, circuit: NetworkCircuit): CircuitShapeName {
  if (circuit.isNew) return 'radial';
  const legs = job.legs.filter((leg) => leg.circuit === circuit.id);
  const ends = legs
    .flatMap(({ from, to }) => [from, to])
    .flatMap((end) => ('origin' in end && end.origin === circuit.id ? [end.end ?? null] : []));
  if (ends.length === 0) return 'unknown';
  const claimed = circuit.circuit?.shape;
  const isToldRing = ends.includes('A') && ends.includes('B');
  if (claimed === 'radial' && !isToldRing) return 'radial';
  if ((network.unwired.get(circuit.id) ?? []).length > 0) return 'unknown';
  return claimed === 'ring' || isToldRing || ends.length > 1 ? 'broken-ring' : 'radial';
}

/** Whether what hangs from the circuit's main way counts as unfused spurs, as on a ring, rather than branches. */
export function hasSpurs({ shape, claimed, core }: ShapedWiring): boolean {
  if (shape === 'ring' || shape === 'broken-ring' || claimed === 'ring') return true;
  return shape === 'interconnected' && core.size > 1;
}
