import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { traceRoom } from '../../../ui/edits/house.ts';
import { newJob } from '../../../ui/edits/new-job.ts';
import { usualOuter } from '../../../ui/house/wall-kinds.ts';
import { rectangle, sidesMm } from './drawn.ts';

const empty = newJob({ reference: 'T', title: 'T', terms: { labour: 'typical', vat: 'standard' } });

/** Two rooms traced one after the other beside each other, with so much between them; or why the second is refused. */
function traced(gapMm: number, [wide, deep]: readonly [number, number] = [3000, 6000]) {
  const storeyId = empty.storeys[0]?.id ?? '';
  const first = traceRoom(empty, storeyId, {
    name: 'First',
    use: 'living',
    walls: usualOuter,
    corners: rectangle([0, 0], 4900, 6000),
  });
  if (!first.ok) throw new Error(first.why);
  const one = produce(empty, (draft) => first.edit.change(draft));
  const second = traceRoom(one, storeyId, {
    name: 'Second',
    use: 'dining',
    walls: usualOuter,
    corners: rectangle([4900 + gapMm, 0], wide, deep),
  });
  if (!second.ok) return second.why;
  const storey = produce(one, (draft) => second.edit.change(draft)).storeys[0];
  if (storey === undefined) throw new Error('The storey is gone.');
  const own = (name: string) =>
    new Set(storey.rooms.find((room) => room.name === name)?.walls.map(({ wall }) => wall));
  const shared = storey.walls.filter(({ id }) => own('First').has(id) && own('Second').has(id));
  return { storey, shared };
}

describe('a wall between two rooms that are traced', () => {
  it('is as thick as the picture shows, and both rooms keep their measures', () => {
    const made = traced(100);
    if (typeof made === 'string') throw new Error(made);
    expect(made.shared.map(({ thicknessMm }) => thicknessMm)).toEqual([100]);
    expect(sidesMm(made.storey, 'First').toSorted()).toEqual([4900, 4900, 6000, 6000]);
    expect(sidesMm(made.storey, 'Second').toSorted()).toEqual([3000, 3000, 6000, 6000]);
  });

  it('is one wall of any thickness from a partition to an outer wall, whatever the second room is (random)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 60, max: usualOuter.thicknessMm - 40 }),
        fc.integer({ min: 1500, max: 6000 }),
        (gapMm, wideMm) => {
          const made = traced(gapMm, [wideMm, 6000]);
          if (typeof made === 'string') throw new Error(made);
          expect(made.shared).toHaveLength(1);
          // Within the thickness of a tap's own doubt the side is meant on the face that is drawn.
          const [thick] = made.shared;
          const taken = [gapMm, usualOuter.thicknessMm].some(
            (mm) => Math.abs((thick?.thicknessMm ?? 0) - mm) <= 1,
          );
          expect(taken, `${thick?.thicknessMm} for ${gapMm}`).toBe(true);
          expect(sidesMm(made.storey, 'First').toSorted()).toEqual([4900, 4900, 6000, 6000]);
        },
      ),
      { seed: 20_261_127, numRuns: 40 },
    );
  });

  it('is no wall where the rooms all but touch: the second is refused, and it is said where', () => {
    expect(traced(5)).toMatch(
      /^An outer wall that is drawn already would run through Second, over its left side: make/,
    );
  });
});
