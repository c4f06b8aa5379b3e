import { describe, expect, it } from 'vitest';
import { floorCover } from '#engine/rules/floor-cover.ts';
import { runOf, saidBy } from './facts-builder.ts';
import { acrossOf, houseOf } from './house-builder.ts';

// 22 mm of boards lie over the joists, so 72 mm below the finished floor is 50 mm below the joists' top.
const said = (...args: Parameters<typeof acrossOf>) =>
  saidBy(floorCover, houseOf({ runs: [runOf('r', [acrossOf(...args)])] }));

describe('cover of cable under floors', () => {
  it('[RT1] passes at exactly 50 mm below the top of the joists', () => {
    expect(said(-72)).toMatchObject([{ outcome: 'passes', messageId: 'covered', actual: 50, limit: 50 }]);
  });

  it('[RT1] fails just past it, as the scheme’s doing', () => {
    expect(said(-71)).toMatchObject([
      { outcome: 'fails', messageId: 'shallow', actual: 49, origin: 'scheme' },
    ]);
  });

  it('[RT1] fails within 50 mm of the underside of joists that carry a ceiling', () => {
    const over = (heightMm: number) =>
      saidBy(floorCover, houseOf({ below: true, runs: [runOf('r', [acrossOf(heightMm)])] }));
    expect(over(-172)).toMatchObject([{ outcome: 'passes', actual: 50 }]);
    expect(over(-173)).toMatchObject([{ outcome: 'fails', messageId: 'nearCeiling', actual: 49 }]);
  });

  it('[RT1] is not proven on a path that nobody pinned', () => {
    expect(said(-40, { medium: 'void-along', joistsCrossed: 0, certainty: 'assumed' })).toMatchObject([
      { outcome: 'not-proven', messageId: 'pathAssumed' },
    ]);
  });

  it('[RT1] leaves an unpinned way through the middle of the joists to the rule for joists', () => {
    expect(said(-40, { certainty: 'derived' })).toEqual([]);
  });

  it('[RT1] passes armoured cable and asks about conduit', () => {
    const armoured = { type: 'steel-wire-armoured', lineMm2: 2.5, cpcMm2: 2.5 } as const;
    const run = runOf('r', [acrossOf(-40)], { cable: armoured });
    expect(saidBy(floorCover, houseOf({ runs: [run] }))).toMatchObject([{ messageId: 'armoured' }]);
    expect(said(-40, { containment: 'conduit' })).toMatchObject([{ outcome: 'decide' }]);
  });

  it('[RT1] has nothing to say of solid floors', () => {
    expect(
      saidBy(floorCover, houseOf({ floor: { build: 'solid' }, runs: [runOf('r', [acrossOf(-40)])] })),
    ).toEqual([]);
  });
});
