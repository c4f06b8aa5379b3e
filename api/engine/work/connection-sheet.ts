import { coreColours, mistaken } from '#data/standards/core-colours.ts';
import { isRcbo } from '../circuit/fitted-device.ts';
import type { NetworkNode } from '../circuit/network.ts';
import { tailedBoxes } from '../connections/box-tails.ts';
import type { Worked } from '../connections/worked.ts';
import { isGuess } from '../plan/is-guess.ts';
import { roomOfPosition } from '../plan/surroundings.ts';
import { exchangesBoard } from '../rules/fitted-devices.ts';
import { appliancePlace } from './appliance-place.ts';
import { type EndsOfPlace, type EndTeller, endsOfPlace, endTeller, inFigures } from './cable-ends.ts';
import type {
  ChangedDevice,
  ConnectionPlace,
  ConnectionSheet,
  Lead,
  TerminalSide,
} from './connection-place.ts';
import type { Core } from './core-colour.ts';
import { leadsOf } from './leads.ts';
import { type PlaceNodes, placesOfNodes } from './place-nodes.ts';
import { type References, referencesOf } from './references.ts';
import { type TerminalsOf, terminalOf } from './terminal-names.ts';

/** What every place is told from. */
interface Telling {
  readonly worked: Worked;
  readonly references: References;
  readonly tell: EndTeller;
  readonly tailed: ReadonlySet<string>;
}

/**
 * How every conductor of the circuits that a scheme touches is connected: which cable, from where, what colour as found and
 * after, to which terminal; what goes; what each terminal and box holds. Every cable of theirs has its two ends in it.
 */
export function connectionSheet(worked: Worked): ConnectionSheet {
  const references = referencesOf(worked);
  const telling: Telling = {
    worked,
    references,
    tell: endTeller(worked, references),
    tailed: tailedBoxes(worked),
  };
  const places = placesOfNodes(worked)
    .map((place) => told(telling, place))
    .flatMap((place) => [place, ...place.leads.flatMap((lead) => appliancePlace(place, lead))]);
  return {
    places: places.toSorted(inWorkingOrder(worked)),
    meetsOldColours: places.some(meetsOldColours),
    colours: coreColours.rows,
    mistaken,
  };
}

const newLives: ReadonlySet<string> = new Set(
  coreColours.rows.flatMap(({ set, line, neutral }) => (set === 'new' ? [line, neutral] : [])),
);

/** A live core at a place worked on that is not of the new colours, or that nobody has seen. */
const meetsOldColours = ({ isWorkedOn, sides, gone }: ConnectionPlace): boolean =>
  isWorkedOn &&
  [...sides.flatMap(({ ends }) => ends), ...gone].some(({ conductors }) =>
    conductors.some(({ core, foundColour }) => core !== 'earth' && !newLives.has(foundColour ?? '')),
  );

function told(telling: Telling, place: PlaceNodes): ConnectionPlace {
  const { worked, references } = telling;
  const ends = endsOfPlace(worked, place, references);
  const kind = kindOf(place);
  const sides = sidesOf(telling, place, { ends, kind });
  const head = place.now[0] ?? place.before[0];
  const accessory = accessoryOf(worked, place, kind);
  const box = worked.things.boxes.find(({ id }) => id === place.id) ?? null;
  const joint = worked.things.joints.find(({ id }) => id === head?.id) ?? null;
  const hasTwoEarths = sides.some(({ ends: here }) =>
    here.some((end) => end.conductors[2]?.terminal === 'E1'),
  );
  const tailTo = telling.tailed.has(place.id) ? (hasTwoEarths ? 'E2' : 'E') : null;
  const goneSide = { kind: 'plain', side: 'only' } as const;
  const gone = ends.gone.map((end) =>
    telling.tell(end, (core) => terminalOf(terminalsOf(worked, kind, end.node, goneSide.side), core, 0)),
  );
  const devices = changedDevices(worked, place);
  const leads: readonly Lead[] = leadsOf(worked, place, tailTo);
  const isWorkedOn =
    gone.length > 0 ||
    sides.some(({ ends: here }) => here.some(({ state }) => state === 'cut-end' || state === 'new')) ||
    accessory?.isNew === true ||
    joint?.state === 'new' ||
    (box !== null && box.action !== 'keep' && box.action !== 'unknown') ||
    devices.length > 0 ||
    isChangedBoard(worked, place);
  return {
    id: place.id,
    mark: markOf(telling, place, head),
    kind,
    accessory,
    ...whereOf(worked, place, head),
    isWorkedOn,
    sides,
    gone,
    leads,
    box,
    joint,
    mixesColours: mixesColours(sides),
    devices,
    buyFor: boardToBuyFor(worked, place, devices),
    fedFrom: null,
    unrecordedCircuits: kind === 'board' ? unrecordedCircuits(worked, place, sides) : [],
  };
}

function kindOf({ id, now, before }: PlaceNodes): ConnectionPlace['kind'] {
  if (id.startsWith('board/')) return 'board';
  if (id.endsWith('/joined')) return 'old-box';
  const nodes = now.length > 0 ? now : before;
  if (nodes.some(({ kind }) => kind === 'joint')) return 'joint';
  return nodes.some(({ id: node }) => node.endsWith('/load')) ? 'fused-unit' : 'accessory';
}

function sidesOf(
  { worked, tell }: Telling,
  { now }: PlaceNodes,
  { ends, kind }: { readonly ends: EndsOfPlace; readonly kind: ConnectionPlace['kind'] },
): readonly TerminalSide[] {
  const isParted = now.some((node) => node.kind === 'load-terminals');
  let turn = 0;
  return [...now.filter(isSupply), ...now.filter((node) => !isSupply(node))].map((node) => {
    const side = isParted ? (isSupply(node) ? 'supply' : 'load') : 'only';
    const terminals = terminalsOf(worked, kind, node, side);
    const fuse = worked.proposed.edges.find((edge) => edge.kind === 'fuse' && edge.to === node.id);
    const unit = worked.things.fusedUnits.find(({ loadNode }) => loadNode === node.id);
    return {
      nodeId: node.id,
      side,
      ends: (ends.byNode.get(node.id) ?? []).map((end) => {
        const at = turn;
        turn += 1;
        return tell(end, (core: Core) => terminalOf(terminals, core, at));
      }),
      fill: worked.things.terminals.find(({ nodeId }) => nodeId === node.id) ?? null,
      ...(fuse === undefined ? {} : { fuse: { ratingA: unit?.fuseA ?? fuse.fuseA } }),
    };
  });
}

const isSupply = ({ kind }: NetworkNode): boolean => kind !== 'load-terminals';

function terminalsOf(
  { proposed, job }: Worked,
  kind: ConnectionPlace['kind'],
  node: NetworkNode,
  side: TerminalSide['side'],
): TerminalsOf {
  if (node.kind === 'origin') {
    const device = proposed.circuits.find(({ id }) => id === node.circuitId)?.device ?? null;
    return { kind: device !== null && isRcbo(device) ? 'rcbo' : 'device', side };
  }
  if (kind === 'joint' || kind === 'old-box' || node.kind === 'joint') return { kind: 'joint', side };
  const stands = job.points.find(({ id }) => id === node.pointId)?.kind ?? 'fused-unit';
  if (stands === 'dp-switch' || stands === 'cooker-control') return { kind: 'two-sided', side };
  const hasTwo = stands === 'socket-twin' || stands === 'socket-single' || stands === 'fused-unit';
  return { kind: hasTwo ? 'two-earths' : 'plain', side };
}

function accessoryOf(
  { job, things }: Worked,
  { id, now }: PlaceNodes,
  kind: ConnectionPlace['kind'],
): ConnectionPlace['accessory'] {
  const fitted = things.accessories.find((accessory) => accessory.id === id);
  if (fitted !== undefined) return { kind: fitted.kind, features: fitted.features, isNew: true };
  if (kind === 'joint' || kind === 'board' || now.length === 0) return null;
  const point = job.points.find((each) => each.id === id);
  return point === undefined ? null : { kind: point.kind, features: point.features, isNew: false };
}

function markOf({ references, worked }: Telling, { id }: PlaceNodes, head: NetworkNode | undefined): string {
  const old = id.endsWith('/joined')
    ? worked.job.points.find((point) => point.id === head?.pointId)
    : undefined;
  return old?.label ?? references.place(head?.id ?? id);
}

function whereOf(
  { plan, things }: Worked,
  { id }: PlaceNodes,
  head: NetworkNode | undefined,
): Pick<ConnectionPlace, 'storeyId' | 'room' | 'heightMm'> {
  const position =
    plan.positionOfBoard.get(id.replace(/^board\//, '')) ??
    plan.positionOfPoint.get(head?.pointId ?? id) ??
    things.joints.find((joint) => joint.id === head?.id)?.position ??
    things.fusedUnits.find((unit) => unit.id === id)?.position;
  const room = roomOfPosition(plan, position)?.room.name ?? null;
  const isInVoid = head?.kind === 'joint';
  return {
    storeyId: position?.storeyId ?? null,
    room,
    heightMm: isInVoid ? null : (position?.heightMm ?? null),
  };
}

/** Whether the board is exchanged, or an RCD put before a circuit of it. */
function isChangedBoard({ scheme, job }: Worked, { id, now }: PlaceNodes): boolean {
  if (!id.startsWith('board/')) return false;
  const boardId = id.slice('board/'.length);
  const circuitIds = now.map((node) => node.circuitId);
  return (scheme?.remedies ?? []).some(
    ({ kind, at }) =>
      (kind === 'new-board' && (at === boardId || job.boards.length === 1)) ||
      (kind === 'rcd-enclosure' && circuitIds.includes(at ?? null)),
  );
}

/** A board whose maker's list decides about a device; null where none comes, or the board itself is exchanged. */
function boardToBuyFor(
  worked: Worked,
  { id }: PlaceNodes,
  devices: readonly ChangedDevice[],
): ConnectionPlace['buyFor'] {
  const board = worked.job.boards.find((each) => id === `board/${each.id}`);
  if (board === undefined || devices.length === 0 || exchangesBoard(worked, board.id)) return null;
  return { make: isGuess(board.certainty?.make) ? null : board.make?.trim() || null };
}

/** The devices of a board that the scheme changes or brings, in the order of its circuits. */
function changedDevices({ found, proposed, job }: Worked, { now }: PlaceNodes): readonly ChangedDevice[] {
  const circuitOf = (network: Worked['found'], id: string) =>
    network.circuits.find((circuit) => circuit.id === id);
  return now.flatMap(({ kind, id }) => {
    const [before, after] = [circuitOf(found, id)?.device ?? null, circuitOf(proposed, id)?.device ?? null];
    if (kind !== 'origin' || before === after) return [];
    const way = job.circuits.find((circuit) => circuit.id === id)?.way?.trim() || null;
    return [{ circuitName: circuitOf(proposed, id)?.name ?? id, way, before, after }];
  });
}

/** Red and black beside brown and blue; null where a colour is not known. */
function mixesColours(sides: readonly TerminalSide[]): boolean | null {
  const lines = sides.flatMap(({ ends }) => ends.map(({ conductors }) => conductors[0]?.foundColour ?? null));
  const known = new Set(lines.filter((colour) => colour !== null));
  if (known.size > 1) return true;
  return lines.includes(null) ? null : false;
}

function unrecordedCircuits(
  { proposed }: Worked,
  { now }: PlaceNodes,
  sides: readonly TerminalSide[],
): readonly string[] {
  const bare = new Set(sides.filter(({ ends }) => ends.length === 0).map(({ nodeId }) => nodeId));
  return now.flatMap(({ id, circuitId }) =>
    bare.has(id) ? [proposed.circuits.find((circuit) => circuit.id === circuitId)?.name ?? id] : [],
  );
}

/** Worked on first; then boards last, storeys from the lowest, rooms by name, marks W2 before W10. */
function inWorkingOrder({ plan }: Worked): (a: ConnectionPlace, b: ConnectionPlace) => number {
  const storeys = new Map(plan.storeys.map(({ storey }, i) => [storey.id, i]));
  const keyOf = (place: ConnectionPlace): readonly (string | number)[] => [
    place.isWorkedOn ? 0 : 1,
    place.kind === 'board' ? 1 : 0,
    storeys.get(place.storeyId ?? '') ?? storeys.size,
    place.room ?? '\uffff',
    inFigures(place.mark),
    place.id,
  ];
  return (a, b) => {
    const [one, other] = [keyOf(a), keyOf(b)];
    const at = one.findIndex((each, i) => each !== other[i]);
    return at < 0 ? 0 : (one[at] ?? '') < (other[at] ?? '') ? -1 : 1;
  };
}
