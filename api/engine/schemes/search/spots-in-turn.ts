import { inIdOrder } from '../../circuit/id-order.ts';
import type { SchemeColumn } from './scheme-column.ts';

const nameOf = ({ kind, mask }: SchemeColumn): string => `${kind} ${mask}`;

/** By kind and points the least of some columns, of those alike the first. */
function leastOf(columns: Iterable<SchemeColumn>): readonly SchemeColumn[] {
  const best = new Map<string, SchemeColumn>();
  for (const column of columns) {
    const so = best.get(nameOf(column));
    if (so === undefined || column.cost < so.cost) best.set(nameOf(column), column);
  }
  return [...best.values()];
}

/**
 * Of columns that differ in where a leg is cut, for each set of points by each kind the least, with the others in turn after
 * it. The others are kept by nobody until a rule bars the least: then they are made anew, all of the leg at once.
 *
 * @param least the least of each kind and set, or among what they are.
 * @param all every one of them; the same each time.
 */
export function spotsInTurn(
  least: Iterable<SchemeColumn>,
  all: () => Iterable<SchemeColumn>,
): readonly SchemeColumn[] {
  let others: ReadonlyMap<string, readonly SchemeColumn[]> | null = null;
  const othersOf = (first: SchemeColumn): readonly SchemeColumn[] => {
    others ??= byName([...all()].toSorted(inCostOrder));
    return (others.get(nameOf(first)) ?? []).filter(({ key }) => key !== first.key);
  };
  return leastOf(least).map((first) => inTurn(first, () => othersOf(first)));
}

/** A column with others in turn after it, which are made when the first of them is asked for. */
export function inTurn(first: SchemeColumn, others: () => readonly SchemeColumn[]): SchemeColumn {
  const rest = once(others);
  const from = (column: SchemeColumn, place: number): SchemeColumn => ({
    ...column,
    next: once(() => {
      const other = rest()[place];
      return other === undefined ? null : from(other, place + 1);
    }),
  });
  return from(first, 0);
}

/** A column and all in turn after it, each changed alike. */
export function eachInTurn(
  column: SchemeColumn,
  change: (column: SchemeColumn) => SchemeColumn,
): SchemeColumn {
  const { next } = column;
  const changed = change(column);
  if (next === undefined) return changed;
  return {
    ...changed,
    next: once(() => {
      const other = next();
      return other === null ? null : eachInTurn(other, change);
    }),
  };
}

function byName(columns: readonly SchemeColumn[]): ReadonlyMap<string, readonly SchemeColumn[]> {
  const groups = new Map<string, SchemeColumn[]>();
  for (const column of columns) {
    const group = groups.get(nameOf(column)) ?? [];
    groups.set(nameOf(column), group);
    group.push(column);
  }
  return groups;
}

const inCostOrder = (a: SchemeColumn, b: SchemeColumn): number => a.cost - b.cost || inIdOrder(a.key, b.key);

/** Works something out when it is first asked for, and keeps it. */
export function once<V>(work: () => V): () => V {
  let known: { readonly value: V } | null = null;
  return () => {
    known ??= { value: work() };
    return known.value;
  };
}
