import type { Job } from '#model/job.ts';
import type { NetworkEdge, NetworkNode, NodeId } from '../circuit/network.ts';
import type { Worked } from '../connections/worked.ts';

/** What a thing is called on every paper of one job: short on a drawing, in words in a list. */
export interface Reference {
  /** Of cables the edge's id, of joints and units the node's. */
  readonly id: string;
  /** `K3` a new cable, `R8–R9` one found, `J1` a joint, `F1` a fused unit that no point stands for. */
  readonly mark: string;
}

/** One naming of all that a scheme brings or cuts. */
export interface References {
  /** New cables, K1 first; then those found, by mark. */
  readonly cables: readonly Reference[];
  /** Joints that no point of the job stands for, J1 first. */
  readonly joints: readonly Reference[];
  /** Fused units that a connection brings along, F1 first. */
  readonly units: readonly Reference[];
  /** The mark of a cable, found or proposed; the id itself where the job knows of no such cable. */
  readonly cable: (edgeId: string) => string;
  /** What people call a place: a point's label, a board's, a joint's or unit's mark; the id itself where nobody knows it. */
  readonly place: (nodeId: NodeId) => string;
}

/**
 * The names that all papers of a scheme share. Numbers follow the scheme's connections in the job's order, then old
 * points in theirs, so that equal jobs get equal marks, whatever the ids; a number that a label of the job has is passed over.
 */
export function referencesOf(worked: Worked): References {
  const { job, found, proposed } = worked;
  const taken = takenMarks(job);
  const order = orderIn(worked);
  const marked = (letter: string, things: readonly Ordered[]) =>
    numbered(letter, things.toSorted(inOrder(order)), taken);
  const joints = marked('J', proposed.nodes.filter(isUnnamedJoint));
  const units = marked('F', proposed.nodes.filter(isUnnamedUnit));
  const newCables = marked(
    'K',
    proposed.edges.filter(({ kind, state }) => kind === 'cable' && state === 'new'),
  );
  const nameOf = new Map([...joints, ...units].map(({ id, mark }) => [id, mark]));
  const nodes = new Map([...found.nodes, ...proposed.nodes].map((node) => [node.id, node]));
  const place = (nodeId: NodeId): string => {
    const node = nodes.get(nodeId);
    return nameOf.get(nodeId.replace(/\/load$/, '')) ?? (node === undefined ? nodeId : labelOf(worked, node));
  };
  const foundCables = foundMarks(worked, place);
  const cables = [...newCables, ...foundCables];
  const markOf = new Map(cables.map(({ id, mark }) => [id, mark]));
  return { cables, joints, units, place, cable: (id) => markOf.get(id) ?? id };
}

type Ordered = Pick<NetworkNode, 'id' | 'connectionId'>;

const isUnnamedJoint = ({ kind, id, pointId }: NetworkNode): boolean =>
  kind === 'joint' && (pointId === null || id !== pointId);
const isUnnamedUnit = ({ kind, pointId }: NetworkNode): boolean => kind === 'terminals' && pointId === null;

/** Where a thing comes in the numbering: its connection, or the old point whose box it is in; then by its own number. */
function orderIn({ job, scheme }: Worked): (thing: Ordered) => readonly [number, string] {
  const connections = new Map((scheme?.connections ?? []).map(({ id }, i) => [id, i]));
  const points = new Map(job.points.map(({ id }, i) => [id, i]));
  return ({ id, connectionId }) => {
    const base = id.split('/')[0] ?? id;
    const at = connectionId === null ? undefined : connections.get(connectionId);
    const role = id.slice(base.length).replace(/\d+/g, (digits) => digits.padStart(6, '0'));
    return [at ?? connections.size + (points.get(base) ?? points.size), role];
  };
}

const inOrder =
  (orderOf: (thing: Ordered) => readonly [number, string]) =>
  (a: Ordered, b: Ordered): number => {
    const [[one, roleA], [other, roleB]] = [orderOf(a), orderOf(b)];
    return one - other || (roleA < roleB ? -1 : roleA > roleB ? 1 : 0);
  };

const numbered = (
  letter: string,
  things: readonly Ordered[],
  taken: ReadonlySet<string>,
): readonly Reference[] => {
  const marks = marksFrom(letter, things.length, taken);
  return things.map(({ id }, i) => ({ id, mark: marks[i] ?? '' }));
};

const takenMarks = ({ points, boards }: Pick<Job, 'points' | 'boards'>): ReadonlySet<string> =>
  new Set([...points, ...boards].map(({ label }) => label.trim().toUpperCase()));

/** So many marks of a letter, from 1 on; a number that a label of the job has is passed over. */
export const freeMarks = (
  letter: string,
  count: number,
  job: Pick<Job, 'points' | 'boards'>,
): readonly string[] => marksFrom(letter, count, takenMarks(job));

function marksFrom(letter: string, count: number, taken: ReadonlySet<string>): readonly string[] {
  let next = 0;
  return Array.from({ length: count }, () => {
    do next += 1;
    while (taken.has(`${letter}${next}`));
    return `${letter}${next}`;
  });
}

function labelOf({ job, proposed, found }: Worked, { id, pointId, circuitId }: NetworkNode): string {
  if (pointId !== null) return job.points.find((point) => point.id === pointId)?.label ?? pointId;
  const circuit = [...proposed.circuits, ...found.circuits].find((each) => each.id === circuitId);
  return circuit === undefined ? id : (circuit.board?.label ?? 'board');
}

/** Cables found go by the places that they join, at a board by the ring’s end A or B where it is told; of two alike the second has a number. */
function foundMarks({ found, proposed }: Worked, place: (nodeId: NodeId) => string): readonly Reference[] {
  const now = proposed.edges.filter(({ kind, state }) => kind === 'cable' && state === 'found');
  const known = new Set(now.map(({ id }) => id));
  const gone = found.edges.filter(({ kind, id }) => kind === 'cable' && !known.has(id));
  const endOf = (edge: NetworkEdge, nodeId: NodeId): string => {
    const isOrigin = proposed.circuits.some(({ id }) => id === nodeId);
    if (!isOrigin) return place(nodeId);
    return edge.originEnd === null ? 'board' : `board ${edge.originEnd}`;
  };
  const plain = [...now, ...gone].map((edge) => ({
    id: edge.id,
    mark: `${endOf(edge, edge.from)}–${endOf(edge, edge.to)}`,
  }));
  const used = new Map<string, number>();
  const told = plain
    .toSorted((a, b) => (a.mark < b.mark ? -1 : a.mark > b.mark ? 1 : a.id < b.id ? -1 : 1))
    .map(({ id, mark }) => {
      const count = (used.get(mark) ?? 0) + 1;
      used.set(mark, count);
      return { id, mark: count === 1 ? mark : `${mark} (${count})` };
    });
  return told;
}
