import { circuitShapes } from '#engine/circuit/circuit-shapes.ts';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import type { Network } from '#engine/circuit/network.ts';
import { connectedNetwork, proposedNetwork } from '#engine/circuit/proposed-network.ts';
import type { CircuitShape, NodePlace } from '#engine/circuit/shape.ts';
import type { End } from '#model/cable.ts';
import type { Circuit, Leg, Point, Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Scheme } from '#model/scheme.ts';

/** An existing twin socket of circuit `o`, unless said otherwise. */
export function pointOf(id: string, more: Partial<Point> = {}): Point {
  return {
    id,
    label: id,
    status: 'existing',
    circuit: 'o',
    kind: 'socket-twin',
    features: [],
    photos: [],
    ...more,
  };
}

/** A wanted twin socket, unless said otherwise. */
export function wantedOf(id: string, more: Partial<Point> = {}): Point {
  return { id, label: id, status: 'wanted', kind: 'socket-twin', features: [], photos: [], ...more };
}

/** An end in short: `o`, `p`, … are origins by id; `oA` and `oB` its told ends; `U>` a load side, `>U` a supply side. */
export function endOf(short: string, origins: readonly string[] = ['o', 'p']): End {
  const told = /^([op])([AB])$/.exec(short);
  if (told) return { origin: told[1] ?? '', end: told[2] === 'A' ? 'A' : 'B' };
  if (origins.includes(short)) return { origin: short };
  if (short.endsWith('>')) return { point: short.slice(0, -1), side: 'load' };
  if (short.startsWith('>')) return { point: short.slice(1), side: 'supply' };
  return { point: short };
}

/** A leg `from-to`, named so, of circuit `o`. */
export function legOf(short: string, lengthMm?: number, more: Partial<Leg> = {}): Leg {
  const [from = '', to = ''] = short.split('-');
  return {
    id: short.replaceAll('>', ''),
    circuit: 'o',
    from: endOf(from),
    to: endOf(to),
    ...(lengthMm === undefined ? {} : { lengthMm }),
    ...more,
  };
}

/** Legs in a chain: `oA R1 R2 oB`. */
export function chainOf(stops: string, lengthMm?: number): Leg[] {
  const names = stops.split(' ');
  return names.slice(1).map((name, index) => legOf(`${names[index]}-${name}`, lengthMm));
}

interface Parts {
  readonly points: Point[];
  readonly legs: Leg[];
  readonly circuit?: Partial<Circuit>;
  readonly circuits?: Circuit[];
  readonly readings?: Reading[];
  readonly connections?: Connection[];
}

/** A job that holds only wiring: one circuit `o` unless circuits are given. */
export function jobOf({ points, legs, circuit, circuits, readings, connections }: Parts): Job {
  const own: Circuit = { id: 'o', name: 'Ring', board: 'board', use: 'sockets', ...circuit };
  return {
    format: 'ringwright-job',
    version: 1,
    id: 'job-1',
    reference: 'T-1',
    title: 'Test wiring',
    edition: 'BS 7671:2018+A2:2022',
    site: { customer: 'A. Customer', address: [], nation: 'england', premises: 'house' },
    storeys: [],
    supply: { nominalV: 230, bonding: [], otherSources: [] },
    boards: [{ id: 'board', label: 'Board', rcds: [] }],
    circuits: circuits ?? [own],
    points,
    legs,
    readings: readings ?? [],
    answers: [],
    schemes: [schemeOf(connections ?? [])],
    terms: { labour: 'typical', vat: 'standard' },
    stock: [],
    assets: [],
  };
}

/** A scheme of these connections. */
export function schemeOf(connections: Connection[]): Scheme {
  return { id: 'scheme', name: 'Scheme', connections, remedies: [], locks: [] };
}

/** The found ring o–R1–R2–R3–R4–o with spur S1 off R3, each leg 10 m. */
export function smallRing(): { points: Point[]; legs: Leg[] } {
  return {
    points: ['R1', 'R2', 'R3', 'R4', 'S1'].map((id) => pointOf(id)),
    legs: [...chainOf('oA R1 R2 R3 R4 oB', 10_000), legOf('R3-S1', 10_000)],
  };
}

/** The wiring with a scheme carried out. */
export function carriedOut(job: Job, found: Network, { connections, remedies }: Scheme): Network {
  return proposedNetwork(job, connectedNetwork(job, found, connections), remedies);
}

/** The proposed network of a job's first scheme. */
export function proposedOf(job: Job): Network {
  return carriedOut(job, foundNetwork(job), job.schemes[0] ?? schemeOf([]));
}

/** The shape of one circuit, `o` unless said otherwise. */
export function shapeOf(job: Job, network: Network, circuitId = 'o'): CircuitShape {
  const shape = circuitShapes(job, network).get(circuitId);
  if (!shape) throw new Error(`no circuit ${circuitId}`);
  return shape;
}

/** The place of one node. */
export function placeOf(shape: CircuitShape, nodeId: string): NodePlace {
  const place = shape.places.find((each) => each.nodeId === nodeId);
  if (!place) throw new Error(`no place for ${nodeId}`);
  return place;
}

/** Roles of all nodes but the origin, `R1 ring`, sorted by node id. */
export function rolesOf(shape: CircuitShape): string[] {
  return shape.places.filter(({ role }) => role !== 'origin').map(({ nodeId, role }) => `${nodeId} ${role}`);
}

/** Every edge in short: `id: from>to length`. */
export function edgesOf(network: Network): string[] {
  return network.edges.map(({ id, from, to, lengthMm }) => `${id}: ${from}>${to} ${lengthMm ?? '?'}`);
}

/** Every problem in short: `c1 leg-gone L1`. */
export function problemsOf(network: Network): string[] {
  return network.problems.map(({ connectionId, code, subjectId }) => `${connectionId} ${code} ${subjectId}`);
}

/** Every removed stretch in short: `L1 0-500`. */
export function removedOf(network: Network): string[] {
  return network.removed.map(({ legId, fromMm, toMm }) => `${legId} ${fromMm ?? '?'}-${toMm ?? '?'}`);
}
