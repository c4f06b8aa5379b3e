import type { End, Waypoint } from '#model/cable.ts';
import type { Connection } from '#model/scheme.ts';
import type { Network, NetworkEdge, NetworkNode, NodeId } from '../circuit/network.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import { USUAL_CABLE } from '../circuit/usual-cable.ts';
import type { Plan } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import { type FoundChannel, intoFoundChannels } from './found-channels.ts';
import type { FindRun, Mount, RouteRequest } from './route.ts';
import type { LengthAllowances, Run, RunEnd, Segment } from './run.ts';
import { cutsOf } from './run-cuts.ts';
import { runLength } from './run-length.ts';
import { reversedSegments } from './segment.ts';
import { stepsOf } from './steps.ts';
import type { WayTariff } from './way-tariff.ts';

/** What new cables are laid from. */
export interface LayRunsInput {
  readonly plan: Plan;
  readonly network: Network;
  readonly shapes: ReadonlyMap<string, CircuitShape>;
  readonly nodePositions: ReadonlyMap<NodeId, Position>;
  /** The scheme's connections: their runs pinned by hand are kept to. */
  readonly connections: readonly Connection[];
  readonly tariff: WayTariff;
  readonly allowances: LengthAllowances;
  readonly findRun: FindRun;
  /** Channel that is there; absent: none. */
  readonly channels?: readonly FoundChannel[];
}

/**
 * The paths and lengths of all new cables of a network, sorted by edge id.
 *
 * @returns a run without segments and without a length where an end has no position.
 */
export function layRuns(input: LayRunsInput): readonly Run[] {
  const nodes = new Map(input.network.nodes.map((node) => [node.id, node]));
  const edges = newCables(input.network);
  const pins = pinsByCable(input.network, input.connections);
  const circuitsByNode = circuitIdsByNode(input.shapes);
  return edges.map((edge) => {
    const circuitsOf = (id: NodeId) => circuitsByNode.get(id) ?? [];
    const shared = circuitsOf(edge.from).filter((id) => circuitsOf(edge.to).includes(id));
    const either = [...new Set([...circuitsOf(edge.from), ...circuitsOf(edge.to)])].toSorted();
    return layRun(input, {
      edge,
      from: runEnd(input, nodes.get(edge.from), edge.from),
      to: runEnd(input, nodes.get(edge.to), edge.to),
      pin: pins.get(edge.id) ?? null,
      circuitIds: shared.length > 0 ? shared : either,
    });
  });
}

interface ToLay {
  readonly edge: NetworkEdge;
  readonly from: RunEnd;
  readonly to: RunEnd;
  readonly pin: Pin | null;
  readonly circuitIds: readonly string[];
}

/** The new cables of a network, sorted by id. */
const newCables = ({ edges }: Network): readonly NetworkEdge[] =>
  edges
    .filter((edge) => edge.kind === 'cable' && edge.state === 'new' && edge.legId === null)
    .toSorted((a, b) => (a.id < b.id ? -1 : 1));

/** A way pinned by hand; `backwards` when it leads from the cable's `to` to its `from`. */
export interface Pin {
  readonly via: readonly Waypoint[];
  readonly backwards: boolean;
  /** Which of its connection's pinned runs it is. */
  readonly index: number;
}

function layRun(input: LayRunsInput, { edge, from, to, pin, circuitIds }: ToLay): Run {
  const path = pin?.backwards
    ? reversedSegments(pathBetween(input, [to, from], pin))
    : pathBetween(input, [from, to], { via: pin?.via ?? [] });
  const segments = intoFoundChannels(path, input.channels ?? []);
  const cable = edge.cable ?? USUAL_CABLE;
  const cuts = cutsOf(input.plan, segments);
  return {
    id: edge.id,
    connectionId: edge.connectionId,
    legId: null,
    circuitIds,
    from,
    to,
    cable,
    segments,
    ...runLength(segments, [from, to], input.allowances),
    pinned: pin !== null && pin.via.length > 0,
    cuts,
    steps: stepsOf(input.plan, segments, { cuts, cable }),
  };
}

/** What a path is asked for with, whoever asks. */
export type PathInput = Pick<LayRunsInput, 'plan' | 'tariff' | 'findRun'>;

/** The path between two ends of a run, of a known length if told; empty where one of them has no position. */
export function pathBetween(
  { plan, tariff, findRun }: PathInput,
  [from, to]: readonly [RunEnd, RunEnd],
  { via, asFound }: Pick<RouteRequest, 'via' | 'asFound'>,
): readonly Segment[] {
  if (from.position === null || to.position === null) return [];
  const mounts = { fromMount: mountOf(plan, from), toMount: mountOf(plan, to) };
  const known = asFound === undefined ? {} : { asFound };
  return findRun({ plan, from: from.position, to: to.position, via, ...known, ...mounts, tariff }).segments;
}

/** How the accessory at a run's end is mounted; null where nobody said. */
function mountOf(plan: Plan, end: RunEnd): Mount {
  return plan.pointById.get(end.pointId ?? '')?.mount ?? null;
}

function runEnd(input: LayRunsInput, node: NetworkNode | undefined, nodeId: NodeId): RunEnd {
  return runEndOf(input.plan, { node, nodeId, position: input.nodePositions.get(nodeId) ?? null });
}

/** An end of a run by the node that it is at. */
export function runEndOf(
  plan: Plan,
  at: { readonly node: NetworkNode | undefined; readonly nodeId: NodeId; readonly position: Position | null },
): RunEnd {
  const { node, nodeId, position } = at;
  const pointId = node?.pointId ?? null;
  const isJoint = node?.kind === 'joint' || plan.pointById.get(pointId ?? '')?.kind === 'joint';
  const kind = node?.kind === 'origin' ? 'board' : isJoint ? 'joint' : 'accessory';
  return { nodeId, pointId, position, kind };
}

function circuitIdsByNode(shapes: ReadonlyMap<string, CircuitShape>): ReadonlyMap<NodeId, readonly string[]> {
  const byNode = new Map<NodeId, string[]>();
  for (const [circuitId, shape] of [...shapes].toSorted(([a], [b]) => (a < b ? -1 : 1)))
    for (const { nodeId } of shape.places) byNode.set(nodeId, [...(byNode.get(nodeId) ?? []), circuitId]);
  return byNode;
}

/**
 * The pinned way of each new cable that has one, by its id. A pinned run belongs to the cable of its
 * connection with the same two ends, either way round. What a connection brings along (a joint, a unit, a new circuit)
 * cannot be named as an end, so at such a node any end will do, once no other cable fits better. A run that names one end
 * twice says of at least one that it has no name: between a joint and a unit neither has.
 */
export function pinsByCable(network: Network, connections: readonly Connection[]): ReadonlyMap<string, Pin> {
  const edges = newCables(network);
  const nodes = new Map(network.nodes.map((node) => [node.id, node]));
  const pins = new Map<string, Pin>();
  for (const connection of connections) {
    const own = edges.filter((edge) => edge.connectionId === connection.id);
    for (const [index, run] of (connection.runs ?? []).entries()) {
      const fits = own
        .filter((edge) => !pins.has(edge.id))
        .flatMap((edge) => {
          const [from, to] = [nodes.get(edge.from), nodes.get(edge.to)];
          const forwards = fitOf(from, run.from) * fitOf(to, run.to);
          const backwards = fitOf(from, run.to) * fitOf(to, run.from);
          return [
            { edge, fit: forwards, backwards: false },
            { edge, fit: backwards, backwards: true },
          ];
        })
        .filter(({ fit }) => fit > (isSameEnd(run) ? 0 : 1));
      // Out and back between a point and two joints without names fit alike: the one that is told in its own direction is meant.
      const best = fits.toSorted((a, b) => b.fit - a.fit || Number(a.backwards) - Number(b.backwards))[0];
      if (best !== undefined) pins.set(best.edge.id, { via: run.via, backwards: best.backwards, index });
    }
  }
  return pins;
}

const isSameEnd = ({ from, to }: NonNullable<Connection['runs']>[number]): boolean =>
  JSON.stringify(from) === JSON.stringify(to);

/** 2 for the end that a node is, 1 for a node that no end can name, 0 for another place. */
function fitOf(node: NetworkNode | undefined, end: End): 0 | 1 | 2 {
  if (node === undefined) return 0;
  if ('origin' in end) return node.circuitId === end.origin ? 2 : canBeNamed(node) ? 0 : 1;
  if (!canBeNamed(node)) return 1;
  if (node.pointId !== end.point) return 0;
  return end.side === undefined || (end.side === 'load') === (node.kind === 'load-terminals') ? 2 : 0;
}

/** A new circuit's origin comes with its connection, as a joint does. */
function canBeNamed(node: NetworkNode): boolean {
  return node.pointId !== null || (node.circuitId !== null && node.state === 'found');
}
