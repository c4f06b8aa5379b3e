import type { Patch } from 'immer';
import { isSameData } from '#engine/plan/same-data.ts';
import { isGroup } from '../differences/list-keys.ts';

type Path = Patch['path'];

function betweenGroups(
  from: Readonly<Record<string, unknown>>,
  to: Readonly<Record<string, unknown>>,
  path: Path,
): Patch[] {
  const names = [...new Set([...Object.keys(from), ...Object.keys(to)])];
  return names.flatMap((name) => {
    const at = [...path, name];
    if (to[name] === undefined) return name in from ? [{ op: 'remove', path: at }] : [];
    if (from[name] === undefined) return [{ op: 'add', path: at, value: to[name] }];
    return patchesBetween(from[name], to[name], at);
  });
}

/**
 * What makes one state of a document of another, as steps of undo are kept. A list that is longer or shorter is replaced.
 *
 * @returns none where the two are alike.
 */
export function patchesBetween(from: unknown, to: unknown, path: Path = []): Patch[] {
  if (isSameData(from, to)) return [];
  if (isGroup(from) && isGroup(to)) return betweenGroups(from, to, path);
  if (Array.isArray(from) && Array.isArray(to) && from.length === to.length)
    return to.flatMap((one, index) => patchesBetween(from[index], one, [...path, index]));
  return [{ op: 'replace', path, value: to }];
}
