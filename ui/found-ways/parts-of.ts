import { isSameData } from '#engine/plan/same-data.ts';

/**
 * A copy of data, with each of its parts that is as it was replaced by what it was: the value of a key, or one thing in a
 * list. What remembers things by the object then knows them again. Where nothing differs it is the earlier data itself.
 */
export function withPartsOf<T extends object>(now: T, before: T): T {
  const keys = [...new Set([...Object.keys(now), ...Object.keys(before)])] as (keyof T)[];
  const parts = keys.map((key) => [key, partOf(now[key], before[key])] as const);
  if (parts.every(([key, part]) => part === before[key])) return before;
  return { ...now, ...Object.fromEntries(parts.filter(([key]) => key in now)) };
}

function partOf(now: unknown, before: unknown): unknown {
  if (isSameData(now, before)) return before;
  if (!Array.isArray(now) || !Array.isArray(before)) return now;
  return now.map((one, i) => (isSameData(one, before[i]) ? before[i] : one));
}
