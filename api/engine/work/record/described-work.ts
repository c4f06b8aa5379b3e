import type { End } from '#model/cable.ts';
import type { PointKind } from '#model/installation.ts';
import type { Connection, Remedy, Tap } from '#model/scheme.ts';
import { territories } from '../../circuit/circuit-territory.ts';
import { openedCircuit } from '../../circuit/opened-circuit.ts';
import type { Worked } from '../../connections/worked.ts';
import { roomOfPosition } from '../../plan/surroundings.ts';
import { serviceWords } from '../../rules/fitted-devices.ts';
import type { References } from '../references.ts';

/** What stands at a point, within a sentence. */
export const accessoryNames: Readonly<Record<PointKind, string>> = {
  'socket-twin': 'twin socket-outlet',
  'socket-single': 'single socket-outlet',
  'fused-unit': 'fused connection unit',
  'flex-outlet': 'flex outlet',
  'dp-switch': 'double-pole switch',
  'cooker-control': 'cooker control unit',
  grid: 'grid switches',
  shaver: 'shaver supply unit',
  joint: 'joint',
  blank: 'blank plate',
  other: 'other accessory',
};

interface Describing {
  readonly worked: Worked;
  readonly references: References;
}

/**
 * The work on one circuit in the words of a certificate, a sentence each: what is joined and how, what is fitted, what goes.
 *
 * @returns none where the scheme does nothing to it.
 */
export function describedWork(worked: Worked, references: References, circuitId: string): readonly string[] {
  const { scheme, job } = worked;
  if (scheme === null) return [];
  const own = new Set(
    territories(job, worked.proposed)
      .find((each) => each.circuitId === circuitId)
      ?.nodes.map(({ id }) => id),
  );
  const describing = { worked, references };
  const isOwn = (id: string): boolean => id === circuitId || own.has(id);
  return [
    ...scheme.connections
      .filter((connection) => placesOf(connection).some(isOwn))
      .map((connection) => connectionSaid(connection, describing)),
    ...scheme.remedies
      .filter((remedy) => isRemedyOf(remedy, worked, { circuitId, isOwn }))
      .map((remedy) => remedySaid(remedy, describing)),
    ...job.points
      .filter(({ status, circuit }) => status === 'removed' && circuit === circuitId)
      .map(({ label, kind }) => `${label}: ${accessoryNames[kind]} removed.`),
  ];
}

/** Nodes by which a connection is told to be of a circuit: what it brings, and what it feeds. */
function placesOf(connection: Connection): readonly string[] {
  const { id } = connection;
  switch (connection.kind) {
    case 'spur':
      return [connection.to];
    case 'fused-spur':
    case 'fuse-down':
      return [
        typeof connection.unit === 'string' ? connection.unit : `${id}/unit`,
        ...connection.feeds.map(({ to }) => to),
      ];
    case 'ring-extension':
      return [connection.circuit, ...connection.through];
    case 'radial':
      return [`${id}/circuit`, ...connection.feeds.map(({ to }) => to)];
    case 'close-spur':
      return [connection.point];
  }
}

function isRemedyOf(
  { kind, at }: Remedy,
  { proposed, circuitIds }: Worked,
  of: { readonly circuitId: string; readonly isOwn: (id: string) => boolean },
): boolean {
  const circuit = proposed.circuits.find(({ id }) => id === of.circuitId);
  // What is done to the installation is told with every circuit; what names nothing is of the first.
  if (kind === 'bond-upgrade') return true;
  if (at === undefined) return circuitIds[0] === of.circuitId;
  return of.isOwn(at) || (circuit?.board?.id === at && circuit !== undefined);
}

/** "W1, twin socket-outlet (Living room)". */
function pointSaid(pointId: string, { worked: { job, plan } }: Describing): string {
  const point = job.points.find(({ id }) => id === pointId);
  if (point === undefined) return pointId;
  const room = roomOfPosition(plan, plan.positionOfPoint.get(pointId))?.room.name;
  const load = point.load?.fixed === true ? ` for the ${point.load.use}` : '';
  return `${point.label}, ${accessoryNames[point.kind]}${load}${room === undefined ? '' : ` (${room})`}`;
}

const pointsSaid = (ids: readonly string[], describing: Describing): string =>
  ids.map((id) => pointSaid(id, describing)).join('; ');

const endSaid = (end: End, { references }: Describing): string =>
  'point' in end ? references.place(end.point) : 'the board';

function tapSaid(tap: Tap, describing: Describing): string {
  const { references } = describing;
  if ('point' in tap) return `from ${references.place(tap.point)}`;
  return 'origin' in tap ? 'from the board' : `from a joint in the cable ${legSaid(tap.leg, describing)}`;
}

function legSaid(legId: string, describing: Describing): string {
  const leg = describing.worked.job.legs.find(({ id }) => id === legId);
  return leg === undefined ? legId : `${endSaid(leg.from, describing)} to ${endSaid(leg.to, describing)}`;
}

/** The unit of a connection: a point, or one that it brings along, by its mark. */
function unitSaid(
  { id, unit }: Extract<Connection, { kind: 'fused-spur' | 'fuse-down' }>,
  describing: Describing,
): string {
  return typeof unit === 'string'
    ? pointSaid(unit, describing)
    : `${describing.references.place(`${id}/unit`)}, fused connection unit`;
}

function connectionSaid(connection: Connection, describing: Describing): string {
  switch (connection.kind) {
    case 'spur':
      return `${pointSaid(connection.to, describing)}: added by an unfused spur ${tapSaid(connection.from, describing)}.`;
    case 'fused-spur': {
      const fed = connection.feeds.map(({ to }) => to);
      const unit = unitSaid(connection, describing);
      const behind = fed.length === 0 ? '' : `, and behind it ${pointsSaid(fed, describing)}`;
      return `${unit}: added by a fused spur ${tapSaid(connection.from, describing)}${behind}.`;
    }
    case 'ring-extension': {
      const [one, other] = connection.between.map((end) => endSaid(end, describing));
      const opened = openedCircuit(describing.worked.foundShapes, connection.circuit);
      return `${opened === 'ring' ? 'Ring' : 'Radial'} opened between ${one} and ${other} and carried on through ${pointsSaid(connection.through, describing)}.`;
    }
    case 'radial': {
      const fed = connection.feeds.map(({ to }) => to);
      return `New radial circuit of ${connection.device.ratingA} A from the board to ${pointsSaid(fed, describing)}.`;
    }
    case 'fuse-down': {
      const fed = connection.feeds.map(({ to }) => to);
      const on = fed.length === 0 ? '' : `, and carried on to ${pointsSaid(fed, describing)}`;
      return `Spur ${legSaid(connection.leg, describing)}: ${unitSaid(connection, describing)} put in before its outlets${on}.`;
    }
    case 'close-spur':
      return `Spur to ${pointSaid(connection.point, describing)}: closed into the ring by a new cable to ${legSaid(connection.leg, describing)}.`;
  }
}

function remedySaid({ kind, at }: Remedy, describing: Describing): string {
  const where = at === undefined ? null : whereSaid(at, describing);
  switch (kind) {
    case 'rcbo':
      return 'RCBO fitted in the place of the device found.';
    case 'rcd-enclosure':
      return 'RCD fitted before the circuit in an enclosure of its own.';
    case 'rcd-unit':
      return `Fused connection unit with RCD fitted${where === null ? '' : ` at ${where}`}.`;
    case 'rcd-outlet':
      return `Socket-outlet with RCD fitted${where === null ? '' : ` at ${where}`}.`;
    case 'bond-upgrade':
      return at === undefined ? 'Main bonding renewed.' : `Main bond to ${bondSaid(at)} fitted or renewed.`;
    case 're-box':
      return `Back box exchanged${where === null ? '' : ` at ${where}`}.`;
    case 'single-to-twin':
      return `${where ?? 'A single socket-outlet'}: single socket-outlet exchanged for a twin.`;
    case 'lower-device':
      return 'Device of the circuit exchanged for a smaller one.';
    case 'new-board':
      return 'Consumer unit exchanged; the circuit moved to the new one.';
  }
}

const services = ['water', 'gas', 'oil', 'steel', 'other'] as const;

function bondSaid(at: string): string {
  const service = services.find((each) => each === at);
  return service === undefined ? at : serviceWords(service);
}

const whereSaid = (at: string, { worked, references }: Describing): string =>
  worked.job.boards.find(({ id }) => id === at)?.label ?? references.place(at);
