import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Storey } from '#model/building.ts';
import { cornerForLength, cornerLengths } from '../../../ui/house/corner-lengths.ts';
import { cornersOf } from '../../../ui/house/house-parts.ts';
import { lengthTyped, partLengths } from '../../../ui/house/part-lengths.ts';
import { reshape } from '../../../ui/house/reshape.ts';
import { demoJob } from '../../engine/demo-jobs/demo-estimates.ts';
import { drawingOf, sidesMm } from './drawn.ts';

const names = ['saltglass-row', 'fernlow-close', 'quarrel-court'] as const;

describe('the lengths at a corner', () => {
  it('are those of sides that end there, as measured inside', () => {
    const { storey } = drawingOf(structuredClone(demoJob('saltglass-row')));
    for (const corner of cornersOf(storey))
      for (const { room, lengthMm } of cornerLengths(storey, corner))
        expect(sidesMm(storey, room)).toContain(Math.round(lengthMm * 10) / 10);
    expect(cornerLengths(storey, [-90_000, 0])).toEqual([]);
  });

  it('are as typed once the corner has moved (random)', () => {
    let moved = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.nat(),
        fc.nat(),
        fc.integer({ min: -300, max: 300 }),
        (name, pick, which, moreMm) => {
          const drawing = drawingOf(structuredClone(demoJob(name)));
          const { storey } = drawing;
          const corners = cornersOf(storey);
          const at = corners[pick % corners.length] ?? [0, 0];
          const lengths = partLengths(storey, { part: 'corner', at });
          const length = lengths[which % Math.max(1, lengths.length)];
          fc.pre(length !== undefined && length.lengthMm !== null);
          const asked = Math.round((length.lengthMm ?? 0) + moreMm);
          const typed = lengthTyped(storey, { part: 'corner', at }, { id: length.id, mm: asked });
          fc.pre(typed.do === 'reshape');
          fc.pre(reshape(drawing, typed.asked).ok && typed.asked.part === 'corner');
          const to = typed.asked.part === 'corner' ? typed.asked.to : at;
          const now = cornerLengths(storey, to).find(({ wallId }) => wallId === length.id);
          // A wall that was parted by the move has another name for its rest.
          fc.pre(now !== undefined);
          moved += 1;
          expect(Math.abs((now?.lengthMm ?? 0) - asked)).toBeLessThan(0.3);
        },
      ),
      { numRuns: 80 },
    );
    expect(moved).toBeGreaterThan(20);
  });

  it('cannot be typed for a wall that is not there', () => {
    const { storey } = drawingOf(structuredClone(demoJob('saltglass-row')));
    const corner = (storey as Storey).walls[0]?.from ?? [0, 0];
    expect(cornerForLength(storey, corner, { wallId: 'nowhere', lengthMm: 1000 })).toBeNull();
  });
});
