import type { Leg } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { joinedBy } from '../edits/joined-by.ts';
import { idsDefinedIn } from './ids-in.ts';
import type { Atom } from './three-states.ts';

/** The three jobs that are merged. */
export interface ThreeJobs {
  readonly base: Job;
  readonly mine: Job;
  readonly theirs: Job;
}

/** Why atoms belong together: a storey's drawing and a circuit's cables are told as such, the rest field by field. */
export type About =
  | { readonly kind: 'drawing'; readonly storeyId: string }
  | { readonly kind: 'cables'; readonly circuitId: string }
  | { readonly kind: 'fields' };

/** Atoms of which none is taken from one side while another is taken from the other. */
export interface Bond {
  readonly about: About;
  readonly atoms: readonly Atom[];
}

type Path = readonly string[];

const startsWith = (path: Path, start: Path): boolean => start.every((step, index) => path[index] === step);

/** Fields by which a certainty is named otherwise than they are. */
const surveyedAs: Readonly<Record<string, Path>> = {
  length: ['lengthMm'],
  route: ['via'],
  order: [],
};

/** How a service's bond is named among the certainties. */
const bondOf = /^bond-(\w+)$/;

/** The fields that a certainty can be about, within what carries it. */
function certainFields(name: string): readonly Path[] {
  const service = bondOf.exec(name)?.[1];
  if (service !== undefined)
    return [
      ['bonding', service],
      ['absentServices', service],
    ];
  return [surveyedAs[name] ?? [name], ['asFound', name]];
}

/** A fact and how sure it is. */
function surveyed(atom: Atom, atoms: readonly Atom[]): Bond | null {
  const at = atom.path.indexOf('certainty');
  const name = atom.path[at + 1];
  if (at < 0 || name === undefined) return null;
  const owner = atom.path.slice(0, at);
  const fields = certainFields(name).filter(({ length }) => length > 0);
  const isFact = ({ path }: Atom): boolean => fields.some((field) => startsWith(path, [...owner, ...field]));
  return { about: { kind: 'fields' }, atoms: [...atoms.filter(isFact), atom] };
}

/** Fields that another one brings along or rules out, by where that one lies and what it is called. */
const followers: readonly {
  readonly list: string | null;
  readonly leader: string;
  readonly fields: readonly string[];
}[] = [
  { list: 'points', leader: 'kind', fields: ['modules', 'unit', 'joint'] },
  { list: 'extras', leader: 'typicalMin', fields: ['lowMin', 'highMin'] },
  { list: 'terms', leader: 'vat', fields: ['vatCondition'] },
  { list: 'terms', leader: 'markupPercent', fields: ['marginPercent'] },
  { list: 'terms', leader: 'depositPercent', fields: ['depositPence'] },
  { list: null, leader: 'standard', fields: ['curve', 'ratingA', 'rcd', 'breakingKA', 'letThroughA2s'] },
];

function led(atom: Atom, atoms: readonly Atom[]): readonly Bond[] {
  const [owner, name] = [atom.path.slice(0, -1), atom.path.at(-1)];
  return followers
    .filter(({ list, leader }) => leader === name && (list === null || list === atom.path[0]))
    .map(({ fields }) => ({
      about: { kind: 'fields' },
      atoms: [
        atom,
        ...atoms.filter(({ path }) => fields.some((field) => startsWith(path, [...owner, field]))),
      ],
    }));
}

/** Atoms by the name of what they make together. */
class Together {
  readonly #bonds = new Map<string, { readonly about: About; readonly atoms: Atom[] }>();

  add(name: string, atom: Atom, about: About = { kind: 'fields' }): void {
    const bond = this.#bonds.get(name) ?? { about, atoms: [] };
    if (!bond.atoms.includes(atom)) bond.atoms.push(atom);
    this.#bonds.set(name, bond);
  }
  get bonds(): readonly Bond[] {
    return [...this.#bonds.values()];
  }
}

/** True for what a storey's drawing is made of: which walls and rooms there are, where walls run, what bounds rooms. */
function isDrawing([, , part, , field]: Path): boolean {
  if (part === 'walls') return field === undefined || field === 'from' || field === 'to';
  return part === 'rooms' && (field === undefined || field === 'walls');
}

const states = ['base', 'mine', 'theirs'] as const;

const legIn = (job: Job, id: string | undefined): Leg | undefined => job.legs.find((leg) => leg.id === id);

/** The circuits whose cables go otherwise by an atom. */
function recabled({ path }: Atom, jobs: ThreeJobs): readonly string[] {
  const [, id, field] = path;
  if (field !== undefined && field !== 'from' && field !== 'to' && field !== 'circuit') return [];
  const circuits = states.map((state) => legIn(jobs[state], id)?.circuit);
  return [...new Set(circuits)].filter((circuit) => circuit !== undefined);
}

const connectionIn = (job: Job, [, scheme, , id]: Path): Connection | undefined =>
  job.schemes.find((each) => each.id === scheme)?.connections.find((each) => each.id === id);

/** The leg that a connection opens. */
const openedBy = (connection: Connection): readonly string[] =>
  connection.kind !== 'spur' && 'leg' in connection && connection.leg !== undefined ? [connection.leg] : [];

/** What a connection is joined by, and what no other connection of its scheme may join as well. */
function joins(atom: Atom, jobs: ThreeJobs, together: Together): void {
  const [, scheme, , id, field] = atom.path;
  if (field === 'cable' || field === 'device') return;
  together.add(`connection ${scheme} ${id}`, atom);
  for (const state of states) {
    const connection = connectionIn(jobs[state], atom.path);
    if (connection === undefined) continue;
    for (const claimed of [...joinedBy(connection), ...openedBy(connection)])
      together.add(`joined ${scheme} ${claimed}`, atom);
  }
}

function addBy(atom: Atom, jobs: ThreeJobs, together: Together): void {
  const [top, id = '', part] = atom.path;
  if (top === 'storeys' && isDrawing(atom.path))
    together.add(`drawing ${id}`, atom, { kind: 'drawing', storeyId: id });
  if (top === 'legs' && id !== '')
    for (const circuitId of recabled(atom, jobs))
      together.add(`cables ${circuitId}`, atom, { kind: 'cables', circuitId });
  if (top === 'schemes' && part === 'connections' && atom.path.length > 3) joins(atom, jobs, together);
  // A service has a bond, or there is no such service.
  if (top === 'supply' && (id === 'bonding' || id === 'absentServices') && part !== undefined)
    together.add(`service ${part}`, atom);
  // A thing that was moved from one list to another is in one of them.
  for (const defined of idsDefinedIn(atom)) together.add(`id ${defined.scope} ${defined.id}`, atom);
}

/**
 * Which of the parts that are unlike belong together: a fact and how sure it is, what a point is and what it is made of,
 * a storey's walls and rooms, where the cables of a circuit go, how a connection joins, all that joins one point.
 */
export function bondsBetween(atoms: readonly Atom[], jobs: ThreeJobs): readonly Bond[] {
  const together = new Together();
  for (const atom of atoms) addBy(atom, jobs, together);
  const single = atoms.flatMap((atom) => [surveyed(atom, atoms) ?? [], led(atom, atoms)].flat());
  return [...together.bonds, ...single].filter((bond) => bond.atoms.length > 1);
}
