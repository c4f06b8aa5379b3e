import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { planPoint } from '#engine/plan/plane.ts';
import { readJob } from '#model/read-job.ts';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setLegWay } from '../../../ui/edits/leg-ways.ts';
import { begun, type DrawnWay, drawnWay } from '../../../ui/way-drawing/way-draft.ts';
import { drawn, ledOn, meant } from './draw.ts';

/** What a hand may do, by numbers: where on the plan, or up, down, through, to another height, back. */
const hand = fc.record({
  does: fc.constantFrom('corner', 'corner', 'up', 'down', 'through', 'height', 'take-back'),
  x: fc.integer({ min: -500, max: 12_000 }),
  y: fc.integer({ min: -500, max: 12_000 }),
  heightMm: fc.integer({ min: 50, max: 2300 }),
});
type Hand = typeof hand extends fc.Arbitrary<infer T> ? T : never;

function led(way: DrawnWay, { does, x, y, heightMm }: Hand, worked: Parameters<typeof drawn>[0]): DrawnWay {
  switch (does) {
    case 'corner': {
      const { waypoints, whyNot } = meant(way, planPoint(x, y), { worked });
      expect(waypoints.length === 0).toBe(whyNot !== null);
      return whyNot === null ? ledOn(way, [{ do: 'corner', waypoints }], worked) : way;
    }
    case 'height':
      return ledOn(way, [{ do: 'height', heightMm }], worked);
    case 'take-back':
      return ledOn(way, [{ do: 'take-back' }], worked);
    default:
      return ledOn(way, [{ do: 'move', by: does as 'up' | 'down' | 'through' }], worked);
  }
}

describe('any way that a hand draws', () => {
  it.each(demoNames)(
    'is where it was drawn, in walls and voids, and the job stays readable, in %s',
    (name) => {
      const { worked } = demoEstimate(name).asFound;
      const legs = worked.job.legs.filter(({ id }) => {
        const way = drawnWay(worked, begun({ what: 'leg', legId: id }, []));
        return way?.from.onWall !== undefined && way.to.onWall !== undefined;
      });
      // A quoting visit records no cable.
      if (legs.length === 0) return;
      fc.assert(
        fc.property(fc.nat(legs.length - 1), fc.array(hand, { maxLength: 8 }), (at, hands) => {
          const legId = legs[at]?.id ?? '';
          const start = drawn(worked, begun({ what: 'leg', legId }, []));
          const way = hands.reduce((now, one) => led(now, one, worked), start);
          const pinned = way.segments.filter(({ certainty }) => certainty === 'pinned');
          // To the millimetre of a corner.
          const drawnMm = pinned.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
          expect(Math.abs(drawnMm - way.drawnMm)).toBeLessThan(0.02 * (way.via.length + 1));
          for (const { medium, direction } of pinned) {
            expect(medium).not.toBe('surface-clipped');
            expect(direction).not.toBe('sloping');
          }
          const { change } = setLegWay(legId, 'it', { via: way.via, certainty: 'assumed' });
          expect(readJob(produce(worked.job, (draft) => change(draft)))).toMatchObject({ ok: true });
        }),
        { numRuns: 60, seed: 7 },
      );
    },
  );
});
