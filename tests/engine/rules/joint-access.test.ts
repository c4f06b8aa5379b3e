import { describe, expect, it } from 'vitest';
import type { CableJoint } from '#engine/connections/things.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { jointAccess } from '#engine/rules/joint-access.ts';
import type { Floor, Storey } from '#model/building.ts';
import { factsOf, jointOf, saidBy, shapeOf } from './facts-builder.ts';

const storeyWith = (floor: Partial<Floor>): Storey => ({
  id: 'gf',
  name: 'Ground floor',
  floorLevelMm: 0,
  heightMm: 2400,
  floor: { build: 'suspended-timber', voidMm: 200, covering: 'boards', ...floor },
  ceiling: { lining: 'plasterboard', loft: false },
  walls: [],
  rooms: [],
  fixtures: [],
  stairwells: [],
});

function said(joint: Partial<CableJoint>, floor: Partial<Floor> = {}) {
  const storey = { storey: storeyWith(floor), aboveId: null, belowId: null };
  const position = { storeyId: 'gf', at: planPoint(0, 0), heightMm: -100, levelMm: -100 };
  return saidBy(
    jointAccess,
    factsOf({
      shapes: [shapeOf('c')],
      plan: { storeyById: new Map([['gf', storey]]) },
      things: { joints: [jointOf('k1/joint', { position, ...joint })] },
    }),
  );
}

describe('access to joints', () => {
  it('[JN2] passes maintenance-free and crimped joints wherever they lie', () => {
    expect(said({})).toMatchObject([{ outcome: 'passes', messageId: 'exempt', origin: 'scheme' }]);
    expect(said({ kind: 'crimp' }, { covering: 'tile' })).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[JN2] passes a screw joint under boards that can be reached', () => {
    expect(said({ kind: 'screw', accessible: true })).toMatchObject([
      { outcome: 'passes', messageId: 'accessible' },
    ]);
  });

  it.each(['carpet', 'laminate', 'tile', 'vinyl', 'wood'] as const)(
    '[JN2] fails a screw joint under fitted %s though the survey calls it accessible',
    (covering) => {
      expect(said({ kind: 'screw', accessible: true }, { covering })).toMatchObject([
        { outcome: 'fails', messageId: 'underFittedFloor' },
      ]);
    },
  );

  it('[JN2] takes the survey’s word that a fitted floor lifts', () => {
    expect(said({ kind: 'screw', accessible: true }, { covering: 'carpet', liftable: true })).toMatchObject([
      { outcome: 'passes' },
    ]);
  });

  it('[JN2] fails screw and lever joints that cannot be reached', () => {
    expect(said({ kind: 'screw', accessible: false })).toMatchObject([
      { outcome: 'fails', messageId: 'hidden' },
    ]);
    expect(said({ kind: 'lever', accessible: false, lies: 'wall' })).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[JN2] is not proven where nobody told', () => {
    expect(said({ kind: 'screw', accessible: null })).toMatchObject([
      { outcome: 'not-proven', messageId: 'notTold' },
    ]);
    expect(said({ source: 'unknown', state: 'found' })).toMatchObject([
      { outcome: 'not-proven', origin: 'found' },
    ]);
  });
});
