import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jointCapacity, jointFor, takesAll } from '#engine/connections/joint-capacity.ts';
import type { CableJoint } from '#engine/connections/things.ts';
import { jointConductors } from '#engine/rules/joint-conductors.ts';
import type { Joint } from '#model/installation.ts';
import { factsOf, jointOf, saidBy, shapeOf } from './facts-builder.ts';

const factsWith = (joint: Partial<CableJoint>) =>
  factsOf({ shapes: [shapeOf('c')], things: { joints: [jointOf('j', joint)] } });
const said = (joint: Partial<CableJoint>) => saidBy(jointConductors, factsWith(joint));
const made = (kind: Joint['kind'], ratingA: number, takes?: Joint['takes']) => ({
  kind,
  ratingA,
  takes: jointCapacity({ kind, ratingA, ...(takes && { takes }) }),
});

describe('conductors in joints', () => {
  it('[JN3] passes exactly as many conductors, exactly as large, as one of its kind takes', () => {
    expect(said({ cables: 4, conductorAreaMm2: 4, areaMm2: 16 })).toMatchObject([
      { outcome: 'passes', messageId: 'within', subjectId: 'j', origin: 'scheme', actual: 4 },
    ]);
    expect(said({ ...made('screw', 30), cables: 3, conductorAreaMm2: 4, areaMm2: 12 })).toMatchObject([
      { outcome: 'passes' },
    ]);
    expect(said({ ...made('lever', 32), cables: 9, conductorAreaMm2: 6, areaMm2: 54 })).toMatchObject([
      { outcome: 'passes' },
    ]);
  });

  it('[JN3] leaves one conductor more, or one size larger, than is usual to be decided', () => {
    expect(said({ cables: 5, areaMm2: 12.5 })).toMatchObject([{ outcome: 'decide', messageId: 'overUsual' }]);
    expect(said({ conductorAreaMm2: 6, areaMm2: 18 })).toMatchObject([{ outcome: 'decide' }]);
    expect(said({ ...made('crimp', 41), cables: 3 })).toMatchObject([{ outcome: 'decide' }]);
    expect(said({ ...made('screw', 20), cables: 4, areaMm2: 10 })).toMatchObject([{ outcome: 'decide' }]);
  });

  it('[JN3] fails past what its maker’s sheet allows, and passes what only the sheet allows', () => {
    const sheet = made('maintenance-free', 32, { cables: 2 });
    expect(said({ ...sheet, cables: 2, areaMm2: 5 })).toMatchObject([{ outcome: 'passes' }]);
    expect(said({ ...sheet, cables: 3 })).toMatchObject([{ outcome: 'fails', messageId: 'overSheet' }]);
    const large = made('maintenance-free', 32, { cables: 6, mm2: 6 });
    expect(said({ ...large, cables: 6, conductorAreaMm2: 6, areaMm2: 36 })).toMatchObject([
      { outcome: 'passes' },
    ]);
  });

  it('[JN3] names a larger joint, where there is one', () => {
    const other = (joint: Partial<CableJoint>) => jointConductors.check(factsWith(joint))[0]?.values?.other;
    expect(other({ cables: 5, areaMm2: 12.5 })).toBe('set of lever connectors in an enclosure');
    expect(other({ ...made('screw', 20), cables: 4, areaMm2: 10 })).toBe('maintenance-free box');
    expect(other({ cables: 3, conductorAreaMm2: 10, areaMm2: 15 })).toBe(
      'screw box of 60 A that can be got at',
    );
    expect(said({ cables: 3, conductorAreaMm2: 25, areaMm2: 75 })).toMatchObject([
      { outcome: 'decide', messageId: 'overUsualNoOther' },
    ]);
    expect(
      said({ ...made('screw', 60, { cables: 2 }), cables: 9, conductorAreaMm2: 16, areaMm2: 144 }),
    ).toMatchObject([{ outcome: 'fails', messageId: 'overSheetNoOther' }]);
  });

  it('[JN3] is not proven where a size or the joint found is not known, and the scheme joins on there', () => {
    expect(said({ areaMm2: null })).toMatchObject([{ outcome: 'not-proven', messageId: 'sizeUnknown' }]);
    const found = { source: 'unknown', takes: null, state: 'found' } as const;
    expect(said(found)).toMatchObject([{ outcome: 'not-proven', messageId: 'makeUnknown' }]);
    expect(said({ ...found, newCables: 0 })).toEqual([]);
  });

  it('[JN3] says of what the scheme leaves alone only what is wrong, and nothing of what the stage before chose', () => {
    expect(said({ newCables: 0, state: 'found' })).toEqual([]);
    expect(said({ newCables: 0, state: 'found', cables: 5 })).toMatchObject([
      { outcome: 'decide', origin: 'found' },
    ]);
    expect(said({ source: 'derived' })).toEqual([]);
  });

  it('[JN3] offers a larger joint only where it holds all, the smallest of those that do', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.constantFrom(1, 1.5, 2.5, 4, 6, 10, 16, 25),
        (cables, lineMm2) => {
          const held = { cables, conductorAreaMm2: lineMm2, areaMm2: cables * lineMm2 };
          const chosen = jointFor(held);
          if (chosen !== null) expect(takesAll(jointCapacity(chosen), held)).toBe(true);
          // By hand: a box to 4 × 4 mm², levers to 6 mm² in any number, screws to 4 × 16 mm² and 32 mm² together.
          const wanted =
            lineMm2 <= 4 && cables <= 4
              ? 'maintenance-free'
              : lineMm2 <= 6
                ? 'lever'
                : lineMm2 <= 16 && cables * lineMm2 <= 32
                  ? 'screw'
                  : undefined;
          expect(chosen?.kind).toBe(wanted);
        },
      ),
    );
  });
});
