import { describe, expect, it } from 'vitest';
import { joistCover } from '#engine/rules/joist-cover.ts';
import type { Floor } from '#model/building.ts';
import { runOf, saidBy } from './facts-builder.ts';
import { acrossAt, acrossOf, houseOf } from './house-builder.ts';

const said = (floor: Partial<Floor>) =>
  saidBy(
    joistCover,
    houseOf({
      storey: { floor: { build: 'suspended-timber', voidMm: 450, covering: 'boards', ...floor } },
      runs: [runOf('r', [acrossOf(-110)])],
    }),
  );

describe('joists deep enough for a hole in their middle', () => {
  it('[RT2] passes where 50 mm stand over and under a 16 mm hole exactly', () => {
    expect(said({ joistDepthMm: 116 })).toMatchObject([{ outcome: 'passes', actual: 116, limit: 116 }]);
  });

  it('[RT2] leaves a shallower joist to be decided', () => {
    expect(said({ joistDepthMm: 115 })).toMatchObject([{ outcome: 'decide', messageId: 'tooShallow' }]);
  });

  it('[RT2] finds a ground floor joist of 100 mm too shallow', () => {
    expect(said({ joistDepthMm: 100 })).toMatchObject([{ outcome: 'decide', actual: 100 }]);
  });

  it('[RT2] is not proven where nobody measured the joists', () => {
    expect(said({})).toMatchObject([{ outcome: 'not-proven', messageId: 'depthUnknown' }]);
  });

  it('[RT2] advises where shallow joists are notched and not drilled', () => {
    const notched = (joistDepthMm: number) =>
      saidBy(
        joistCover,
        houseOf({ below: true, floor: { joistDepthMm }, runs: [runOf('r', [acrossAt(500, -72)])] }),
      );
    expect(notched(115)).toMatchObject([{ outcome: 'advice', messageId: 'notched' }]);
    expect(notched(116)).toMatchObject([{ outcome: 'passes', messageId: 'deepEnough' }]);
  });
});
