import type { Leg } from '#model/installation.ts';
import type { Network, NetworkEdge, NodeId } from '../circuit/network.ts';
import { USUAL_CABLE } from '../circuit/usual-cable.ts';
import { isFollowed } from '../plan/is-followed.ts';
import { isGuess } from '../plan/is-guess.ts';
import type { Plan } from '../plan/plan.ts';
import { inNamedChannel } from './found-channels.ts';
import { pathBetween, runEndOf } from './lay-runs.ts';
import { toldPosition } from './node-positions.ts';
import type { FindRun } from './route.ts';
import type { LengthAllowances, Run, RunEnd, Segment } from './run.ts';
import { endMm, type RunLength, runLength } from './run-length.ts';
import { stepsOf } from './steps.ts';
import type { WayTariff } from './way-tariff.ts';

/** What the paths of cables as found are guessed from. */
export interface FoundRunsInput {
  readonly plan: Plan;
  /** The network as found: its edges say at which nodes the legs end. */
  readonly network: Network;
  readonly legs: readonly Leg[];
  readonly tariff: WayTariff;
  readonly allowances: LengthAllowances;
  readonly findRun: FindRun;
}

/**
 * The likeliest path of every leg, by leg id. Waypoints surveyed are kept to; without them the path is found
 * like a new one's, by a measured length the one that fits it best, and is assumed throughout. A measured length is the run's length, whatever the path comes
 * to, and then has no slack; without one it is the path's with ends and slack.
 *
 * @returns runs without segments where an end has no place; their length is null unless it was measured.
 */
export function foundRuns(input: FoundRunsInput): ReadonlyMap<string, Run> {
  const edges = new Map(input.network.edges.flatMap((edge) => (edge.legId ? [[edge.legId, edge]] : [])));
  const runs = new Map<string, Run>();
  for (const leg of input.legs.toSorted((a, b) => (a.id < b.id ? -1 : 1))) {
    const edge = edges.get(leg.id);
    if (edge !== undefined) runs.set(leg.id, foundRun(input, leg, edge));
  }
  return runs;
}

function foundRun(input: FoundRunsInput, leg: Leg, edge: NetworkEdge): Run {
  const { plan, allowances } = input;
  const [from, to] = [endAt(input, edge.from), endAt(input, edge.to)];
  const via = leg.via ?? [];
  const endsMm = endMm(from.kind, allowances) + endMm(to.kind, allowances);
  const asFound = { knownMm: leg.lengthMm === undefined ? null : leg.lengthMm - endsMm };
  const path = pathBetween(input, [from, to], { via, asFound });
  const isGuessed = !isFollowed(leg);
  const segments = inNamedChannel(leg, isGuessed ? path.map(assumed) : path);
  return {
    id: leg.id,
    connectionId: null,
    legId: leg.id,
    circuitIds: [leg.circuit],
    from,
    to,
    cable: leg.cable ?? USUAL_CABLE,
    segments,
    ...measuredLength(leg, runLength(segments, [from, to], allowances), allowances),
    pinned: via.length > 0,
    cuts: [],
    steps: stepsOf(plan, segments),
  };
}

function assumed(segment: Segment): Segment {
  return { ...segment, certainty: 'assumed' };
}

function endAt(input: FoundRunsInput, nodeId: NodeId): RunEnd {
  const node = input.network.nodes.find((each) => each.id === nodeId);
  const position = node === undefined ? null : toldPosition({ ...input, foundRuns: new Map() }, node);
  return runEndOf(input.plan, { node, nodeId, position });
}

function measuredLength(leg: Leg, byRoute: RunLength, allowances: LengthAllowances): RunLength {
  const { lengthMm } = leg;
  if (lengthMm === undefined) return byRoute;
  const isGuessed = isGuess(leg.certainty?.length ?? leg.certainty?.lengthMm);
  const doubtMm = isGuessed ? (lengthMm * allowances.assumedPercent) / 100 : 0;
  return { ...byRoute, slackMm: 0, lengthMm, lowMm: lengthMm - doubtMm, highMm: lengthMm + doubtMm };
}
