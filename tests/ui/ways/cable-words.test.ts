import { describe, expect, it } from 'vitest';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { connectionOf } from '../../../ui/edits/joined-by.ts';
import { cablesTo, cableWords } from '../../../ui/elements/ways/cable-words.ts';

const fernlow = demoEstimate('fernlow-close');

function wordsIn(schemeId: string, pointId: string, estimate = fernlow): string {
  const { runs, worked } = schemeOf(estimate, schemeId);
  const connection = worked.scheme === null ? null : connectionOf(worked.scheme, pointId);
  return connection === null ? 'not joined' : cableWords(runs, connection, pointId);
}
const lengthsIn = (words: string): readonly number[] =>
  [...words.matchAll(/(\d+\.\d\d) m/g)].map(([, length]) => Number(length));
const total = (estimate: typeof fernlow, schemeId: string): number =>
  schemeOf(estimate, schemeId).runs.reduce((sum, { lengthMm }) => sum + (lengthMm ?? 0), 0) / 1000;

describe('the cable to a point in words', () => {
  it('tells of the unit on the way to the first point behind it', () => {
    expect(wordsIn('fused-unit', 'b1-kitchen')).toMatch(/^5\.\d\d m to the unit, 1\.\d\d m on$/);
    expect(wordsIn('fused-unit', 'b2-kitchen')).toMatch(/^1\.\d\d m of cable$/);
  });

  it('tells of the way back to the ring at the last point', () => {
    expect(wordsIn('ring-to-b3', 'b1-kitchen')).toMatch(/^\d\.\d\d m$/);
    expect(wordsIn('ring-to-b3', 'b3-kitchen')).toMatch(/^\d\.\d\d m, \d\.\d\d m back$/);
  });

  it('tells both ways of a ring that goes out to one point and back', () => {
    const terrace = demoEstimate('saltglass-row');
    const carried = terrace.schemes.find(({ worked }) =>
      worked.scheme?.connections.some((one) => one.kind === 'ring-extension' && one.through.length === 1),
    );
    const ring = carried?.worked.scheme?.connections.find(({ kind }) => kind === 'ring-extension');
    if (carried === undefined || ring?.kind !== 'ring-extension')
      throw new Error('no ring goes to one point');
    expect(wordsIn(carried.id, ring.through[0] ?? '', terrace)).toMatch(/^\d\.\d\d m, \d\.\d\d m back$/);
  });

  it.each(['fused-unit', 'ring-to-b3', 'no-fuse-b3', 'new-radial'])(
    'accounts for every metre of the scheme: %s',
    (id) => {
      const told = ['b1-kitchen', 'b2-kitchen', 'b3-kitchen'].flatMap((pointId) =>
        lengthsIn(wordsIn(id, pointId)),
      );
      // Each of the four or five runs is rounded to a centimetre.
      expect(told.reduce((sum, length) => sum + length, 0)).toBeCloseTo(total(fernlow, id), 1);
    },
  );

  it.each(['fused-unit', 'ring-to-b3', 'no-fuse-b3', 'new-radial'])(
    'is made of the cables that are told step by step, each at one point: %s',
    (id) => {
      const { runs, worked } = schemeOf(fernlow, id);
      const told = ['b1-kitchen', 'b2-kitchen', 'b3-kitchen'].flatMap((pointId) => {
        const connection = worked.scheme === null ? null : connectionOf(worked.scheme, pointId);
        return connection === null ? [] : cablesTo(runs, connection, pointId);
      });
      expect(told.map((run) => run.id).toSorted()).toEqual(runs.map((run) => run.id).toSorted());
      for (const { steps } of told) expect(steps.length).toBeGreaterThan(0);
    },
  );

  it('says so where a length is not known', () => {
    const { runs, worked } = schemeOf(fernlow, 'new-radial');
    const connection = worked.scheme === null ? null : connectionOf(worked.scheme, 'b1-kitchen');
    if (connection === null) throw new Error('B1 is not joined');
    const unknown = runs.map((run) => ({ ...run, lengthMm: null }));
    expect(cableWords(unknown, connection, 'b1-kitchen')).toBe('cable of a typical length');
    expect(cableWords([], connection, 'b1-kitchen')).toBe('');
  });
});
