import { isSameData } from '#engine/plan/same-data.ts';
import { isGroup } from '../differences/list-keys.ts';
import { keysOfList } from './list-identity.ts';
import { isGathered, isOneValue, isOpenGroup, kindFieldIn } from './one-value.ts';
import { type Atom, keyOfPath, ORDER, THERE, type ThreeStates } from './three-states.ts';

type Group = Readonly<Record<string, unknown>>;
type Path = readonly string[];

/** Three states of a value, compared as far down as each part can be taken by itself. */
export type MergeNode =
  /** Mine and theirs are alike. */
  | { readonly kind: 'same'; readonly value: unknown }
  | { readonly kind: 'atom'; readonly atom: Atom }
  | {
      readonly kind: 'group';
      readonly fields: ReadonlyMap<string, MergeNode>;
      /** Whether there is a group where it holds nothing. */
      readonly there: MergeNode;
    }
  | {
      readonly kind: 'list';
      readonly entries: ReadonlyMap<string, MergeNode>;
      /** The order of what all three have. */
      readonly order: MergeNode;
      readonly there: MergeNode;
      readonly mineKeys: readonly string[];
      readonly theirsKeys: readonly string[];
    };

const atomOf = (states: ThreeStates, path: Path): MergeNode => ({
  kind: 'atom',
  atom: { ...states, path, key: keyOfPath(path) },
});

const leaf = (states: ThreeStates, path: Path): MergeNode =>
  isSameData(states.mine, states.theirs) ? { kind: 'same', value: states.mine } : atomOf(states, path);

const there = ({ base, mine, theirs }: ThreeStates, path: Path): MergeNode =>
  leaf({ base: base !== undefined, mine: mine !== undefined, theirs: theirs !== undefined }, [
    ...path,
    THERE,
  ]);

interface Groups {
  readonly base: Group;
  readonly mine: Group;
  readonly theirs: Group;
}

/** The three as groups to go into; null where they are taken whole. */
function asGroups({ base, mine, theirs }: ThreeStates, path: Path): Groups | null {
  const absentIsEmpty = (value: unknown, may: boolean): Group | null =>
    isGroup(value) ? value : value === undefined && may ? {} : null;
  const groups = {
    base: absentIsEmpty(base, isGathered(path)),
    mine: absentIsEmpty(mine, isOpenGroup(path)),
    theirs: absentIsEmpty(theirs, isOpenGroup(path)),
  };
  if (groups.base === null || groups.mine === null || groups.theirs === null) return null;
  const kind = kindFieldIn(path.at(-2));
  const { base: was, mine: here, theirs: there } = groups;
  if (kind !== null && (was[kind] !== here[kind] || was[kind] !== there[kind])) return null;
  return { base: was, mine: here, theirs: there };
}

function comparedGroups(states: ThreeStates, groups: Groups, path: Path): MergeNode {
  const { base, mine, theirs } = groups;
  const names = new Set([...Object.keys(theirs), ...Object.keys(mine)]);
  const fields = new Map(
    [...names].map((name) => [
      name,
      comparedStates({ base: base[name], mine: mine[name], theirs: theirs[name] }, [...path, name]),
    ]),
  );
  return { kind: 'group', fields, there: there(states, path) };
}

/** The things of a list by what they are known by; null where it is one value. An absent list holds none. */
function asEntries(list: unknown, path: Path): ReadonlyMap<string, unknown> | null {
  if (list === undefined) return new Map();
  const keys = keysOfList(path.at(-1) ?? '', list);
  if (keys === null || !Array.isArray(list)) return null;
  return new Map(list.map((thing, index) => [keys[index] ?? '', thing]));
}

function comparedLists(states: ThreeStates, path: Path): MergeNode | null {
  const lists = [states.base, states.mine, states.theirs].map((list) => asEntries(list, path));
  const [base, mine, theirs] = lists;
  if (base == null || mine == null || theirs == null) return null;
  const entries = new Map(
    [...new Set([...theirs.keys(), ...mine.keys()])].map((key) => [
      key,
      comparedStates({ base: base.get(key), mine: mine.get(key), theirs: theirs.get(key) }, [...path, key]),
    ]),
  );
  const orderIn = (list: ReadonlyMap<string, unknown>): readonly string[] =>
    [...list.keys()].filter((key) => base.has(key) && mine.has(key) && theirs.has(key));
  return {
    kind: 'list',
    entries,
    order: leaf({ base: orderIn(base), mine: orderIn(mine), theirs: orderIn(theirs) }, [...path, ORDER]),
    there: there(states, path),
    mineKeys: [...mine.keys()],
    theirsKeys: [...theirs.keys()],
  };
}

/**
 * Compares three states of a job, or of a part of it, down to the smallest parts that can be taken from either side.
 *
 * @param path where the part is; none for the whole job.
 */
export function comparedStates(states: ThreeStates, path: Path = []): MergeNode {
  if (isSameData(states.mine, states.theirs)) return { kind: 'same', value: states.mine };
  if (isOneValue(path)) return atomOf(states, path);
  const groups = asGroups(states, path);
  if (groups !== null) return comparedGroups(states, groups, path);
  return comparedLists(states, path) ?? atomOf(states, path);
}

/** All parts of a comparison in which mine and theirs are unlike, in the order of the file. */
export function atomsOf(node: MergeNode): readonly Atom[] {
  switch (node.kind) {
    case 'same':
      return [];
    case 'atom':
      return [node.atom];
    case 'group':
      return [...node.fields.values(), node.there].flatMap(atomsOf);
    case 'list':
      return [...node.entries.values(), node.order, node.there].flatMap(atomsOf);
  }
}
