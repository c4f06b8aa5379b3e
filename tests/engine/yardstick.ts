/**
 * A fixed piece of work of the engine's sort: small objects, maps, sorting and floating point. Times are told as multiples of
 * it, run by turns with what is measured, so that a slow or busy machine weighs on both alike.
 *
 * @returns a figure that hangs on all of it, so that none is left out.
 */
export function yardstick(): number {
  let state = 1;
  const next = (): number => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return state;
  };
  let sum = 0;
  for (let round = 0; round < 12; round += 1) sum += oneRound(next);
  return sum;
}

interface Kept {
  readonly x: number;
  readonly list: readonly number[];
}

function oneRound(next: () => number): number {
  const things = Array.from({ length: 8000 }, (_, y) => ({ id: `t${next() % 4000}`, x: next() / 7, y }));
  const byId = new Map<string, Kept>();
  for (const { id, x, y } of things) {
    const old = byId.get(id);
    byId.set(id, old === undefined ? { x, list: [y] } : { x: old.x + x, list: [...old.list, y] });
  }
  return [...byId.entries()]
    .toSorted(([idA, a], [idB, b]) => a.x - b.x || (idA < idB ? -1 : 1))
    .reduce((sum, [, { x, list }], place) => sum + Math.hypot(x, list.length * place), 0);
}
