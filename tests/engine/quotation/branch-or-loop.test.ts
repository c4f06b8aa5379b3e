import { describe, expect, it } from 'vitest';
import { branchOrLoop, fedFromLoop } from '#engine/quotation/branch-or-loop.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { demoEstimate, demoNames, schemeOf } from '../demo-jobs/demo-estimates.ts';
import { offering, quoted } from './quoted.ts';

const letters = ['A', 'B', 'C'] as const;
const offeredOf = (...ids: readonly string[]) =>
  ids.map((id, i) => ({
    letter: letters[i] ?? 'A',
    scheme: schemeOf(demoEstimate('saltglass-row'), id),
  }));
/** The same scheme at another price. */
const at = (scheme: SchemeEstimate, grossPence: number): SchemeEstimate => ({
  ...scheme,
  totals: { ...scheme.totals, grossPence },
});
const HEADING = 'A branch cable, or the loop carried on?';

describe('how the loop feeds new points', () => {
  it.each(demoNames)('is in %s as its schemes join them, by what the job file says', (name) => {
    for (const scheme of demoEstimate(name).schemes) {
      const { points, schemes } = scheme.worked.job;
      const connections = schemes.find(({ id }) => id === scheme.id)?.connections ?? [];
      const through = connections.flatMap((one) => (one.kind === 'ring-extension' ? one.through : []));
      const spurs = connections.flatMap((one) => (one.kind === 'spur' ? [one] : []));
      const fromPoints = connections.flatMap((one) =>
        'from' in one && 'point' in one.from ? [one.from.point] : [],
      );
      const ids = points.map(({ id }) => id);
      const wiredAs = fedFromLoop(scheme);
      const inOrder = (some: readonly string[]): readonly string[] => ids.filter((id) => some.includes(id));
      expect([scheme.id, wiredAs.inLoop]).toEqual([scheme.id, inOrder(through)]);
      expect([scheme.id, wiredAs.takeMore]).toEqual([
        scheme.id,
        inOrder(through.filter((id) => !fromPoints.includes(id))),
      ]);
      // What hangs behind a fused unit is a spur of no ring, and a unit is fed on its supply side.
      expect(spurs.map(({ to }) => to)).toEqual(expect.arrayContaining([...wiredAs.onBranch]));
    }
  });
});

describe('a branch against the loop', () => {
  it('is weighed where one option has the one and another the other, with what the loop costs more', () => {
    const { paper } = quoted(offering('saltglass-row', { schemes: ['spurs-rcbo', 'ring-to-w2'] }));
    const [passage, ...more] = paper.weighed;
    expect(more).toEqual([]);
    expect(passage?.heading).toBe(HEADING);
    const [branch, loop, price] = passage?.paragraphs ?? [];
    expect(branch).toMatch(/^On a branch: W2 in Option A\. .*without a fuse/);
    expect(loop).toMatch(
      /^In the loop: W2 in Option B\. .*Later one more socket can be branched off there\.$/,
    );
    const [a, b] = paper.schemes.map(({ price: { grossPence } }) => grossPence);
    const morePounds = (((b ?? 0) - (a ?? 0)) / 100).toFixed(2);
    expect(price).toContain(`Option B comes to £${morePounds} more than Option A in all`);
    expect(price).toContain('if you may want another socket near W2 one day');
  });

  it('stands in the table too, so that the columns differ where the wiring does', () => {
    const { paper } = quoted(offering('saltglass-row', { schemes: ['spurs-rcbo', 'ring-to-w2'] }));
    const row = paper.compared.find(({ what }) => what === 'What feeds the new points');
    expect(row?.cells[0]).toContain('W1, W2 and W3 on branches: with the rest of their circuit');
    expect(row?.cells[1]).toContain('W1 and W3 on branches, W2 in the loop: with the rest of their circuit');
  });

  it('is not weighed where no point is fed by both', () => {
    expect(branchOrLoop(offeredOf('spurs-rcbo'))).toEqual([]);
    expect(branchOrLoop(offeredOf('spurs-rcbo', 'fused-beds'))).toEqual([]);
    expect(branchOrLoop([])).toEqual([]);
  });

  it('says nothing of paying more where the loop is no dearer', () => {
    const [a, b] = offeredOf('spurs-rcbo', 'ring-to-w2');
    const worth = (loopPence: number): string | undefined =>
      branchOrLoop([
        { letter: 'A', scheme: at(a?.scheme ?? expect.fail(), 90_000) },
        { letter: 'B', scheme: at(b?.scheme ?? expect.fail(), loopPence) },
      ])[0]?.paragraphs.at(-1);
    expect(worth(90_000)).toContain('Option B comes to as much as Option A');
    expect(worth(89_000)).toContain('Option B comes to £10.00 less than Option A');
    for (const pence of [89_000, 90_000]) expect(worth(pence)).not.toContain('worth paying');
    expect(worth(90_001)).toContain('worth paying');
  });

  it('sets the loop against the cheapest branch, beside the fuse against the loop', () => {
    const [a, b, c] = offeredOf('spurs-rcbo', 'off-spur-1', 'ring-to-w2');
    const passage = branchOrLoop([
      { letter: 'A', scheme: at(a?.scheme ?? expect.fail(), 95_000) },
      { letter: 'B', scheme: at(b?.scheme ?? expect.fail(), 90_000) },
      { letter: 'C', scheme: at(c?.scheme ?? expect.fail(), 100_000) },
    ])[0];
    expect(passage?.paragraphs.at(-1)).toContain('Option C comes to £100.00 more than Option B');
    const three = quoted(
      offering('saltglass-row', { schemes: ['spurs-rcbo', 'fused-beds', 'ring-to-w2'] }),
    ).paper;
    expect(three.weighed.map(({ heading }) => heading)).toEqual([
      'One fuse for the new sockets, or the loop carried on?',
      HEADING,
    ]);
    // W1 and W3 are on branches in Option C: nothing can be branched off them.
    expect(three.weighed[0]?.paragraphs[1]).toMatch(/One more socket can be branched off W2 later\.$/);
  });
});
