import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isSameData } from '#engine/plan/same-data.ts';

/** The same value with the keys of every object turned round. */
function turnedRound(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(turnedRound);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, one]) => [key, turnedRound(one)]);
  return Object.fromEntries(entries.reverse());
}

/** The text of a value with the keys of every object in order. */
const inOrder = (value: unknown): string =>
  JSON.stringify(value, (_key, one) =>
    typeof one === 'object' && one !== null && !Array.isArray(one)
      ? Object.fromEntries(Object.entries(one).sort(([a], [b]) => (a < b ? -1 : 1)))
      : one,
  );

const json = fc.jsonValue({ noUnicodeString: false }).map((value) => JSON.parse(JSON.stringify(value)));

describe('the same data', () => {
  it('is what differs in the order of keys alone', () => {
    fc.assert(fc.property(json, (value) => isSameData(value, turnedRound(value))));
  });

  it('is what has the same text once the keys are in order', () => {
    const small = fc.jsonValue({ maxDepth: 2 }).map((value) => JSON.parse(JSON.stringify(value)));
    fc.assert(
      fc.property(small, small, (a, b) => isSameData(a, b) === (inOrder(a) === inOrder(b))),
      { numRuns: 2000 },
    );
  });

  it.each([
    [{ a: 1 }, { a: 1, b: undefined }, true],
    [{ a: 1 }, { a: 1, b: null }, false],
    [{ a: 1 }, { a: 2 }, false],
    [[1, 2], [2, 1], false],
    [[1], [1, 2], false],
    [[], {}, false],
    [{ 0: 'a' }, ['a'], false],
    [null, {}, false],
  ])('of %o and %o: %s', (a, b, same) => {
    expect(isSameData(a, b)).toBe(same);
    expect(isSameData(b, a)).toBe(same);
  });
});
