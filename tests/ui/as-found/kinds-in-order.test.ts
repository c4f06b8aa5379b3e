import fc from 'fast-check';
import { expect, it } from 'vitest';
import { pointKind } from '#model/installation.ts';
import { kindsInOrder } from '../../../ui/elements/as-found/kinds-in-order.ts';

const points = fc.array(
  fc.record({
    kind: fc.constantFrom(...pointKind.options),
    status: fc.constantFrom('existing', 'wanted'),
  } as const),
);

it('offers every kind once, the last that was found first', () => {
  fc.assert(
    fc.property(points, (all) => {
      const kinds = kindsInOrder(all);
      expect(kinds.toSorted()).toEqual(pointKind.options.toSorted());
      const last = all.findLast(({ status }) => status !== 'wanted');
      expect(kinds[0]).toBe(last?.kind ?? 'socket-twin');
    }),
  );
});
