import { describe, expect, it } from 'vitest';
import type { FusedUnit } from '#engine/connections/things.ts';
import { loadsBehindFuse } from '#engine/rules/loads-behind-fuse.ts';
import type { Point } from '#model/installation.ts';
import { factsOf, nodeOf, pointOf, saidBy, shapeOf, unitOf } from './facts-builder.ts';

function said(unit: Partial<FusedUnit>, points: readonly Point[] = []) {
  const accessories = points.map(({ id }) => id);
  return saidBy(
    loadsBehindFuse,
    factsOf({
      job: { points: [...points] },
      proposed: { nodes: accessories.map((id) => nodeOf(id)) },
      shapes: [shapeOf('c')],
      things: { fusedUnits: [unitOf('u', { outlets: points.length, accessories, ...unit })] },
    }),
  );
}

const named = (id: string, watts: number) =>
  pointOf(id, { load: { watts, use: 'plugged in', fixed: false } });

describe('what is behind one fuse', () => {
  it('[FU2] passes fixed loads of exactly 13 A and fails more', () => {
    expect(said({ fixedW: 2990 })).toEqual([
      {
        outcome: 'passes',
        messageId: 'within',
        subjectId: 'u',
        origin: 'scheme',
        actual: 13,
        limit: 13,
        unit: 'A',
      },
    ]);
    expect(said({ fixedW: 3000 })).toMatchObject([
      { outcome: 'fails', messageId: 'fixedOver', actual: 13.04 },
    ]);
  });

  it('[FU2] asks for a decision on kettle, toaster and air fryer: 26.5 A behind 13 A', () => {
    const points = [named('b1', 3000), named('b2', 1400), named('b3', 1700)];
    expect(said({ plugInW: 6100 }, points)).toMatchObject([
      { outcome: 'decide', messageId: 'willOperate', actual: 26.52, limit: 13 },
    ]);
  });

  it('[FU2] asks for a decision on plain outlets, so that the cheapest never wins in silence', () => {
    expect(said({}, [pointOf('b1'), pointOf('b2'), pointOf('b3')])).toMatchObject([
      { outcome: 'decide', messageId: 'plainOutlets', actual: 78, limit: 13 },
    ]);
    expect(said({ plugInW: 500 }, [named('b1', 500), pointOf('b2')])).toMatchObject([
      { outcome: 'decide', messageId: 'plainOutlets' },
    ]);
  });

  it('[FU2] advises where every outlet has a load named and all fit', () => {
    expect(said({ plugInW: 1500 }, [named('b1', 1000), named('b2', 500)])).toMatchObject([
      { outcome: 'advice', messageId: 'othersMayCome' },
    ]);
  });

  it('[FU2] reads 3 A as the rule of the fuse does: within at 690 W, practice to 700 W, over above', () => {
    const at = (fixedW: number) => said({ fixedW, fuseA: 3 })[0]?.outcome;
    expect([690, 691, 700, 701].map(at)).toEqual(['passes', 'advice', 'advice', 'fails']);
    expect(said({ fixedW: 700, fuseA: 3 })).toMatchObject([
      { messageId: 'byPractice', actual: 3.04, limit: 3 },
    ]);
  });

  it('[FU2] is the scheme’s for a new outlet behind a unit that was there', () => {
    const facts = (state: 'found' | 'new') =>
      factsOf({
        job: { points: [pointOf('b1')] },
        proposed: { nodes: [nodeOf('b1', { state })] },
        shapes: [shapeOf('c')],
        things: { fusedUnits: [unitOf('u', { state: 'found', outlets: 1, accessories: ['b1'] })] },
      });
    expect(saidBy(loadsBehindFuse, facts('new'))).toMatchObject([{ origin: 'scheme' }]);
    expect(saidBy(loadsBehindFuse, facts('found'))).toMatchObject([{ origin: 'found' }]);
  });

  it('[FU2] passes one single outlet behind 13 A', () => {
    expect(said({}, [pointOf('b1', { kind: 'socket-single' })])).toMatchObject([
      { outcome: 'passes', actual: 13 },
    ]);
  });

  it('[FU2] is silent where nothing is named and nothing can be plugged in', () => {
    expect(said({})).toEqual([]);
  });
});
