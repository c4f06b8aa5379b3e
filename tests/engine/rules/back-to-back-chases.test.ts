import { describe, expect, it } from 'vitest';
import { backToBackChases } from '#engine/rules/back-to-back-chases.ts';
import { runOf, saidBy } from './facts-builder.ts';
import { houseOf, uprightOf } from './house-builder.ts';

const facts = (alongMm: number, side: 'left' | 'right') =>
  houseOf({
    runs: [runOf('a', [uprightOf(1000, [0, 450])]), runOf('b', [uprightOf(alongMm, [0, 450], { side })])],
  });

const said = (alongMm: number, side: 'left' | 'right' = 'right') =>
  saidBy(backToBackChases, facts(alongMm, side));

describe('chases on the two faces of a wall', () => {
  it('[RT5] leaves opposite chases to be decided', () => {
    expect(said(1149)).toMatchObject([{ outcome: 'decide', subjectId: 'a', messageId: 'opposite' }]);
  });

  it('[RT5] names cables by both ends, since two may come to one point', () => {
    const [result] = backToBackChases.check(facts(1000, 'right'));
    expect(result?.values?.names).toMatch(/^from \S.* to \S.* and from \S.* to \S/);
  });

  it('[RT5] speaks of one cable where the same is chased into both faces', () => {
    const both = runOf('a', [uprightOf(1000, [0, 450]), uprightOf(1000, [0, 450], { side: 'right' })]);
    const [result, ...others] = backToBackChases.check(houseOf({ runs: [both] }));
    expect(result).toMatchObject({ outcome: 'decide', subjectId: 'a', messageId: 'twice' });
    expect(result?.values?.names).toMatch(/^from \S+ to \S+$/);
    expect(others).toEqual([]);
  });

  it('[RT5] is silent where the cables lie in the gaps behind boards, and the masonry is whole', () => {
    const inGaps = (gapMm: number) => {
      const face = { finish: 'plasterboard', lining: 'dot-and-dab', gapMm } as const;
      const upright = (side: 'left' | 'right') => uprightOf(1000, [0, 450], { side, depthMm: 19 });
      return houseOf({
        wall: { core: 'block', faces: { left: face, right: face } },
        runs: [runOf('a', [upright('left')]), runOf('b', [upright('right')])],
      });
    };
    expect(saidBy(backToBackChases, inGaps(15))).toEqual([]);
    expect(saidBy(backToBackChases, inGaps(5))).toMatchObject([{ messageId: 'opposite' }]);
  });

  it('[RT5] is silent from 150 mm apart, and on one face', () => {
    expect(said(1150)).toEqual([]);
    expect(said(1000, 'left')).toEqual([]);
  });
});
