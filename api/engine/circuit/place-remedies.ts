import type { Job } from '#model/job.ts';
import type { Remedy, Scheme } from '#model/scheme.ts';
import { fittedDevice } from './fitted-device.ts';
import type { EditProblem, Network, NetworkCircuit } from './network.ts';
import { inProblemOrder } from './network-draft.ts';
import { type RemedyTarget, type RemedyTargets, remedyTargets } from './remedy-targets.ts';

type Kind = Remedy['kind'];

/** What each kind may be said to be done `at`. */
const classOf: Readonly<Record<Kind, 'circuit' | 'board' | 'point' | 'service'>> = {
  rcbo: 'circuit',
  'rcd-enclosure': 'circuit',
  'lower-device': 'circuit',
  'new-board': 'board',
  'rcd-unit': 'point',
  'rcd-outlet': 'point',
  're-box': 'point',
  'single-to-twin': 'point',
  'bond-upgrade': 'service',
};

/**
 * A scheme whose remedies all say what they are done to, as far as that can be told: one that names nothing, or
 * only the circuit, board or point that its target belongs to, is given the single target that it can mean.
 * What can mean several things, or none, stays as written; `proposedNetwork` reports it.
 *
 * @param network as this scheme proposes it, with or without its new devices.
 * @returns the scheme itself when there is nothing to add.
 */
export function withPlacedRemedies(job: Job, network: Network, scheme: Scheme): Scheme {
  const { placed } = placeRemedies(job, network, scheme.remedies);
  return placed.every((remedy, index) => remedy === scheme.remedies[index])
    ? scheme
    : { ...scheme, remedies: [...placed] };
}

/** What remedies change in a network: devices of circuits, and, as problems, the remedies that have no target. */
export function fitDevices(
  job: Job,
  network: Network,
  remedies: readonly Remedy[],
): Pick<Network, 'circuits' | 'problems'> {
  if (remedies.length === 0) return network;
  const { placed, astray, touched } = placeRemedies(job, network, remedies);
  const subjects = new Set(
    astray.map(({ kind, at }) => (at === undefined ? `remedy/${kind}` : `remedy/${kind}/${at}`)),
  );
  const problems = [...subjects].map(
    (subjectId): EditProblem => ({ connectionId: null, code: 'remedy-without-target', subjectId }),
  );
  return {
    circuits: network.circuits.map((circuit) => {
      const neighbours = network.circuits.filter(({ board }) => board?.id === circuit.board?.id);
      const isMeant = touched.has(circuit.id) || neighbours.length === 1;
      return withDevice(circuit, placed, isMeant);
    }),
    problems: inProblemOrder([...problems, ...network.problems]),
  };
}

/**
 * A new board comes first, whatever the order: what is said of a single circuit goes into it. The device that
 * it names is for the circuits that the scheme changes (`isMeant`); the others keep their ratings. A circuit
 * that the scheme makes has the device that its connection names.
 */
function withDevice(circuit: NetworkCircuit, placed: readonly Remedy[], isMeant: boolean): NetworkCircuit {
  if (circuit.isNew) return circuit;
  const boards = placed
    .filter(({ kind, at }) => kind === 'new-board' && at === circuit.board?.id)
    .map((remedy) => (isMeant ? remedy : { kind: remedy.kind }));
  const own = placed.filter(({ kind, at }) => classOf[kind] === 'circuit' && at === circuit.id);
  const device = [...boards, ...own].reduce(
    (current, remedy) => fittedDevice(remedy, current),
    circuit.device,
  );
  return device === circuit.device ? circuit : { ...circuit, device };
}

interface PlacedRemedies {
  readonly placed: readonly Remedy[];
  /** Those of them that have no target. */
  readonly astray: readonly Remedy[];
  /** Circuits whose wiring the scheme changes. */
  readonly touched: ReadonlySet<string>;
}

function placeRemedies(job: Job, network: Network, remedies: readonly Remedy[]): PlacedRemedies {
  const targets = remedyTargets(job, network);
  const astray: Remedy[] = [];
  const placed = remedies.map((remedy) => {
    const { kind, at } = remedy;
    // What is named and of the right class is meant, sensible or not: the rules say the rest.
    if (classOf[kind] === 'service' || (at !== undefined && classOfId(job, network, at) === classOf[kind]))
      return remedy;
    const within = ownersOf(job, targets, at);
    const groups = targets.groupsOf(kind).map((group) => group.filter((target) => belongsTo(target, within)));
    const [only, ...others] = groups.find((group) => group.length > 0) ?? [];
    if (only !== undefined && others.length === 0) return { ...remedy, at: only.id };
    astray.push(remedy);
    return remedy;
  });
  return { placed, astray, touched: targets.touched };
}

function classOfId(job: Job, network: Network, id: string): 'circuit' | 'board' | 'point' | null {
  if (job.circuits.some((circuit) => circuit.id === id)) return 'circuit';
  if (job.boards.some((board) => board.id === id)) return 'board';
  const isPoint = job.points.some((point) => point.id === id);
  return isPoint || network.nodes.some((node) => node.id === id && node.kind === 'terminals')
    ? 'point'
    : null;
}

/** What a target has to belong to; null where that is left open. */
interface Owners {
  readonly circuitId: string | null;
  readonly boardId: string | null;
}

function ownersOf(job: Job, { circuitOfPoint }: RemedyTargets, at: string | undefined): Owners | null {
  if (at === undefined) return null;
  const circuitId = circuitOfPoint.get(at) ?? at;
  const circuit = job.circuits.find(({ id }) => id === circuitId);
  return circuit ? { circuitId, boardId: circuit.board } : { circuitId: null, boardId: at };
}

function belongsTo(target: RemedyTarget, owners: Owners | null): boolean {
  if (owners === null) return true;
  return target.circuitId !== null && owners.circuitId !== null
    ? target.circuitId === owners.circuitId
    : target.boardId === owners.boardId;
}
