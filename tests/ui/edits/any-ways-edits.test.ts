import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { joinedBy } from '../../../ui/edits/joined-by.ts';
import { pointsBehind } from '../../../ui/edits/points-behind.ts';
import { afterWayEdits, houses, wayEditSequence } from './any-way-edits.ts';
import { faultsOf } from './random-edits.ts';

describe.each(houses)('any edits of the schemes of $name', (house) => {
  it('leave a job that the reader takes, in which no point is joined twice and no lock is of nothing', () => {
    fc.assert(
      fc.property(wayEditSequence, (list) => {
        const job = afterWayEdits(house, list);
        expect(faultsOf(job)).toEqual([]);
        for (const { connections, locks } of job.schemes) {
          const joined = connections.flatMap(joinedBy);
          expect(new Set(joined).size).toBe(joined.length);
          const ids = connections.map(({ id }) => id);
          expect(locks.filter((id) => !ids.includes(id))).toEqual([]);
        }
      }),
      { numRuns: 120 },
    );
  }, 60_000);

  it('never lead a point’s supply back to itself', () => {
    fc.assert(
      fc.property(wayEditSequence, (list) => {
        for (const scheme of afterWayEdits(house, list).schemes)
          for (const connection of scheme.connections) {
            if (connection.kind !== 'spur' && connection.kind !== 'fused-spur') continue;
            if (!('point' in connection.from)) continue;
            const own = joinedBy(connection);
            expect(own).not.toContain(connection.from.point);
            expect([...pointsBehind(scheme, own)]).not.toContain(connection.from.point);
          }
      }),
      { numRuns: 120 },
    );
  }, 60_000);

  it('leave a job that can be estimated', () => {
    fc.assert(
      fc.property(wayEditSequence, (list) => {
        const job = afterWayEdits(house, list);
        expect(estimateOf(job).schemes.map(({ id }) => id)).toEqual(job.schemes.map(({ id }) => id));
      }),
      { numRuns: 8 },
    );
  }, 90_000);
});
