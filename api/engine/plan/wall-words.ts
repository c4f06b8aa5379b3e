import type { Plan } from './plan.ts';

/**
 * What people call a wall, by the rooms that it looks into: "the wall of Kitchen", "the wall between Hall and
 * Living room"; "a wall of no named room" where no room lists it.
 */
export function wallWords(plan: Plan, wallId: string): string {
  const names = [...plan.roomById.values()]
    .filter(({ room }) => room.walls.some(({ wall }) => wall === wallId))
    .map(({ room }) => room.name);
  const [first, second] = [...new Set(names)].sort();
  if (first === undefined) return 'a wall of no named room';
  return second === undefined ? `the wall of ${first}` : `the wall between ${first} and ${second}`;
}

/** Several walls in words, each once, in the order of their words. */
export const wallsInWords = (plan: Plan, wallIds: readonly string[]): string =>
  [...new Set(wallIds.map((id) => wallWords(plan, id)))].sort().join(' and ');
