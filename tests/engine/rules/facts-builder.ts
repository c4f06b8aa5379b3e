import type { Network, NetworkEdge, NetworkNode } from '#engine/circuit/network.ts';
import type { CircuitShape, NodePlace, UnfusedSpur } from '#engine/circuit/shape.ts';
import type {
  BackBox,
  CableJoint,
  FusedUnit,
  NewAccessory,
  TerminalFill,
  Things,
} from '#engine/connections/things.ts';
import type { Plan } from '#engine/plan/plan.ts';
import { planPoint } from '#engine/plan/plane.ts';
import type { CableCapacity } from '#engine/proof/cable-capacity.ts';
import type { Facts } from '#engine/rules/facts.ts';
import type { Rule } from '#engine/rules/rule.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Run, Segment } from '#engine/ways/run.ts';
import type { Cable } from '#model/cable.ts';
import type { Board, Circuit, Leg, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { tariff } from '../ways/demo-houses.ts';

/** 2.5 mm² flat twin with a 1.5 mm² protective conductor. */
export const twin25: Cable = { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 };

/** A flat twin cable of another size. */
export const twinOf = (lineMm2: number, cpcMm2 = 1.5): Cable => ({ type: 'flat-twin', lineMm2, cpcMm2 });

/** A house with nothing in it: English, TN-C-S, no storey, board, circuit or point. */
export function jobOf(partial: Partial<Job> = {}): Job {
  return {
    format: 'ringwright-job',
    version: 1,
    id: 'job',
    reference: 'T1',
    title: 'A small job',
    edition: 'BS 7671:2018+A4:2026',
    site: { customer: 'Nobody', address: [], nation: 'england', premises: 'house' },
    storeys: [],
    supply: { earthing: 'TN-C-S', nominalV: 230, bonding: [], otherSources: [] },
    boards: [],
    circuits: [],
    points: [],
    legs: [],
    readings: [],
    answers: [],
    schemes: [],
    terms: { labour: 'typical', vat: 'standard' },
    stock: [],
    assets: [],
    ...partial,
  };
}

/** An existing twin outlet unless told otherwise. */
export const pointOf = (id: string, partial: Partial<Point> = {}): Point => ({
  id,
  label: id.toUpperCase(),
  status: 'existing',
  kind: 'socket-twin',
  features: [],
  photos: [],
  ...partial,
});

/** A board without RCD that takes RCBOs. */
export const boardOf = (id: string, partial: Partial<Board> = {}): Board => ({
  id,
  label: id,
  rcds: [],
  rcboAvailable: true,
  ...partial,
});

/** A socket circuit on board `b1` behind a 32 A type B breaker without RCD. */
export const circuitOf = (id: string, partial: Partial<Circuit> = {}): Circuit => ({
  id,
  name: id,
  board: 'b1',
  use: 'sockets',
  device: { standard: 'BS-EN-60898', curve: 'B', ratingA: 32 },
  ...partial,
});

/** A leg of circuit `c` in 2.5 mm² between two points. */
export const legOf = (id: string, from: string, to: string, partial: Partial<Leg> = {}): Leg => ({
  id,
  circuit: 'c',
  from: from === 'c' ? { origin: 'c' } : { point: from },
  to: to === 'c' ? { origin: 'c' } : { point: to },
  cable: twin25,
  lengthMm: 5000,
  ...partial,
});

/** A scheme of these connections. */
export const schemeOf = (connections: readonly Connection[] = [], partial: Partial<Scheme> = {}): Scheme => ({
  id: 's1',
  name: 'Scheme',
  connections: [...connections],
  remedies: [],
  locks: [],
  ...partial,
});

/** The terminals of the point that goes by the same id, as found. */
export const nodeOf = (id: string, partial: Partial<NetworkNode> = {}): NetworkNode => ({
  id,
  kind: 'terminals',
  pointId: partial.kind === undefined || partial.kind === 'terminals' ? id : null,
  circuitId: null,
  connectionId: null,
  place: null,
  inLeg: null,
  joint: null,
  state: 'found',
  ...partial,
});

/** A 2.5 mm² cable as found. */
export const edgeOf = (
  id: string,
  from: string,
  to: string,
  partial: Partial<NetworkEdge> = {},
): NetworkEdge => ({
  id,
  kind: 'cable',
  from,
  to,
  originEnd: null,
  legId: partial.state === 'new' ? null : id,
  partMm: null,
  connectionId: null,
  cable: twin25,
  lengthMm: 5000,
  fuseA: null,
  state: 'found',
  ...partial,
});

/** A graph without nodes, edges or problems unless given. */
export const networkOf = (partial: Partial<Network> = {}): Network => ({
  nodes: [],
  edges: [],
  circuits: [],
  removed: [],
  problems: [],
  unwired: new Map(),
  ...partial,
});

/** A proved ring without spurs. */
export const shapeOf = (circuitId: string, partial: Partial<CircuitShape> = {}): CircuitShape => ({
  circuitId,
  shape: 'ring',
  claimed: null,
  contradicts: false,
  evidence: 'proved',
  ringNodes: [],
  ringEdges: [],
  ringLengthMm: null,
  spurs: [],
  places: [],
  joinedTo: [],
  unwiredPointIds: [],
  ...partial,
});

/** A ring node of circuit `c`. */
export const nodePlaceOf = (nodeId: string, partial: Partial<NodePlace> = {}): NodePlace => ({
  nodeId,
  circuitId: 'c',
  role: 'ring',
  upstreamNode: null,
  upstreamEdgeId: null,
  rootNode: null,
  fuseA: null,
  behindUnit: null,
  depth: 0,
  ...partial,
});

/** A spur of circuit `c` from `r1` with no accessory. */
export const spurOf = (id: string, partial: Partial<UnfusedSpur> = {}): UnfusedSpur => ({
  id,
  circuitId: 'c',
  rootNode: 'r1',
  edgeIds: [],
  accessoryNodes: [],
  jointNodes: [],
  isNew: false,
  ...partial,
});

/** A level metre of clipped cable on the surface. */
export const segmentOf = (partial: Partial<Segment> = {}): Segment => ({
  medium: 'surface-clipped',
  from: { storeyId: 'gf', at: planPoint(0, 0), heightMm: 0, levelMm: 0 },
  to: { storeyId: 'gf', at: planPoint(1000, 0), heightMm: 0, levelMm: 0 },
  lengthMm: 1000,
  direction: 'horizontal',
  wallId: null,
  side: null,
  storeyId: 'gf',
  depthMm: null,
  containment: 'none',
  insulation: null,
  bundle: null,
  joistsCrossed: 0,
  studsCrossed: 0,
  certainty: 'pinned',
  ...partial,
});

/** A new 2.5 mm² cable of connection `k1` between nowhere and nowhere along these segments. */
export function runOf(id: string, segments: readonly Segment[], partial: Partial<Run> = {}): Run {
  const routeMm = segments.reduce((sum, segment) => sum + segment.lengthMm, 0);
  return {
    id,
    connectionId: 'k1',
    legId: null,
    circuitIds: ['c'],
    from: { nodeId: 'r1', pointId: 'r1', position: null, kind: 'accessory' },
    to: { nodeId: 'w1', pointId: 'w1', position: null, kind: 'accessory' },
    cable: twin25,
    segments,
    routeMm,
    endsMm: 0,
    slackMm: 0,
    lengthMm: routeMm,
    lowMm: routeMm,
    highMm: routeMm,
    pinned: false,
    cuts: [],
    steps: [],
    ...partial,
  };
}

/** 27 A clipped direct. */
export const capacityOf = (id: string, partial: Partial<CableCapacity> = {}): CableCapacity => ({
  id,
  izA: 27,
  method: 'C',
  worstSegment: 0,
  worstFromMm: 0,
  groupFactor: 1,
  insulationFactor: 1,
  grade: 'seen',
  ...partial,
});

/** A new maintenance-free 32 A joint in the ring of circuit `c`, behind a 32 A device. */
export const jointOf = (id: string, partial: Partial<CableJoint> = {}): CableJoint => ({
  id,
  circuitId: 'c',
  connectionId: 'k1',
  pointId: null,
  legId: null,
  kind: 'maintenance-free',
  source: 'given',
  ratingA: 32,
  accessible: false,
  upstream: { kind: 'device', ratingA: 32 },
  inRing: true,
  cables: 3,
  newCables: 1,
  conductorAreaMm2: 2.5,
  areaMm2: 7.5,
  takes: { cables: 4, conductorMm2: 4, areaMm2: null, isFromSheet: false },
  position: null,
  lies: 'floor-void',
  state: 'new',
  ...partial,
});

/** Three 2.5 mm² conductors in the terminal of a point, one of them new. */
export const terminalOf = (nodeId: string, partial: Partial<TerminalFill> = {}): TerminalFill => ({
  nodeId,
  pointId: nodeId,
  circuitId: 'c',
  cables: 3,
  areaMm2: 7.5,
  newCables: 1,
  capacityCables: 3,
  capacityMm2: 8,
  counted: true,
  affected: true,
  ...partial,
});

/** A new fused unit of circuit `c` with a 13 A fuse and nothing named behind it. */
export const unitOf = (id: string, partial: Partial<FusedUnit> = {}): FusedUnit => ({
  id,
  pointId: id,
  connectionId: 'k1',
  circuitId: 'c',
  loadNode: `${id}/load`,
  fuseA: 13,
  fuseSource: 'given',
  fixedW: null,
  plugInW: null,
  outlets: 0,
  accessories: [],
  switched: true,
  flexOutlet: false,
  position: null,
  state: 'new',
  ...partial,
});

/** A new 35 mm steel box in a brick wall with two cables. */
export const boxOf = (id: string, partial: Partial<BackBox> = {}): BackBox => ({
  id,
  pointId: id,
  gangs: 2,
  build: 'steel',
  wallCore: 'brick',
  lining: 'none',
  finish: 'plaster',
  minimumDepthMm: 25,
  preferredDepthMm: 35,
  foundDepthMm: null,
  depthMm: 35,
  cables: 2,
  action: 'fit',
  cause: null,
  party: false,
  knockOuts: 2,
  state: 'new',
  ...partial,
});

/** No things at all unless given. */
const thingsOf = (partial: Partial<Things> = {}): Things => ({
  joints: [],
  terminals: [],
  boxes: [],
  fusedUnits: [],
  accessories: [] satisfies NewAccessory[],
  ...partial,
});

const noPlan: Plan = {
  storeys: [],
  storeyById: new Map(),
  wallById: new Map(),
  roomById: new Map(),
  pointById: new Map(),
  positionOfPoint: new Map(),
  positionOfBoard: new Map(),
  fixtures: [],
};

/** What `factsOf` takes: any facts; job, plan, things, networks, shapes and capacities in shorter forms. */
export type FactsLiteral = Omit<
  Partial<Facts>,
  'job' | 'plan' | 'things' | 'found' | 'proposed' | 'shapes' | 'foundShapes' | 'capacities' | 'foundRuns'
> & {
  readonly job?: Partial<Job>;
  readonly plan?: Partial<Plan>;
  readonly things?: Partial<Things>;
  readonly found?: Partial<Network>;
  readonly proposed?: Partial<Network>;
  readonly shapes?: readonly CircuitShape[];
  readonly foundShapes?: readonly CircuitShape[];
  readonly capacities?: readonly CableCapacity[];
  readonly foundRuns?: readonly Run[];
};

/**
 * Facts from a small literal. `found` and `foundShapes` are the proposed ones unless given; the plan knows
 * the job's points; the circuits touched are those with a shape; the circuits of a network are the job's.
 */
export function factsOf(partial: FactsLiteral = {}): Facts {
  const job = jobOf(partial.job);
  const shapes = new Map((partial.shapes ?? []).map((shape) => [shape.circuitId, shape]));
  const circuits = job.circuits.map((circuit) => ({
    id: circuit.id,
    name: circuit.name,
    board: job.boards.find((board) => board.id === circuit.board) ?? null,
    device: circuit.device ?? null,
    circuit,
    isNew: false,
  }));
  const proposed = networkOf({ circuits, ...partial.proposed });
  return {
    scheme: null,
    runs: [],
    circuitIds: [...shapes.keys()].sort(),
    limits: {},
    proofs: new Map(),
    proofsFound: new Map(),
    tariff,
    allowances: defaultLengthAllowances,
    edition: job.edition,
    ...partial,
    job,
    plan: { ...noPlan, pointById: new Map(job.points.map((point) => [point.id, point])), ...partial.plan },
    proposed,
    found: partial.found === undefined ? proposed : networkOf({ circuits, ...partial.found }),
    shapes,
    foundShapes:
      partial.foundShapes === undefined
        ? shapes
        : new Map(partial.foundShapes.map((shape) => [shape.circuitId, shape])),
    foundRuns: new Map((partial.foundRuns ?? []).map((run) => [run.id, run])),
    things: thingsOf(partial.things),
    capacities: new Map((partial.capacities ?? []).map((capacity) => [capacity.id, capacity])),
  };
}

/**
 * What a rule says of these facts, cut down to what tests compare; `[]` where it does not apply. Throws when a
 * place in the words has no value, so that no finding is ever printed with a hole in it.
 */
export function saidBy(rule: Rule, facts: Facts) {
  return (rule.applies(facts) ? rule.check(facts) : []).map((result) => {
    const { outcome, messageId, subjectId, origin, actual, limit, unit, stopGate, fix } = result;
    const words = `${rule.messages[messageId] ?? `{no message ${messageId}}`} ${rule.remedies[messageId] ?? ''}`;
    const values: Readonly<Record<string, unknown>> = { actual, limit, unit, ...result.values };
    for (const [place, name = ''] of words.matchAll(/\{([^}]*)\}/g))
      if (values[name] === undefined) throw new Error(`${rule.id} ${messageId}: nothing for ${place}`);
    return {
      outcome,
      messageId,
      subjectId,
      origin,
      ...(actual === undefined ? {} : { actual }),
      ...(limit === undefined ? {} : { limit }),
      ...(unit === undefined ? {} : { unit }),
      ...(stopGate === undefined ? {} : { stopGate }),
      ...(fix === undefined ? {} : { fix }),
    };
  });
}
