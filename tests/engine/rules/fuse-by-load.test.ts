import { describe, expect, it } from 'vitest';
import type { FusedUnit } from '#engine/connections/things.ts';
import { fuseByLoad } from '#engine/rules/fuse-by-load.ts';
import { factsOf, nodeOf, pointOf, saidBy, shapeOf, unitOf } from './facts-builder.ts';

const said = (unit: Partial<FusedUnit>) =>
  saidBy(fuseByLoad, factsOf({ shapes: [shapeOf('c')], things: { fusedUnits: [unitOf('u', unit)] } }));

describe('the fuse by the fixed load', () => {
  it('[FU1] passes a boiler of 150 W behind 3 A, and exactly 690 W', () => {
    expect(said({ fixedW: 150, fuseA: 3 })).toEqual([
      {
        outcome: 'passes',
        messageId: 'fits',
        subjectId: 'u',
        origin: 'scheme',
        actual: 0.65,
        limit: 3,
        unit: 'A',
      },
    ]);
    expect(said({ fixedW: 690, fuseA: 3 })).toMatchObject([{ outcome: 'passes', actual: 3 }]);
  });

  it('[FU1] shows the disagreement between 690 and 700 W, and fails 3 A above', () => {
    expect(said({ fixedW: 700, fuseA: 3 })).toMatchObject([{ outcome: 'advice', messageId: 'practiceOnly' }]);
    expect(said({ fixedW: 701, fuseA: 3 })).toMatchObject([{ outcome: 'fails', messageId: 'fuseTooSmall' }]);
  });

  it('[FU1] gives the scheme a found unit only for a fixed load that it adds behind it', () => {
    const behind = (fixed: boolean) =>
      saidBy(
        fuseByLoad,
        factsOf({
          job: { points: [pointOf('w1', { kind: 'flex-outlet', load: { watts: 3500, use: 'x', fixed } })] },
          proposed: { nodes: [nodeOf('w1', { state: 'new' })] },
          shapes: [shapeOf('c')],
          things: { fusedUnits: [unitOf('u', { fixedW: 3500, state: 'found', accessories: ['w1'] })] },
        }),
      );
    expect(behind(true)).toMatchObject([{ outcome: 'fails', origin: 'scheme' }]);
    expect(behind(false)).toMatchObject([{ outcome: 'fails', origin: 'found' }]);
  });

  it('[FU1] passes exactly 13 A and fails more', () => {
    expect(said({ fixedW: 2990 })).toMatchObject([{ outcome: 'passes', actual: 13, limit: 13 }]);
    expect(said({ fixedW: 2991 })).toMatchObject([{ outcome: 'fails', messageId: 'tooMuch', limit: 13 }]);
  });

  it('[FU1] advises the smaller fuse for a small load, unless outlets are behind it too', () => {
    expect(said({ fixedW: 150 })).toMatchObject([
      { outcome: 'advice', messageId: 'largerThanNeeded', limit: 3 },
    ]);
    expect(said({ fixedW: 150, outlets: 1 })).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[FU1] is not proven where nobody read the fuse, and silent where no fixed load is named', () => {
    expect(said({ fixedW: 150, fuseA: null, state: 'found' })).toMatchObject([
      { outcome: 'not-proven', messageId: 'fuseUnknown', origin: 'found' },
    ]);
    expect(said({ plugInW: 5000 })).toEqual([]);
  });
});
