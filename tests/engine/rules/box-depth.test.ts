import { describe, expect, it } from 'vitest';
import type { BackBox } from '#engine/connections/things.ts';
import { boxDepth } from '#engine/rules/box-depth.ts';
import { boxOf, factsOf, saidBy } from './facts-builder.ts';

const said = (partial: Partial<BackBox>) =>
  saidBy(boxDepth, factsOf({ things: { boxes: [boxOf('p', partial)] } }));
const found = { state: 'found', minimumDepthMm: 35, preferredDepthMm: 35, cables: 3 } as const;

describe('depth of back boxes', () => {
  it('[BX1] passes a box found of exactly the depth wanted', () => {
    expect(said({ ...found, action: 'keep', foundDepthMm: 35 })).toMatchObject([
      { outcome: 'passes', messageId: 'enough', actual: 35, limit: 35 },
    ]);
  });

  it('[BX1] leaves one just too shallow to be decided, with the exchange as remedy', () => {
    expect(said({ ...found, action: 'keep', foundDepthMm: 34, depthMm: 34 })).toMatchObject([
      { outcome: 'decide', messageId: 'tooShallow', fix: { kind: 're-box', at: 'p' } },
    ]);
  });

  it('[BX1] passes once it is exchanged', () => {
    expect(said({ ...found, action: 're-box', foundDepthMm: 25, depthMm: 35 })).toMatchObject([
      { outcome: 'passes', actual: 35 },
    ]);
  });

  it('[BX1] passes under a spacer frame that reaches the depth wanted', () => {
    const frame = { ...found, action: 'frame', foundDepthMm: 25, frameMm: 10 } as const;
    expect(said({ ...frame, depthMm: 35 })).toMatchObject([
      { outcome: 'passes', messageId: 'framed', actual: 35, limit: 35 },
    ]);
    expect(said({ ...frame, depthMm: 35, preferredDepthMm: 47 })).toMatchObject([
      { outcome: 'advice', messageId: 'tight' },
    ]);
  });

  it('[BX1] leaves one just too shallow with the deepest frame to be decided, with the exchange as remedy', () => {
    const frame = { ...found, action: 'frame', foundDepthMm: 9, frameMm: 25, depthMm: 34 } as const;
    expect(said(frame)).toMatchObject([
      { outcome: 'decide', messageId: 'frameTooShallow', actual: 34, fix: { kind: 're-box', at: 'p' } },
    ]);
  });

  it('[BX1] is not proven where nobody measured, which does not gate', () => {
    expect(said({ ...found, action: 'unknown', foundDepthMm: null })).toMatchObject([
      { outcome: 'not-proven', messageId: 'unknown', fix: { kind: 're-box', at: 'p' } },
    ]);
    expect(boxDepth.couldFail).toBe(false);
  });

  it('[BX1] leaves a new box that is too shallow to be decided and advises on a tight one', () => {
    expect(said({ minimumDepthMm: 47, depthMm: 35 })).toMatchObject([
      { outcome: 'decide', messageId: 'newTooShallow' },
    ]);
    expect(said({ minimumDepthMm: 25, preferredDepthMm: 47, depthMm: 35 })).toMatchObject([
      { outcome: 'advice', messageId: 'tight' },
    ]);
  });

  it('[BX1] speaks of one cable in the singular', () => {
    const valuesOf = (cables: number) =>
      boxDepth
        .check(factsOf({ things: { boxes: [boxOf('p', { cables })] } }))
        .map(({ values }) => values?.cables);
    expect([1, 2].map(valuesOf)).toEqual([['1 cable'], ['2 cables']]);
  });
});
