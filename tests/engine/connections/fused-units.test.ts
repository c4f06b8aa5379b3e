import { describe, expect, it } from 'vitest';
import { buildThings } from '#engine/connections/build-things.ts';
import type { FusedUnit } from '#engine/connections/things.ts';
import type { Point } from '#model/installation.ts';
import { fuseOf, inputOf, legEdge, newEdge, nodeOf, pointOf, type Wiring, wanted } from './wiring-builder.ts';

const load = (watts: number, fixed = true): Partial<Point> => ({ load: { watts, use: 'appliance', fixed } });
const unitNodes = [
  nodeOf('u', { state: 'new' }),
  nodeOf('u/load', { kind: 'load-terminals', pointId: 'u', state: 'new' }),
];

function onlyUnit(wiring: Wiring): FusedUnit {
  const { fusedUnits } = buildThings(inputOf(wiring));
  return fusedUnits[0] ?? expect.fail('no unit');
}

function unitWith(rest: Partial<Point>): FusedUnit {
  return onlyUnit({
    points: [wanted('u', { kind: 'fused-unit', ...rest })],
    nodes: unitNodes,
    newEdges: [fuseOf('u')],
  });
}

function feeding(points: readonly Point[]): FusedUnit {
  return onlyUnit({
    points: [wanted('u', { kind: 'fused-unit' }), ...points],
    nodes: [...unitNodes, ...points.map(({ id }) => nodeOf(id, { state: 'new' }))],
    newEdges: [fuseOf('u'), ...points.map(({ id }) => newEdge(`to-${id}`, 'u/load', id))],
  });
}

describe('fused units', () => {
  it.each([
    [150, 3],
    [700, 3],
    [701, 13],
    [3500, 13],
  ])('fuses a load of %i W at %i A', (watts, fuseA) => {
    expect(unitWith(load(watts))).toMatchObject({
      fuseA,
      fuseSource: 'by-load',
      fixedW: watts,
      plugInW: null,
    });
  });

  it('keeps the fuse that the job gives', () => {
    const wiring = {
      points: [wanted('u', { kind: 'fused-unit', ...load(150) })],
      nodes: unitNodes,
      newEdges: [fuseOf('u', { fuseA: 5 })],
    };
    expect(onlyUnit(wiring)).toMatchObject({ fuseA: 5, fuseSource: 'given' });
  });

  it('fuses outlets at 13 A, however small the loads named', () => {
    expect(feeding([wanted('w', load(100, false))])).toMatchObject({
      fuseA: 13,
      fuseSource: 'default',
      outlets: 1,
      plugInW: 100,
    });
  });

  it('takes 13 A, and says that it is a default, where nothing is named', () => {
    expect(unitWith({})).toMatchObject({ fuseA: 13, fuseSource: 'default', fixedW: null, plugInW: null });
  });

  it('does not guess the fuse of a unit that was found', () => {
    const wiring = {
      points: [pointOf('u', { kind: 'fused-unit', ...load(150) })],
      nodes: [nodeOf('u'), nodeOf('u/load', { kind: 'load-terminals', pointId: 'u' })],
      foundEdges: [legEdge('u/fuse', 'u', 'u/load', { kind: 'fuse', legId: null })],
    };
    expect(onlyUnit(wiring)).toMatchObject({ fuseA: null, fuseSource: 'unknown', state: 'found' });
  });

  it('adds up plug-in and fixed loads apart, through every cable behind it', () => {
    const points = [
      wanted('w1', load(3000, false)),
      wanted('w2', load(1400, false)),
      wanted('w3', load(500)),
    ];
    expect(feeding(points)).toMatchObject({
      plugInW: 4400,
      fixedW: 500,
      outlets: 3,
      accessories: ['w1', 'w2', 'w3'],
    });
  });

  it('counts what hangs on a chain, and nothing upstream', () => {
    const points = [pointOf('a', load(9000)), wanted('w1', load(10)), wanted('w2', load(20))];
    const unit = onlyUnit({
      points: [wanted('u', { kind: 'fused-unit' }), ...points],
      nodes: [...unitNodes, nodeOf('a'), nodeOf('w1'), nodeOf('w2')],
      newEdges: [newEdge('n', 'a', 'u'), fuseOf('u'), newEdge('m', 'u/load', 'w1'), newEdge('o', 'w1', 'w2')],
    });
    expect(unit).toMatchObject({ fixedW: 30, accessories: ['w1', 'w2'] });
  });

  it('does not count the board as behind a fuse when a unit is fed from both sides', () => {
    const unit = onlyUnit({
      points: [wanted('u', { kind: 'fused-unit' }), pointOf('a')],
      nodes: [...unitNodes, nodeOf('a')],
      foundEdges: [legEdge('l', 'ring', 'a')],
      newEdges: [newEdge('n', 'a', 'u'), fuseOf('u'), newEdge('m', 'u/load', 'a')],
    });
    expect(unit.accessories).toEqual(['a']);
  });

  it('gives a flex outlet to a new unit that no cable leaves, unless the job says otherwise', () => {
    expect(unitWith({}).flexOutlet).toBe(true);
    expect(unitWith({ unit: { switched: false, flexOutlet: false } })).toMatchObject({
      flexOutlet: false,
      switched: false,
    });
    expect(feeding([wanted('w')]).flexOutlet).toBe(false);
  });

  it('takes each fused module of a grid as a unit of its own, without a flex outlet', () => {
    const modules = [
      { kind: 'fuse', fuseA: 3 },
      { kind: 'fuse', fuseA: 13 },
    ];
    const sides = [1, 2].map((number) => `u/module-${number}`);
    const { fusedUnits } = buildThings(
      inputOf({
        points: [pointOf('a'), wanted('u', { kind: 'grid', modules })],
        nodes: [
          nodeOf('a'),
          nodeOf('u', { state: 'new' }),
          ...sides.map((id) => nodeOf(id, { kind: 'load-terminals', pointId: 'u', state: 'new' })),
        ],
        newEdges: [
          newEdge('n', 'a', 'u'),
          ...sides.map((to, at) => fuseOf('u', { id: `${to}/fuse`, to, fuseA: modules[at]?.fuseA ?? null })),
        ],
      }),
    );
    expect(fusedUnits.map(({ loadNode, fuseA, flexOutlet }) => [loadNode, fuseA, flexOutlet])).toEqual([
      ['u/module-1', 3, false],
      ['u/module-2', 13, false],
    ]);
  });

  it('finds a unit that a connection brings along, with its box and accessory', () => {
    const nodes = [
      nodeOf('c/unit', { pointId: null, connectionId: 'c', state: 'new' }),
      nodeOf('c/unit/load', { kind: 'load-terminals', pointId: null, connectionId: 'c', state: 'new' }),
      nodeOf('w', { state: 'new' }),
      nodeOf('a'),
    ];
    const things = buildThings(
      inputOf({
        points: [pointOf('a'), wanted('w', { mount: 'surface' })],
        nodes,
        newEdges: [
          newEdge('c/1', 'a', 'c/unit', { connectionId: 'c' }),
          fuseOf('c/unit', { connectionId: 'c', fuseA: 13 }),
          newEdge('c/2', 'c/unit/load', 'w'),
        ],
      }),
    );
    expect(things.fusedUnits).toMatchObject([{ id: 'c/unit', pointId: null, connectionId: 'c', outlets: 1 }]);
    expect(things.boxes.find(({ id }) => id === 'c/unit')).toMatchObject({
      action: 'fit',
      gangs: 1,
      cables: 2,
    });
    expect(things.accessories).toContainEqual({
      id: 'c/unit',
      pointId: null,
      kind: 'fused-unit',
      features: ['switched'],
    });
  });
});
