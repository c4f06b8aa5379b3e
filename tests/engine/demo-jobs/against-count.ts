import { describe, expect, it } from 'vitest';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { CountedLine } from './counted-line.ts';

/** A line on which the product and the count part, each having its reasons: what the product says, and whose reading it is. */
export interface Argued {
  readonly measured: number;
  readonly why: string;
}

/** Where a scheme's take-off and its count by hand do not meet. */
export interface Differences {
  /** By the count's words: differences that may stand, pinned to the product's figure. */
  readonly argued: Readonly<Record<string, Argued>>;
  /** By the count's words: where the product is wrong, and why. Such a line fails on purpose, and is to be struck off here once mended. */
  readonly wrong: Readonly<Record<string, string>>;
  /** Items of the catalogue that the product lists and the hand did not, and why. */
  readonly uncounted: Readonly<Record<string, string>>;
}

/** What a count holds that is work, no thing to buy: by its words, what the product says of it. */
const work: Readonly<Record<string, (scheme: SchemeEstimate) => number>> = {
  'Chipboard trap': ({ labour }) =>
    labour
      .filter(({ task }) => task === 'chipboard-trap' || task === 'open-fixed-floor')
      .reduce((sum, { quantity }) => sum + quantity, 0),
  'Joist hole': ({ runs }) =>
    runs.flatMap(({ segments }) => segments).reduce((sum, { joistsCrossed }) => sum + joistsCrossed, 0),
};

/** Whether a count's id means an item; one that ends in a dash stands for all of its sizes and kinds. */
const means = (id: string | null, item: string): boolean =>
  id !== null && (id.endsWith('-') ? item.startsWith(id) : item === id);

function measuredOf(scheme: SchemeEstimate, { item, id }: CountedLine): number {
  const asWork = work[item];
  if (asWork !== undefined) return asWork(scheme);
  return scheme.takeoff
    .filter((line) => means(id, line.item))
    .reduce((sum, { measured }) => sum + measured, 0);
}

/** Both have the thing or neither has, and as much of it as the count allows. */
function expectAgreed(scheme: SchemeEstimate, line: CountedLine): void {
  const measured = measuredOf(scheme, line);
  expect([line.item, measured > 0]).toEqual([line.item, line.quantity > 0]);
  expect(Math.abs(measured - line.quantity), line.why ?? line.item).toBeLessThanOrEqual(line.within + 1e-9);
}

/** Compares a scheme's take-off with a count by hand, line by line and both ways round. */
export function describeAgainstCount(
  name: string,
  scheme: SchemeEstimate,
  count: readonly CountedLine[],
  { argued, wrong, uncounted }: Differences,
): void {
  describe(`${name} against a count by hand`, () => {
    for (const line of count) {
      const { item } = line;
      const difference = argued[item];
      if (difference !== undefined)
        it(`has its reasons about: ${item}`, () => {
          expect(measuredOf(scheme, line), difference.why).toBeCloseTo(difference.measured, 9);
          expect(() => expectAgreed(scheme, line)).toThrow();
        });
      else if (item in wrong) it.fails(`is wrong about: ${item}`, () => expectAgreed(scheme, line));
      else it(`agrees about: ${item}`, () => expectAgreed(scheme, line));
    }

    it('lists nothing that the hand did not count, but what is told here', () => {
      const beyond = scheme.takeoff.filter(({ item }) => !count.some(({ id }) => means(id, item)));
      expect(beyond.map(({ item }) => item).toSorted()).toEqual(Object.keys(uncounted).toSorted());
    });

    it('tells differences only of lines that were counted, and a reason with every tolerance', () => {
      const words = count.map(({ item }) => item);
      expect([...Object.keys(argued), ...Object.keys(wrong)].filter((item) => !words.includes(item))).toEqual(
        [],
      );
      expect(count.filter(({ within, why }) => within > 0 && why === null)).toEqual([]);
      expect(new Set(words).size).toBe(words.length);
    });
  });
}

/** What is paid for of an item, in its unit. */
export const boughtOf = ({ price }: SchemeEstimate, item: string): number | undefined =>
  price.bill.find((line) => line.item === item)?.chargedQuantity;
