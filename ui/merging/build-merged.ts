import type { MergeNode } from './merge-tree.ts';
import type { Atom, Side } from './three-states.ts';

/** From which side an atom is taken. */
export type Choose = (atom: Atom) => Side;

const sideOf = (node: MergeNode, choose: Choose): Side =>
  node.kind === 'atom' ? choose(node.atom) : 'theirs';

/**
 * The keys of both lists in one order: those of the one as they are, each further one of the other after the key that it
 * follows there, behind what the first list has put there alone.
 */
function inOneOrder(first: readonly string[], second: readonly string[]): readonly string[] {
  const keys = [...first];
  const inSecond = new Set(second);
  for (const [index, key] of second.entries()) {
    if (keys.includes(key)) continue;
    const before = second[index - 1];
    let at = before === undefined ? 0 : keys.indexOf(before) + 1;
    while (at < keys.length && !inSecond.has(keys[at] ?? '')) at++;
    keys.splice(at, 0, key);
  }
  return keys;
}

function builtList(node: MergeNode & { readonly kind: 'list' }, choose: Choose): unknown {
  const { entries, mineKeys, theirsKeys, order } = node;
  const built = new Map([...entries].map(([key, entry]) => [key, buildMerged(entry, choose)]));
  const isHere = (key: string): boolean => built.get(key) !== undefined;
  const [mine, theirs] = [mineKeys.filter(isHere), theirsKeys.filter(isHere)];
  const keys = sideOf(order, choose) === 'mine' ? inOneOrder(mine, theirs) : inOneOrder(theirs, mine);
  if (keys.length === 0 && buildMerged(node.there, choose) !== true) return undefined;
  return keys.map((key) => built.get(key));
}

function builtGroup(node: MergeNode & { readonly kind: 'group' }, choose: Choose): unknown {
  const fields = [...node.fields].flatMap(([name, field]) => {
    const value = buildMerged(field, choose);
    return value === undefined ? [] : [[name, value] as const];
  });
  if (fields.length === 0 && buildMerged(node.there, choose) !== true) return undefined;
  return Object.fromEntries(fields);
}

/** Puts compared states together, each part from the side that is chosen for it; undefined: nothing is left of it. */
export function buildMerged(node: MergeNode, choose: Choose): unknown {
  switch (node.kind) {
    case 'same':
      return node.value;
    case 'atom':
      return node.atom[choose(node.atom)];
    case 'group':
      return builtGroup(node, choose);
    case 'list':
      return builtList(node, choose);
  }
}
