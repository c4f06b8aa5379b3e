import { describe, expect, it } from 'vitest';
import { chaseDepth } from '#engine/rules/chase-depth.ts';
import type { Wall } from '#model/building.ts';
import { runOf, saidBy } from './facts-builder.ts';
import { houseOf, levelOf, uprightOf } from './house-builder.ts';

// 126 mm of wall less two coats of 13 mm leave a leaf of 100 mm; a 6 mm cable lies behind its depth.
const leaf100: Partial<Wall> = { thicknessMm: 126 };

describe('depth of chases', () => {
  it('[RT4] passes an upright chase of just under a third of the leaf', () => {
    const run = runOf('r', [uprightOf(1000, [0, 450], { depthMm: 40 })]);
    expect(saidBy(chaseDepth, houseOf({ wall: leaf100, runs: [run] }))).toMatchObject([
      { outcome: 'passes', actual: 33, limit: 33.3 },
    ]);
  });

  it('[RT4] leaves one just past a third to be decided', () => {
    const run = runOf('r', [uprightOf(1000, [0, 450], { depthMm: 41 })]);
    expect(saidBy(chaseDepth, houseOf({ wall: leaf100, runs: [run] }))).toMatchObject([
      { outcome: 'decide', messageId: 'tooDeep', actual: 34 },
    ]);
  });

  it('[RT4] allows a level chase a sixth only', () => {
    const level = (depthMm: number) =>
      saidBy(
        chaseDepth,
        houseOf({ wall: leaf100, runs: [runOf('r', [levelOf([500, 900], 450, { depthMm })])] }),
      );
    expect(level(23)).toMatchObject([{ outcome: 'passes', actual: 16, limit: 16.7 }]);
    expect(level(24)).toMatchObject([{ outcome: 'decide', actual: 17 }]);
  });

  it('[RT4] advises the limit where no depth is told', () => {
    expect(
      saidBy(chaseDepth, houseOf({ wall: leaf100, runs: [runOf('r', [uprightOf(1000, [0, 450])])] })),
    ).toMatchObject([{ outcome: 'advice', messageId: 'depthUnknown', limit: 33.3 }]);
  });

  it('[RT4] takes a thick wall for two leaves', () => {
    const run = runOf('r', [uprightOf(1000, [0, 450])]);
    expect(saidBy(chaseDepth, houseOf({ wall: { thicknessMm: 300 }, runs: [run] }))).toMatchObject([
      { limit: 33.3 },
    ]);
  });

  it('[RT4] warns of hollow blocks', () => {
    const run = runOf('r', [uprightOf(1000, [0, 450], { depthMm: 20 })]);
    expect(saidBy(chaseDepth, houseOf({ wall: { core: 'block' }, runs: [run] }))).toMatchObject([
      { outcome: 'advice', messageId: 'hollow' },
    ]);
  });

  it('[RT4] passes cable in the gap behind a board, and judges what the gap does not take', () => {
    const dabbed = (gapMm: number): Partial<Wall> => {
      const face = { finish: 'plasterboard', lining: 'dot-and-dab', gapMm } as const;
      return { core: 'block', faces: { left: face, right: face } };
    };
    const run = runOf('r', [uprightOf(1000, [0, 450], { depthMm: 19 })]);
    expect(saidBy(chaseDepth, houseOf({ wall: dabbed(12), runs: [run] }))).toMatchObject([
      { outcome: 'passes', messageId: 'spared' },
    ]);
    expect(saidBy(chaseDepth, houseOf({ wall: dabbed(11), runs: [run] }))).toMatchObject([
      { messageId: 'hollow', actual: 1 },
    ]);
  });

  it('[RT4] has nothing to say of studwork', () => {
    const run = runOf('r', [uprightOf(1000, [0, 450], { depthMm: 60 })]);
    expect(saidBy(chaseDepth, houseOf({ wall: { core: 'timber-stud' }, runs: [run] }))).toEqual([]);
  });
});
