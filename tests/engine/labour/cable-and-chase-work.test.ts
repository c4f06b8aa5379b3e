import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plasterTasks } from '#engine/labour/filling-tasks.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { fixingDemands } from '#engine/takeoff/fixing-lines.ts';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import type { PlacedHole } from '#engine/ways/holes-placed.ts';
import type { Filling } from '#engine/ways/way-tariff.ts';
import type { Wall } from '#model/building.ts';
import { emptyWorked, labourOf, library, place, quantitiesOf, runOf, stretch } from './labour-material.ts';

const plan = emptyWorked().plan;
const wallOf = (core: Wall['core']): string =>
  [...plan.wallById.values()].find(({ wall }) => wall.core === core)?.wall.id ?? '';

const voidAlong = (lengthMm: number) =>
  stretch({
    medium: 'void-along',
    direction: 'horizontal',
    from: place(1500, 1000, -110),
    to: place(1500 + lengthMm, 1000, -110),
    lengthMm,
  });

describe('chases', () => {
  it('are cut by the wall’s core, set up for, and filled', () => {
    const runs = [runOf('r', [stretch({ wallId: wallOf('brick') })])];
    const worked = emptyWorked({ runs });
    expect(quantitiesOf(worked, 'chase-block', 'fill-chase', 'chase-set-up', 'contain-chase')).toEqual([
      2, 2, 1, 0,
    ]);
  });

  it('are filled in two coats where the job says so: the same metres, in more minutes', () => {
    const runs = [runOf('r', [stretch({ wallId: wallOf('brick') })])];
    const filledBy = (filling: Filling) =>
      labourOf(emptyWorked({ runs, tariff: tariffOf(library, { chased: 'oval', filling }) }));
    const [one, two] = [filledBy('one-coat'), filledBy('bonding-and-finish')];
    expect([one.get('fill-chase')?.quantity, one.get('fill-chase-two-coats')]).toEqual([2, undefined]);
    expect([two.get('fill-chase'), two.get('fill-chase-two-coats')?.quantity]).toEqual([undefined, 2]);
    for (const key of ['lowMin', 'typicalMin', 'highMin'] as const)
      expect(two.get('fill-chase-two-coats')?.[key]).toBeGreaterThan(
        one.get('fill-chase')?.[key] ?? Infinity,
      );
    expect(two.get('return-visit')?.highQuantity).toBe(1);
    // Nothing else of the work hangs on the filling.
    const others = (labour: typeof one) => [...labour.values()].filter(({ task }) => !plasterTasks.has(task));
    expect(others(two)).toEqual(others(one));
  });

  it('of a wall that the plan does not know are of unknown build', () => {
    const worked = emptyWorked({ runs: [runOf('r', [stretch({ wallId: 'nowhere' })])] });
    expect(quantitiesOf(worked, 'chase-unknown-wall', 'chase-block')).toEqual([2, 0]);
  });

  it.each(['oval', 'capping'] as const)('take %s by the metre', (containment) => {
    const worked = emptyWorked({ runs: [runOf('r', [stretch({ containment })])] });
    expect(quantitiesOf(worked, 'contain-chase')).toEqual([2]);
  });

  it('that two cables share are cut once, as long as the longer of them', () => {
    const shared = (lengthMm: number) =>
      stretch({ bundle: 'b', lengthMm, to: place(500, 500, 300 + lengthMm) });
    const worked = emptyWorked({ runs: [runOf('a', [shared(1000)]), runOf('b', [shared(1500)])] });
    const labour = labourOf(worked);
    expect(labour.get('chase-unknown-wall')?.quantity).toBe(1.5);
    expect(labour.get('chase-unknown-wall')?.causes).toEqual(['a', 'b']);
  });

  it('may need a second visit when the plaster has set', () => {
    const labour = labourOf(emptyWorked({ runs: [runOf('r', [stretch()])] }));
    expect(labour.get('return-visit')).toMatchObject({ quantity: 0, lowQuantity: 0, highQuantity: 1 });
  });
});

describe('cables', () => {
  it('are threaded through voids by the metre, joists drilled by the piece', () => {
    const across = stretch({
      medium: 'void-across',
      direction: 'horizontal',
      from: place(1500, 1000, -110),
      to: place(1500, 2200, -110),
      lengthMm: 1200,
      joistsCrossed: 3,
    });
    const worked = emptyWorked({ runs: [runOf('r', [voidAlong(2500), across])] });
    expect(quantitiesOf(worked, 'thread-cable', 'drill-joist')).toEqual([3.7, 3]);
  });

  it('take a notch and its plate for each joist in which no hole is allowed, once for those that share their way', () => {
    const across = stretch({
      medium: 'void-across',
      direction: 'horizontal',
      bundle: 'b',
      joistsCrossed: 3,
    });
    const hole = (judged: PlacedHole['judged']): PlacedHole => ({
      at: planPoint(0, 0),
      storeyId: 'gf',
      joistDepthMm: 200,
      joistMm: 0,
      support: null,
      fromSupportMm: null,
      spanMm: null,
      isSpanAssumed: false,
      judged,
    });
    const cuts = [{ holes: [hole('notch'), hole('hole'), hole('notch')], chase: null, opened: [] }];
    const runs = ['a', 'b'].map((id) => runOf(id, [across], { cuts }));
    const worked = emptyWorked({ runs });
    expect(quantitiesOf(worked, 'drill-joist', 'notch-joist')).toEqual([1, 2]);
    const plates = fixingDemands(worked, usualCounts).filter(({ item }) => item === 'joist-plate');
    expect(plates).toMatchObject([{ measured: 2, causes: ['a'] }]);
  });

  it('that share their way share its holes', () => {
    const hole = stretch({ medium: 'through-wall', bundle: 'b', lengthMm: 130, direction: 'horizontal' });
    const crossing = stretch({
      medium: 'void-across',
      bundle: 'b',
      joistsCrossed: 2,
      direction: 'horizontal',
    });
    const runs = ['a', 'b', 'c'].map((id) => runOf(id, [hole, crossing]));
    expect(quantitiesOf(emptyWorked({ runs }), 'drill-wall', 'drill-joist', 'thread-cable')).toEqual([
      1, 2, 6,
    ]);
  });

  it('behind the board of a stud wall take a hole through every stud, once for those that share their way', () => {
    const level = stretch({ medium: 'stud-cavity', direction: 'horizontal', studsCrossed: 3 });
    expect(
      quantitiesOf(emptyWorked({ runs: [runOf('a', [level]), runOf('b', [level])] }), 'drill-stud'),
    ).toEqual([6]);
    const shared = { ...level, bundle: 'b' };
    const runs = ['a', 'b', 'c'].map((id) => runOf(id, [shared]));
    expect(quantitiesOf(emptyWorked({ runs }), 'drill-stud', 'fish-stud', 'thread-cable')).toEqual([3, 0, 6]);
  });

  it('are fished once a drop in a stud wall', () => {
    const runs = [runOf('r', [stretch({ medium: 'stud-cavity' }), stretch({ medium: 'stud-cavity' })])];
    expect(quantitiesOf(emptyWorked({ runs }), 'fish-stud', 'thread-cable')).toEqual([2, 4]);
  });

  it('are clipped on surfaces, or go in with their channel', () => {
    const clipped = stretch({ medium: 'surface-clipped', lengthMm: 1500, to: place(500, 500, 1800) });
    const conduit = stretch({ medium: 'surface-clipped', containment: 'conduit' });
    const channel = stretch({ medium: 'surface-channel', containment: 'channel' });
    const worked = emptyWorked({ runs: [runOf('r', [clipped, conduit, channel])] });
    expect(quantitiesOf(worked, 'clip-cable', 'fit-channel')).toEqual([1.5, 4]);
  });

  it('without a way are one lump each', () => {
    const runs = [runOf('r', [], { lengthMm: null, lowMm: null, highMm: null })];
    const labour = labourOf(emptyWorked({ runs }));
    expect(labour.get('unsurveyed-run')).toMatchObject({ quantity: 1, causes: ['r'] });
  });

  it('spread as their length does, but not where they are pinned', () => {
    const spread = { lowMm: 1000, highMm: 4000 };
    const derived = labourOf(emptyWorked({ runs: [runOf('r', [stretch({ medium: 'riser' })], spread)] }));
    const pinned = labourOf(
      emptyWorked({ runs: [runOf('r', [stretch({ medium: 'riser', certainty: 'pinned' })], spread)] }),
    );
    expect(derived.get('thread-cable')).toMatchObject({ lowQuantity: 1, quantity: 2, highQuantity: 4 });
    expect(pinned.get('thread-cable')).toMatchObject({ lowQuantity: 2, quantity: 2, highQuantity: 2 });
  });

  it('take no less work when there is more of them', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9000 }),
        fc.integer({ min: 1, max: 9000 }),
        (firstMm, secondMm) => {
          const one = quantitiesOf(emptyWorked({ runs: [runOf('a', [voidAlong(firstMm)])] }), 'thread-cable');
          const two = quantitiesOf(
            emptyWorked({ runs: [runOf('a', [voidAlong(firstMm)]), runOf('b', [voidAlong(secondMm)])] }),
            'thread-cable',
          );
          expect(two[0]).toBeGreaterThanOrEqual(one[0] ?? Number.POSITIVE_INFINITY);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('floors', () => {
  const under = (spread: object) => {
    const worked = emptyWorked({ runs: [runOf('r', [voidAlong(500)])] });
    const storeys = new Map(
      [...worked.plan.storeyById].map(([id, planStorey]) => {
        const { liftable: _liftable, ...floor } = planStorey.storey.floor;
        return [
          id,
          { ...planStorey, storey: { ...planStorey.storey, floor: { ...floor, ...spread } } },
        ] as const;
      }),
    );
    return { ...worked, plan: { ...worked.plan, storeyById: storeys, roomById: new Map() } };
  };

  it.each([
    ['boards', 'lift-board', 0],
    ['carpet', 'lift-board', 1],
    ['laminate', 'lift-board', 1],
    ['chipboard', 'chipboard-trap', 0],
  ] as const)('of %s are opened by %s, %d coverings rolled', (covering, task, rolled) => {
    const worked = under({ covering, liftable: true });
    expect(quantitiesOf(worked, task, 'roll-covering')).toEqual([2, rolled]);
  });

  it('that do not lift are opened and closed', () => {
    expect(
      quantitiesOf(under({ covering: 'boards', liftable: false }), 'open-fixed-floor', 'lift-board'),
    ).toEqual([2, 0]);
    expect(quantitiesOf(under({ covering: 'tile' }), 'open-fixed-floor')).toEqual([2]);
  });

  it('that nobody has tried may take twice the openings', () => {
    expect(labourOf(under({ covering: 'boards' })).get('lift-board')).toMatchObject({
      quantity: 2,
      highQuantity: 4,
    });
    const tried = labourOf(under({ covering: 'boards', liftable: true }));
    expect(tried.get('lift-board')).toMatchObject({ quantity: 2, highQuantity: 2 });
  });
});
