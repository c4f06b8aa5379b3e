import type { Network, NetworkEdge, NetworkNode } from '#engine/circuit/network.ts';
import { fitDevices } from '#engine/circuit/place-remedies.ts';
import type { CircuitShape, NodePlace } from '#engine/circuit/shape.ts';
import type { ThingsInput } from '#engine/connections/wiring-index.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { type PlanPoint, type Position, planPoint } from '#engine/plan/plane.ts';
import type { Run, Segment } from '#engine/ways/run.ts';
import type { Face, Storey, Wall } from '#model/building.ts';
import type { Cable } from '#model/cable.ts';
import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Scheme } from '#model/scheme.ts';

/** Flat twin and earth as rings are wired in. */
export const twinAndEarth: Cable = { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 };

const plastered: Face = { finish: 'plaster', lining: 'none' };
const boarded: Face = { finish: 'plasterboard', lining: 'none' };
const dabbed: Face = { finish: 'plasterboard', lining: 'dot-and-dab' };

function wall(id: string, core: Wall['core'], y: number, face: Face, rest: Partial<Wall> = {}): Wall {
  return {
    id,
    core,
    from: [0, y],
    to: [8000, y],
    thicknessMm: 100,
    external: false,
    faces: { left: face, right: face },
    openings: [],
    ...rest,
  };
}

/** One storey with a wall of each kind, all along x. */
export const storey: Storey = {
  id: 'ground',
  name: 'Ground floor',
  floorLevelMm: 0,
  heightMm: 2400,
  floor: { build: 'suspended-timber', voidMm: 450, covering: 'boards' },
  ceiling: { lining: 'plasterboard', loft: true },
  walls: [
    wall('brick', 'brick', 0, plastered),
    wall('stud', 'timber-stud', 2000, boarded),
    wall('dabbed', 'block', 4000, dabbed),
    wall('party', 'brick', 6000, plastered, { party: true }),
    wall('lath', 'timber-stud', 8000, { finish: 'lath-and-plaster', lining: 'none' }),
  ],
  rooms: [],
  fixtures: [],
  stairwells: [],
};

/** A twin socket-outlet that is there, on the brick wall, its box 35 mm deep. */
export function pointOf(id: string, rest: Partial<Point> = {}): Point {
  return {
    id,
    label: id,
    status: 'existing',
    circuit: 'ring',
    kind: 'socket-twin',
    place: { wall: 'brick', side: 'left', alongMm: 1000, heightMm: 450 },
    features: [],
    photos: [],
    ...(rest.status === 'wanted' ? {} : { asFound: { boxDepthMm: 35 } }),
    ...rest,
  };
}

export function wanted(id: string, rest: Partial<Point> = {}): Point {
  return pointOf(id, { status: 'wanted', ...rest });
}

export function onWall(wallId: string, alongMm = 1000, heightMm = 450): NonNullable<Point['place']> {
  return { wall: wallId, side: 'left', alongMm, heightMm };
}

export function jobOf(points: readonly Point[], rest: Partial<Job> = {}): Job {
  return {
    format: 'ringwright-job',
    version: 1,
    id: 'job',
    reference: 'T-1',
    title: 'Test',
    edition: 'BS 7671:2018',
    site: { customer: '', address: [], nation: 'england', premises: 'house' },
    storeys: [storey],
    supply: { nominalV: 230, bonding: [], otherSources: [] },
    boards: [{ id: 'board', label: 'Board', rcds: [] }],
    circuits: [
      {
        id: 'ring',
        name: 'Ring',
        board: 'board',
        use: 'sockets',
        device: { standard: 'BS-EN-60898', curve: 'B', ratingA: 32 },
      },
    ],
    points: [...points],
    legs: [],
    readings: [],
    answers: [],
    schemes: [],
    terms: { labour: 'typical', vat: 'standard' },
    stock: [],
    assets: [],
    ...rest,
  };
}

export function schemeOf(rest: Partial<Scheme> = {}): Scheme {
  return { id: 'scheme', name: 'Scheme', connections: [], remedies: [], locks: [], ...rest };
}

export function nodeOf(id: string, rest: Partial<NetworkNode> = {}): NetworkNode {
  return {
    id,
    kind: 'terminals',
    pointId: id,
    circuitId: null,
    connectionId: null,
    place: null,
    inLeg: null,
    joint: null,
    state: 'found',
    ...rest,
  };
}

export const originNode: NetworkNode = nodeOf('ring', { kind: 'origin', pointId: null, circuitId: 'ring' });

/** A leg found between two nodes. */
export function legEdge(id: string, from: string, to: string, rest: Partial<NetworkEdge> = {}): NetworkEdge {
  return {
    id,
    kind: 'cable',
    from,
    to,
    originEnd: null,
    legId: id,
    partMm: null,
    connectionId: null,
    cable: twinAndEarth,
    lengthMm: 5000,
    fuseA: null,
    state: 'found',
    ...rest,
  };
}

/** A new cable. */
export function newEdge(id: string, from: string, to: string, rest: Partial<NetworkEdge> = {}): NetworkEdge {
  return legEdge(id, from, to, { legId: null, lengthMm: null, state: 'new', ...rest });
}

/** The fuse of a new unit, of a rating nobody gave. */
export function fuseOf(id: string, rest: Partial<NetworkEdge> = {}): NetworkEdge {
  return newEdge(`${id}/fuse`, id, `${id}/load`, { kind: 'fuse', cable: null, ...rest });
}

export function networkOf(nodes: readonly NetworkNode[], edges: readonly NetworkEdge[], job: Job): Network {
  const circuits = job.circuits.map((circuit) => ({
    id: circuit.id,
    name: circuit.name,
    board: job.boards[0] ?? null,
    device: circuit.device ?? null,
    circuit,
    isNew: false,
  }));
  return { nodes: [originNode, ...nodes], edges, circuits, removed: [], problems: [], unwired: new Map() };
}

export function placeOf(nodeId: string, rest: Partial<NodePlace> = {}): NodePlace {
  return {
    nodeId,
    circuitId: 'ring',
    role: 'ring',
    upstreamNode: null,
    upstreamEdgeId: null,
    rootNode: null,
    fuseA: null,
    behindUnit: null,
    depth: 0,
    ...rest,
  };
}

export function shapesOf(places: readonly NodePlace[]): ReadonlyMap<string, CircuitShape> {
  return new Map([
    [
      'ring',
      {
        circuitId: 'ring',
        shape: 'ring',
        claimed: null,
        contradicts: false,
        evidence: 'recorded',
        ringNodes: [],
        ringEdges: [],
        ringLengthMm: null,
        spurs: [],
        places,
        joinedTo: [],
        unwiredPointIds: [],
      },
    ],
  ]);
}

export function spotAt(xMm: number, yMm: number, heightMm: number): Position {
  const at: PlanPoint = planPoint(xMm, yMm);
  return { storeyId: 'ground', at, heightMm, levelMm: heightMm };
}

/** A straight stretch, in the void along a joist unless said otherwise. */
export function segmentOf(from: Position, to: Position, rest: Partial<Segment> = {}): Segment {
  const planMm = Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1]);
  return {
    medium: 'void-along',
    from,
    to,
    lengthMm: Math.hypot(planMm, to.levelMm - from.levelMm),
    direction: planMm > 0 ? 'horizontal' : 'vertical',
    wallId: null,
    side: null,
    storeyId: 'ground',
    depthMm: null,
    containment: 'none',
    insulation: null,
    bundle: null,
    joistsCrossed: 0,
    studsCrossed: 0,
    certainty: 'derived',
    ...rest,
  };
}

/** A new cable along these stretches, with ends of 0.2 m each and 0.3 m of slack. */
export function runOf(id: string, from: string, to: string, segments: readonly Segment[] = []): Run {
  const routeMm = segments.reduce((sumMm, segment) => sumMm + segment.lengthMm, 0);
  const lengthMm = routeMm + 400 + 300;
  return {
    id,
    connectionId: null,
    legId: null,
    circuitIds: ['ring'],
    from: { nodeId: from, pointId: from, position: segments[0]?.from ?? null, kind: 'accessory' },
    to: { nodeId: to, pointId: to, position: segments.at(-1)?.to ?? null, kind: 'accessory' },
    cable: twinAndEarth,
    segments,
    routeMm,
    endsMm: 400,
    slackMm: 300,
    lengthMm,
    lowMm: lengthMm,
    highMm: lengthMm,
    pinned: false,
    cuts: [],
    steps: [],
  };
}

/** The wiring of a job before and after; what is not given is empty. */
export interface Wiring {
  readonly points?: readonly Point[];
  readonly scheme?: Scheme | null;
  readonly nodes?: readonly NetworkNode[];
  readonly foundEdges?: readonly NetworkEdge[];
  readonly newEdges?: readonly NetworkEdge[];
  readonly places?: readonly NodePlace[];
  readonly runs?: readonly Run[];
  readonly foundRuns?: ReadonlyMap<string, Run>;
  readonly job?: Partial<Job>;
}

/** A stage's input in which every old cable stays as it is, and circuits have the devices that remedies fit. */
export function inputOf(wiring: Wiring): ThingsInput {
  const { points = [], nodes = points.map(({ id }) => nodeOf(id)), foundEdges = [], newEdges = [] } = wiring;
  const job = jobOf(points, wiring.job);
  const scheme = wiring.scheme === undefined ? schemeOf() : wiring.scheme;
  const proposed = networkOf(nodes, [...foundEdges, ...newEdges], job);
  return {
    job,
    scheme,
    plan: buildPlan(job),
    found: networkOf(
      nodes.filter(({ state }) => state === 'found'),
      foundEdges,
      job,
    ),
    proposed: { ...proposed, ...fitDevices(job, proposed, scheme?.remedies ?? []) },
    shapes: shapesOf(wiring.places ?? []),
    runs: wiring.runs ?? [],
    foundRuns: wiring.foundRuns ?? new Map(),
    firmTerms: null,
  };
}
