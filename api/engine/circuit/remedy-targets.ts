import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Remedy } from '#model/scheme.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import { type Territory, territories } from './circuit-territory.ts';
import type { Network, NetworkNode } from './network.ts';
import { circuitsWithNewWiring } from './touched-circuits.ts';

/** Something that a remedy can be done to. */
export interface RemedyTarget {
  /** A circuit, a board, a point, or a unit that a connection brings along (`<connectionId>/unit`). */
  readonly id: string;
  readonly circuitId: string | null;
  readonly boardId: string | null;
}

/** What a kind of remedy can be done to, the likeliest first: a later group counts only where the one before is empty. */
export type TargetGroups = readonly (readonly RemedyTarget[])[];

/** What remedies of a scheme can be done to in its network. */
export interface RemedyTargets {
  readonly groupsOf: (kind: Remedy['kind']) => TargetGroups;
  /** The circuit of a point by its id; points that go are on none. */
  readonly circuitOfPoint: ReadonlyMap<string, string>;
  /** Circuits whose wiring the scheme changes. */
  readonly touched: ReadonlySet<string>;
}

/** A terminal, its point if it has one, and its circuit. */
interface Spot {
  readonly target: RemedyTarget;
  readonly node: NetworkNode;
  readonly point: Point | null;
  readonly isTouched: boolean;
}

/**
 * The targets of every kind of remedy in a network as proposed. A `bond-upgrade` has none: without a service it
 * means all of them.
 *
 * - Devices of circuits: the circuits found that the scheme changes, else all that were found.
 * - `new-board`: the boards of circuits that it changes, else all.
 * - `rcd-unit`: new fused units, those that a connection brings along among them; else the found ones of
 *   circuits that it changes, else all.
 * - `rcd-outlet`: socket-outlets likewise.
 * - `re-box`: points with an old box to which new cable comes.
 * - `single-to-twin`: single outlets found on circuits that it changes, else all.
 */
export const remedyTargets = rememberedOfTwo(targetsIn);

function targetsIn(job: Job, network: Network): RemedyTargets {
  const shares = territories(job, network);
  const touched = circuitsWithNewWiring(job, network, shares);
  const circuits = circuitSpots(network, touched);
  const spots = pointSpots(job, network, { shares, touched });
  const boardsTouched = new Set(
    circuits.filter(({ isTouched }) => isTouched).map(({ target }) => target.boardId),
  );
  const groupsOf = (kind: Remedy['kind']): TargetGroups => {
    switch (kind) {
      case 'rcbo':
      case 'rcd-enclosure':
      case 'lower-device':
        return touchedFirst(circuits.filter(({ isNew }) => !isNew));
      case 'new-board':
        return boardGroups(job, boardsTouched);
      case 'rcd-unit':
        return newFirst(spots.filter(isFusedUnit));
      case 'rcd-outlet':
        return newFirst(spots.filter(isOutlet));
      case 're-box':
        return [targetsOf(spots.filter((spot) => holdsOldBox(spot) && newCableComes(network, spot)))];
      case 'single-to-twin':
        return touchedFirst(spots.filter(({ point }) => isKept(point) && point?.kind === 'socket-single'));
      case 'bond-upgrade':
        return [];
    }
  };
  const circuitOfPoint = new Map(
    spots.flatMap(({ point, target }) =>
      point && target.circuitId !== null ? [[point.id, target.circuitId] as const] : [],
    ),
  );
  return { groupsOf, circuitOfPoint, touched };
}

interface CircuitSpot {
  readonly target: RemedyTarget;
  readonly isNew: boolean;
  readonly isTouched: boolean;
}

function circuitSpots({ circuits }: Network, touched: ReadonlySet<string>): readonly CircuitSpot[] {
  return circuits.map(({ id, board, isNew }) => ({
    target: { id, circuitId: id, boardId: board?.id ?? null },
    isNew,
    isTouched: touched.has(id),
  }));
}

function pointSpots(
  job: Job,
  { circuits }: Network,
  { shares, touched }: { shares: readonly Territory[]; touched: ReadonlySet<string> },
): readonly Spot[] {
  const boardOf = new Map(circuits.map(({ id, board }) => [id, board?.id ?? null]));
  const pointById = new Map(job.points.map((point) => [point.id, point]));
  return shares.flatMap(({ circuitId, nodes }) =>
    nodes
      .filter(({ kind }) => kind === 'terminals')
      .map((node) => ({
        target: { id: node.id, circuitId, boardId: boardOf.get(circuitId) ?? null },
        node,
        point: pointById.get(node.pointId ?? '') ?? null,
        isTouched: touched.has(circuitId),
      })),
  );
}

function targetsOf(some: readonly { readonly target: RemedyTarget }[]): readonly RemedyTarget[] {
  return some.map(({ target }) => target);
}

function touchedFirst(
  some: readonly { readonly target: RemedyTarget; readonly isTouched: boolean }[],
): TargetGroups {
  return [targetsOf(some.filter(({ isTouched }) => isTouched)), targetsOf(some)];
}

function newFirst(spots: readonly Spot[]): TargetGroups {
  return [
    targetsOf(spots.filter(({ node }) => node.state === 'new')),
    ...touchedFirst(spots.filter(({ node }) => node.state === 'found')),
  ];
}

function boardGroups(job: Job, touched: ReadonlySet<string | null>): TargetGroups {
  const all = job.boards.map(({ id }) => ({ id, circuitId: null, boardId: id }));
  return [all.filter(({ id }) => touched.has(id)), all];
}

/** Units that a connection brings along have no point. */
function isFusedUnit({ point, node }: Spot): boolean {
  return point === null ? node.connectionId !== null : point.kind === 'fused-unit';
}

function isOutlet({ point }: Spot): boolean {
  return point?.kind === 'socket-single' || point?.kind === 'socket-twin';
}

function isKept(point: Point | null): boolean {
  return point?.status === 'existing';
}

function holdsOldBox({ point }: Spot): boolean {
  return isKept(point) || point?.replaces !== undefined;
}

function newCableComes(network: Network, { target }: Spot): boolean {
  const sides = new Set(
    network.edges.flatMap(({ kind, from, to }) => (kind === 'fuse' && from === target.id ? [to] : [])),
  ).add(target.id);
  return network.edges.some(
    ({ kind, state, from, to }) => kind === 'cable' && state === 'new' && (sides.has(from) || sides.has(to)),
  );
}
