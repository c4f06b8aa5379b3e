import { isSameData } from '#engine/plan/same-data.ts';
import type { About, Bond } from './belongs-together.ts';
import { idsDefinedIn, isInScope, type OneSided, wordsIn } from './ids-in.ts';
import type { Atom, Side } from './three-states.ts';

/** Atoms of which a person decides at once from which side they are. */
export interface Undecided {
  /** In the order of the file; one at least. */
  readonly atoms: readonly Atom[];
  /** What they are about: a drawing before cables, both before fields. */
  readonly about: About;
}

/** The side that changed an atom; null where both did, unlike. */
export function changedBy({ base, mine, theirs }: Atom): Side | null {
  if (isSameData(theirs, base)) return 'mine';
  return isSameData(mine, base) ? 'theirs' : null;
}

const rank: Readonly<Record<About['kind'], number>> = { drawing: 0, cables: 1, fields: 2 };

/** Atoms in groups that are decided at once. An atom is in none until it has to be decided. */
class Groups {
  readonly #groupOf = new Map<Atom, Set<Atom>>();
  readonly #abouts = new Map<Atom, About>();

  has(atom: Atom): boolean {
    return this.#groupOf.has(atom);
  }

  areOne(a: Atom, b: Atom): boolean {
    return this.has(a) && this.#groupOf.get(a) === this.#groupOf.get(b);
  }

  /** Puts atoms, with all that hangs on them already, into one group. True when that was not so before. */
  unite(atoms: readonly Atom[], about: About): boolean {
    const [first] = atoms;
    if (first === undefined) return false;
    if (about.kind !== 'fields') this.#abouts.set(first, about);
    if (this.has(first) && atoms.every((atom) => this.areOne(first, atom))) return false;
    const all = new Set(atoms.flatMap((atom) => [...(this.#groupOf.get(atom) ?? [atom])]));
    for (const atom of all) this.#groupOf.set(atom, all);
    return true;
  }

  /** @param order all atoms in the order of the file. */
  inOrder(order: readonly Atom[]): readonly Undecided[] {
    const seen = new Set<Set<Atom>>();
    return order.flatMap((atom) => {
      const group = this.#groupOf.get(atom);
      if (group === undefined || seen.has(group)) return [];
      seen.add(group);
      const atoms = order.filter((each) => group.has(each));
      const abouts = atoms.flatMap((each) => this.#abouts.get(each) ?? []);
      const about = abouts.sort((a, b) => rank[a.kind] - rank[b.kind])[0] ?? { kind: 'fields' };
      return [{ atoms, about }];
    });
  }
}

/** Decides a bond whole where both sides changed some of it, or some of it is to be decided. */
function holdTogether({ atoms, about }: Bond, groups: Groups): boolean {
  const sides = new Set(atoms.map(changedBy));
  const isOpen = sides.size > 1 || sides.has(null) || atoms.some((atom) => groups.has(atom));
  return isOpen && groups.unite(atoms, about);
}

/** What refers on one side to a thing that the other side lacks. */
interface Reference {
  /** What brings the thing along, on one side. */
  readonly target: Atom;
  readonly from: Atom;
  readonly side: Side;
}

function referencesAmong(atoms: readonly Atom[]): readonly Reference[] {
  const targets = new Map<string, { readonly thing: OneSided; readonly target: Atom }[]>();
  for (const target of atoms)
    for (const thing of idsDefinedIn(target))
      targets.set(thing.id, [...(targets.get(thing.id) ?? []), { thing, target }]);
  if (targets.size === 0) return [];
  const sides = ['mine', 'theirs'] as const;
  return atoms.flatMap((from) =>
    sides.flatMap((side) =>
      [...wordsIn(from[side])].flatMap((word) =>
        (targets.get(word) ?? [])
          .filter(({ thing, target }) => {
            return target !== from && thing.side === side && isInScope(from.path, thing.scope);
          })
          .map(({ target }) => ({ target, from, side })),
      ),
    ),
  );
}

/**
 * Sees to it that what refers to a thing is never taken without the thing; and where it is to be decided whether a thing
 * goes, that what was changed or removed with it comes back with it.
 */
function holdReference({ target, from, side }: Reference, groups: Groups): boolean {
  const isOpen = groups.has(target);
  const isSurelyThere = !isOpen && changedBy(target) === side;
  const mayRefer = groups.has(from) || changedBy(from) === side;
  const wentWithIt = isOpen && target.base !== undefined;
  if (isSurelyThere || !(mayRefer || wentWithIt)) return false;
  return groups.unite([target, from], { kind: 'fields' });
}

/**
 * What a person has to decide: what both sides changed unlike, what one side removed and the other changed or refers to,
 * and all that belongs together with either. Whatever is decided, what refers to a thing comes with the thing.
 *
 * @param atoms all that is unlike, in the order of the file.
 */
export function undecidedOf(atoms: readonly Atom[], bonds: readonly Bond[]): readonly Undecided[] {
  const groups = new Groups();
  for (const atom of atoms) if (changedBy(atom) === null) groups.unite([atom], { kind: 'fields' });
  const references = referencesAmong(atoms);
  let goesOn = true;
  while (goesOn) {
    const held = bonds.map((bond) => holdTogether(bond, groups));
    const followed = references.map((reference) => holdReference(reference, groups));
    goesOn = held.includes(true) || followed.includes(true);
  }
  return groups.inOrder(atoms);
}
