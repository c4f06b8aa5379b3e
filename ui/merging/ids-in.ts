import { isGroup } from '../differences/list-keys.ts';
import type { Atom, Side } from './three-states.ts';

/** A word in a value, with the field that holds it and the lists and groups that it lies in. */
interface FoundWord {
  readonly word: string;
  readonly path: readonly string[];
}

/** Every word in a value, at any depth. */
function foundWords(value: unknown, path: readonly string[] = []): readonly FoundWord[] {
  if (typeof value === 'string') return [{ word: value, path }];
  if (Array.isArray(value)) return value.flatMap((one) => foundWords(one, path));
  if (!isGroup(value)) return [];
  return Object.entries(value).flatMap(([name, one]) => foundWords(one, [...path, name]));
}

/** All words in a value: whatever refers to a thing has its id among them. */
export const wordsIn = (value: unknown): ReadonlySet<string> =>
  new Set(foundWords(value).map(({ word }) => word));

/** A thing that only one of the two sides has. */
export interface OneSided {
  readonly id: string;
  /** Where its id holds: the key of its scheme for a connection, else everywhere. */
  readonly scope: string;
  readonly side: Side;
}

/** Whether what lies at a path can mean a thing by its id that holds in a scope. */
export const isInScope = ([top, scheme]: readonly string[], scope: string): boolean =>
  scope === '' || (top === 'schemes' && scheme === scope);

/** The things that an atom brings along on one side and lacks on the other, itself among them; none where both have it. */
export function idsDefinedIn({ path, mine, theirs }: Atom): readonly OneSided[] {
  if ((mine === undefined) === (theirs === undefined)) return [];
  const side = mine === undefined ? 'theirs' : 'mine';
  const [top, scheme = ''] = path;
  return foundWords(mine ?? theirs, path)
    .filter(({ path: at }) => at.at(-1) === 'id')
    .map(({ word: id, path: at }) => ({
      id,
      scope: top === 'schemes' && at.includes('connections') ? scheme : '',
      side,
    }));
}
