import type { Point } from '#model/installation.ts';
import type { Library } from '#model/library.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { circuitShapes } from '../../circuit/circuit-shapes.ts';
import { inIdOrder } from '../../circuit/id-order.ts';
import type { Network, NetworkNode } from '../../circuit/network.ts';
import { connectedNetwork } from '../../circuit/proposed-network.ts';
import type { CircuitShape } from '../../circuit/shape.ts';
import { positionInLeg } from '../../ways/position-in-leg.ts';
import type { WayEnd, WaysOfHouse } from '../../ways/way-cost.ts';
import { type House, workScheme } from '../work-scheme.ts';
import { housePart } from './house-part.ts';
import { type Kept, keptEnd, nothingKept } from './kept-costs.ts';
import { noWorks, type Works, worksLess } from './works.ts';
import { thingsByCause } from './works-cost.ts';

/** A connection before it has an id. */
export type Part = Connection extends infer C ? (C extends Connection ? Omit<C, 'id'> : never) : never;

/** A point that the search joins on. Its place in the list is its bit in a column's mask. */
export interface WantedPoint {
  readonly point: Point;
  readonly end: WayEnd;
  /** A fused unit: only ever the unit of a fused spur. */
  readonly isUnit: boolean;
  /** A unit for one fixed load feeds nothing else. */
  readonly mayFeed: boolean;
}

/** What the search starts from: a house with the connections that a person keeps already made in it. */
export interface SearchGround {
  readonly house: House;
  readonly library: Library;
  readonly ways: WaysOfHouse;
  readonly locked: readonly Connection[];
  /** Legs that may be cut though their way is only assumed. */
  readonly allowAssumedLegs: ReadonlySet<string>;
  readonly network: Network;
  readonly nodeById: ReadonlyMap<string, NetworkNode>;
  readonly shapes: ReadonlyMap<string, CircuitShape>;
  readonly wanted: readonly WantedPoint[];
  /** What is known of the house; grows while columns are made. */
  readonly kept: Kept;
  /** Wanted points without a place: no scheme that is found joins them. */
  readonly unplaced: ReadonlySet<string>;
  /** In plain words. */
  readonly leftOut: readonly string[];
}

/** What a search is asked with beside the house. */
export interface GroundOptions {
  readonly locked?: readonly Connection[];
  readonly allowAssumedLegs?: readonly string[];
  /** Of the same house with the same locked connections, but for where its wanted points are. */
  readonly kept?: Kept;
}

/** The house as the search finds it. Wanted points without a place, and those that others replace, are not searched for. */
export function searchGround(
  house: House,
  library: Library,
  {
    ways,
    locked = [],
    allowAssumedLegs = [],
    kept = nothingKept(),
  }: GroundOptions & { readonly ways: WaysOfHouse },
): SearchGround {
  const network = connectedNetwork(house.job, house.found, locked);
  const open = openPoints(house, network);
  const placed = open.flatMap((point) => wantedPoint(house, point, kept));
  const unplaced = open.filter(({ id }) => !placed.some(({ point }) => point.id === id));
  return {
    house,
    library,
    ways,
    locked,
    allowAssumedLegs: new Set(allowAssumedLegs),
    network,
    nodeById: new Map(network.nodes.map((node) => [node.id, node])),
    shapes: circuitShapes(house.job, network),
    wanted: placed,
    kept,
    unplaced: new Set(unplaced.map(({ id }) => id)),
    leftOut: unplaced.map(({ label }) => `${label} has no place yet, so no way to join it is looked for.`),
  };
}

function openPoints({ job }: House, network: Network): readonly Point[] {
  const joined = new Set(network.edges.flatMap(({ kind, from, to }) => (kind === 'cable' ? [from, to] : [])));
  return job.points
    .filter(({ id, status, replaces }) => status === 'wanted' && replaces === undefined && !joined.has(id))
    .toSorted((a, b) => inIdOrder(a.id, b.id));
}

function wantedPoint({ plan }: House, point: Point, kept: Kept): readonly WantedPoint[] {
  const position = plan.positionOfPoint.get(point.id);
  if (position === undefined) return [];
  const end = keptEnd(kept, { position, mount: point.mount ?? null, kind: 'accessory' });
  const isUnit = point.kind === 'fused-unit';
  return [{ point, end, isUnit, mayFeed: !isUnit || (point.load === undefined && !point.unit?.flexOutlet) }];
}

/** Where a cable to a node ends; null where nobody has told its place. */
export function endOfNode({ house, nodeById, network, kept }: SearchGround, nodeId: string): WayEnd | null {
  const node = nodeById.get(nodeId);
  if (node === undefined) return null;
  if (node.kind === 'origin') {
    const board = network.circuits.find(({ id }) => id === nodeId)?.board?.id ?? '';
    return endOfBoard({ house, kept }, board);
  }
  const point = house.plan.pointById.get(node.pointId ?? '');
  const position =
    house.plan.positionOfPoint.get(point?.id ?? '') ?? house.plan.positionOfPoint.get(point?.replaces ?? '');
  if (point === undefined || position === undefined) return null;
  const kind = point.kind === 'joint' ? 'joint' : 'accessory';
  return keptEnd(kept, { position, mount: point.mount ?? null, kind });
}

/** Where a cable to a board ends; null where it has no place. */
export function endOfBoard(
  { house, kept }: Pick<SearchGround, 'house' | 'kept'>,
  boardId: string,
): WayEnd | null {
  const position = house.plan.positionOfBoard.get(boardId);
  return position === undefined ? null : keptEnd(kept, { position, mount: null, kind: 'board' });
}

/** Where a cable to a joint in a leg ends; null where the leg has no way. */
export function endInLeg({ house, kept }: SearchGround, legId: string, alongMm: number): WayEnd | null {
  const run = house.foundRuns.get(legId);
  const position = run === undefined ? null : positionInLeg(run, alongMm, house.allowances);
  return position === null ? null : keptEnd(kept, { position, mount: null, kind: 'joint' });
}

/** Connections with ids of their own, numbered in their order after what is locked. */
export function withIds(ground: Pick<SearchGround, 'locked'>, parts: readonly Part[]): readonly Connection[] {
  const taken = new Set(ground.locked.map(({ id }) => id));
  let n = 0;
  return parts.map((part): Connection => {
    do n += 1;
    while (taken.has(`way-${n}`));
    return { ...part, id: `way-${n}` };
  });
}

/**
 * What parts of a scheme take at their ends, by cause, over what is locked: worked as a scheme of their own, without
 * cables laid, and read off the same stages that price every scheme.
 */
export function endsByCause(
  ground: Pick<SearchGround, 'house' | 'library' | 'locked'>,
  parts: readonly Part[],
  remedies: readonly Remedy[] = [],
): ReadonlyMap<string, Works> {
  const { house, library, locked } = ground;
  const connections = [...locked, ...withIds(ground, parts)];
  const part = housePart(house, connections, remedies);
  const worksOf = (some: readonly Connection[], fixes: readonly Remedy[]) => {
    const scheme = { id: 'probe', name: '', connections: [...some], remedies: [...fixes], locks: [] };
    return thingsByCause(workScheme(part, scheme, []), library);
  };
  const before = locked.length === 0 ? new Map<string, Works>() : worksOf(locked, []);
  const after = worksOf(connections, remedies);
  return new Map(
    [...after].flatMap(([cause, works]) => {
      const more = worksLess(works, before.get(cause) ?? noWorks);
      return more.millipence === 0 && more.mess === 0 ? [] : [[cause, more] as const];
    }),
  );
}
