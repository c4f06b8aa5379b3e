import { describe, expect, it } from 'vitest';
import { seedPlace } from '#engine/circuit/tree-walk.ts';
import { withChosenFuses } from '#engine/connections/chosen-fuses.ts';
import { estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { boilerSpur } from '../proof/boiler-spur.ts';

const { worked } = schemeOf(estimateOf(boilerSpur()), 's');
const [unit] = worked.things.fusedUnits;
const [shape] = worked.shapes.values();
if (unit === undefined || shape === undefined) throw new Error('no unit');

/** A place behind a fuse that the wiring alone does not tell. */
const behind = (nodeId: string, upstreamNode: string | null, behindUnit: string | null) => ({
  ...seedPlace('c', nodeId, 'behind-fuse'),
  upstreamNode,
  behindUnit,
});

describe('the fuse before a point', () => {
  const places = [
    behind('p', null, null),
    behind('outer/load', 'p', 'outer/load'),
    behind('inner', 'outer/load', 'outer/load'),
    behind('inner/load', 'inner', 'outer/load'),
    behind('lamp', 'inner/load', 'outer/load'),
  ];
  const outer = { ...unit, id: 'outer', loadNode: 'outer/load', fuseA: 13, fuseSource: 'given' as const };
  const inner = { ...unit, id: 'inner', loadNode: 'inner/load', fuseA: 3, fuseSource: 'by-load' as const };
  const shapes = new Map([['c', { ...shape, places }]]);
  const fuseBefore = (units: readonly (typeof unit)[]) =>
    withChosenFuses(shapes, units)
      .get('c')
      ?.places.map(({ fuseA, behindUnit }) => [fuseA, behindUnit]);

  it('is the smaller of those on the way, one chosen by its load too', () => {
    expect(fuseBefore([outer, inner])).toEqual([
      [null, null],
      [13, 'outer/load'],
      [13, 'outer/load'],
      [3, 'inner/load'],
      [3, 'inner/load'],
    ]);
  });

  it('is not known only where none on the way is', () => {
    const unknown = { ...outer, fuseA: null, fuseSource: 'unknown' as const };
    expect(fuseBefore([unknown, inner])?.slice(1)).toEqual([
      [null, 'outer/load'],
      [null, 'outer/load'],
      [3, 'inner/load'],
      [3, 'inner/load'],
    ]);
  });
});
