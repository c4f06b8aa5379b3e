import { describe, expect, it } from 'vitest';
import { spurLength } from '#engine/rules/spur-length.ts';
import { estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { ringOf, type Wire, wiredJob } from '../proof/wired-job.ts';

/** What is said of the spurs of a 60 m ring whose points stand 15 m apart. */
const said = (spurs: readonly Wire[]) =>
  estimateOf(wiredJob([...ringOf([15, 15, 15, 15]), ...spurs])).asFound.findings.filter(
    ({ rule }) => rule === spurLength.id,
  );

describe('an unfused spur against its ring', () => {
  // An eighth of the way from the spur's start to the middle of the ring: 15 m from p1, so 1.875 m (worked out by hand).
  it('[SP6] is silent up to an eighth of the way to the furthest point, and advises beyond', () => {
    expect(said([{ from: 'p1', to: 'p9', lengthM: 1.875 }])).toEqual([]);
    expect(said([{ from: 'p1', to: 'p9', lengthM: 1.88 }])).toMatchObject([
      { outcome: 'advice', subject: 'p9', actual: 1.88, limit: 1.88, origin: 'found' },
    ]);
  });

  // 30 m to the middle from the board: 3.75 m; none at the middle itself (worked out by hand).
  it('[SP6] allows most at the board and nothing in the middle', () => {
    expect(said([{ from: 'c', to: 'p9', lengthM: 3.75 }])).toEqual([]);
    expect(said([{ from: 'c', to: 'p9', lengthM: 3.8 }])).toMatchObject([{ subject: 'p9', limit: 3.75 }]);
    expect(said([{ from: 'p2', to: 'p9', lengthM: 0.5 }])).toMatchObject([{ subject: 'p9', limit: 0 }]);
  });

  it('[SP6] says nothing of spurs to fused units', () => {
    expect(said([{ from: 'p1', to: 'u1', lengthM: 9 }])).toEqual([]);
  });
});
