import { describe, expect, it } from 'vitest';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import type { Network } from '#engine/circuit/network.ts';
import type { Leg, Point } from '#model/installation.ts';
import type { Connection } from '#model/scheme.ts';
import {
  chainOf,
  edgesOf,
  endOf,
  jobOf,
  legOf,
  placeOf,
  pointOf,
  problemsOf,
  proposedOf,
  removedOf,
  rolesOf,
  shapeOf,
  smallRing,
  wantedOf,
} from './circuit-job.ts';

const wantedUnit = (id: string) => wantedOf(id, { kind: 'fused-unit', unit: { switched: true, fuseA: 3 } });
const wanted = [wantedOf('W1'), wantedOf('W2'), wantedOf('W3'), wantedUnit('F1'), wantedUnit('F2')];

function jobWith(connections: Connection[], { points, legs }: { points?: Point[]; legs?: Leg[] } = {}) {
  const ring = smallRing();
  return jobOf({ points: [...(points ?? ring.points), ...wanted], legs: legs ?? ring.legs, connections });
}

/** What differs from the ring as found: new and changed edges. */
function changed(network: Network): string[] {
  const before = new Set(edgesOf(foundNetwork(jobWith([]))));
  return edgesOf(network).filter((edge) => !before.has(edge));
}

const spur = (id: string, from: Extract<Connection, { kind: 'spur' }>['from'], to: string): Connection => ({
  id,
  kind: 'spur',
  from,
  to,
});
const extension = (more: Partial<Extract<Connection, { kind: 'ring-extension' }>> = {}): Connection => ({
  id: 'c',
  kind: 'ring-extension',
  circuit: 'o',
  between: [endOf('R2'), endOf('R3')],
  out: { how: 'terminals' },
  back: { how: 'terminals' },
  through: ['W1'],
  ...more,
});

describe('a spur', () => {
  const made = { kind: 'maintenance-free', ratingA: 32, accessible: false } as const;
  const cases: [string, Connection[], string[], string[]][] = [
    ['from a point', [spur('c', { point: 'R1' }, 'W1')], ['c/cable-1: R1>W1 ?'], []],
    ['from the origin', [spur('c', { origin: 'o' }, 'W1')], ['c/cable-1: o>W1 ?'], []],
    [
      'from a joint in a leg',
      [spur('c', { leg: 'R2-R3', alongMm: 4000 }, 'W1')],
      ['R2-R3/part-1: R2>c/joint 4000', 'R2-R3/part-2: c/joint>R3 6000', 'c/cable-1: c/joint>W1 ?'],
      [],
    ],
    [
      'from a second joint in the same leg, nearer its start',
      [spur('c', { leg: 'R2-R3', alongMm: 4000 }, 'W1'), spur('d', { leg: 'R2-R3', alongMm: 1000 }, 'W2')],
      [
        'R2-R3/part-1: R2>d/joint 1000',
        'R2-R3/part-2: d/joint>c/joint 3000',
        'R2-R3/part-3: c/joint>R3 6000',
        'c/cable-1: c/joint>W1 ?',
        'd/cable-1: d/joint>W2 ?',
      ],
      [],
    ],
    [
      'from beyond the end of a leg',
      [spur('c', { leg: 'R2-R3', alongMm: 12_000 }, 'W1')],
      ['R2-R3/part-1: R2>c/joint 10000', 'R2-R3/part-2: c/joint>R3 0', 'c/cable-1: c/joint>W1 ?'],
      ['c leg-too-short R2-R3'],
    ],
    [
      'from a new point that a later connection joins on',
      [spur('c', { point: 'W2' }, 'W1'), spur('d', { point: 'R1' }, 'W2')],
      ['c/cable-1: W2>W1 ?', 'd/cable-1: R1>W2 ?'],
      [],
    ],
    [
      'from a wanted point that nothing joins on',
      [spur('c', { point: 'W2' }, 'W1')],
      ['c/cable-1: W2>W1 ?'],
      ['c no-existing-point W2'],
    ],
    ['to a point that is there', [spur('c', { point: 'R1' }, 'R4')], [], ['c already-connected R4']],
    [
      'twice to one point',
      [spur('c', { point: 'R1' }, 'W1'), spur('d', { point: 'R2' }, 'W1')],
      ['c/cable-1: R1>W1 ?'],
      ['d already-connected W1'],
    ],
    [
      'to a wanted fused unit',
      [spur('c', { point: 'R1' }, 'F1')],
      ['F1/fuse: F1>F1/load ?', 'c/cable-1: R1>F1 ?'],
      ['c unit-by-spur F1'],
    ],
    [
      'from a stretch that an extension took out',
      [
        extension({ out: { how: 'joint', alongMm: 2000 }, back: { how: 'joint', alongMm: 8000 } }),
        spur('d', { leg: 'R2-R3', alongMm: 5000 }, 'W2'),
      ],
      [
        'R2-R3/part-1: R2>c/joint-out 2000',
        'R2-R3/part-2: c/joint-back>R3 2000',
        'c/cable-1: c/joint-out>W1 ?',
        'c/cable-2: W1>c/joint-back ?',
      ],
      ['d leg-gone R2-R3'],
    ],
  ];
  it.each(cases)('%s', (_, connections, edges, problems) => {
    const network = proposedOf(jobWith(connections));
    expect(changed(network)).toEqual(edges);
    expect(problemsOf(network)).toEqual(problems);
  });

  it('is of the usual cable unless told, and its joint has the make and place it is given', () => {
    const cable = { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 } as const;
    const network = proposedOf(
      jobWith([
        { id: 'c', kind: 'spur', from: { leg: 'R2-R3', alongMm: 4000, joint: made }, to: 'W1' },
        { id: 'd', kind: 'spur', from: { point: 'R1' }, to: 'W2', cable },
      ]),
    );
    const byId = new Map(network.edges.map((edge) => [edge.id, edge]));
    expect(byId.get('c/cable-1')).toMatchObject({
      cable: { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 },
      state: 'new',
      connectionId: 'c',
      legId: null,
      lengthMm: null,
    });
    expect(byId.get('d/cable-1')?.cable).toEqual(cable);
    expect(byId.get('R2-R3/part-2')).toMatchObject({
      state: 'found',
      legId: 'R2-R3',
      partMm: { fromMm: 4000, toMm: 10_000 },
    });
    expect(network.nodes.find(({ id }) => id === 'c/joint')).toMatchObject({
      kind: 'joint',
      joint: made,
      inLeg: { legId: 'R2-R3', alongMm: 4000 },
      pointId: null,
      connectionId: 'c',
      state: 'new',
    });
  });

  it('cuts a leg whose length nobody knows, twice over', () => {
    const legs = [...chainOf('oA R1 R2'), legOf('R2-oB')];
    const points = [pointOf('R1'), pointOf('R2')];
    const network = proposedOf(
      jobWith(
        [spur('c', { leg: 'R1-R2', alongMm: 2000 }, 'W1'), spur('d', { leg: 'R1-R2', alongMm: 3000 }, 'W2')],
        { points, legs },
      ),
    );
    expect(edgesOf(network).filter((edge) => edge.startsWith('R1-R2'))).toEqual([
      'R1-R2/part-1: R1>c/joint 2000',
      'R1-R2/part-2: c/joint>d/joint 1000',
      'R1-R2/part-3: d/joint>R2 ?',
    ]);
    expect(network.edges.find(({ id }) => id === 'R1-R2/part-3')?.partMm).toBeNull();
    expect(problemsOf(network)).toEqual([]);
  });

  it('leaves the end of the ring told on the part at the board only', () => {
    const network = proposedOf(jobWith([spur('c', { leg: 'oA-R1', alongMm: 1000 }, 'W1')]));
    const ends = network.edges
      .filter(({ legId }) => legId === 'oA-R1')
      .map(({ id, originEnd }) => [id, originEnd]);
    expect(ends).toEqual([
      ['oA-R1/part-1', 'A'],
      ['oA-R1/part-2', null],
    ]);
  });

  it('from a fused unit is taken from its load side, from a grid by the module that feeds the point', () => {
    const unit = pointOf('U', { kind: 'fused-unit', unit: { switched: false, fuseA: 13 } });
    const grid = pointOf('G', { kind: 'grid', modules: [{ kind: 'fuse', feeds: 'W2', fuseA: 3 }] });
    const network = proposedOf(
      jobWith(
        [spur('c', { point: 'U' }, 'W1'), spur('d', { point: 'G' }, 'W2'), spur('e', { point: 'G' }, 'W3')],
        { points: [unit, grid], legs: chainOf('oA U G oB') },
      ),
    );
    expect(edgesOf(network).filter((edge) => edge.includes('cable'))).toEqual([
      'c/cable-1: U/load>W1 ?',
      'd/cable-1: G/module-1>W2 ?',
      'e/cable-1: G>W3 ?',
    ]);
  });
});

describe('a fused spur', () => {
  const base = { id: 'c', kind: 'fused-spur', from: { point: 'R1' }, unit: 'F1', feeds: [] } as const;
  it('feeds from its unit, by the word or the point’s id, and from point to point', () => {
    const feeds = [
      { from: 'unit', to: 'W1' },
      { from: 'W1', to: 'W2' },
      { from: 'F1', to: 'W3' },
    ];
    const job = jobWith([{ ...base, feeds }]);
    const network = proposedOf(job);
    expect(changed(network)).toEqual([
      'F1/fuse: F1>F1/load ?',
      'c/cable-1: R1>F1 ?',
      'c/cable-2: F1/load>W1 ?',
      'c/cable-3: W1>W2 ?',
      'c/cable-4: F1/load>W3 ?',
    ]);
    expect(problemsOf(network)).toEqual([]);
    const shape = shapeOf(job, network);
    expect(placeOf(shape, 'W2')).toMatchObject({
      role: 'behind-fuse',
      fuseA: 3,
      behindUnit: 'F1/load',
      rootNode: 'R1',
    });
    expect(shape.spurs.find(({ rootNode }) => rootNode === 'R1')).toMatchObject({
      accessoryNodes: ['F1'],
      isNew: true,
    });
  });

  it('brings its own unit along', () => {
    const unit = { fuseA: 13, place: { storey: 's', at: [1, 2], heightMm: 300 } } satisfies Extract<
      Connection,
      { kind: 'fused-spur' }
    >['unit'];
    const network = proposedOf(jobWith([{ ...base, feeds: [{ from: 'unit', to: 'W1' }], unit }]));
    expect(changed(network)).toEqual([
      'c/cable-1: R1>c/unit ?',
      'c/cable-2: c/unit/load>W1 ?',
      'c/unit/fuse: c/unit>c/unit/load ?',
    ]);
    expect(network.edges.find(({ id }) => id === 'c/unit/fuse')).toMatchObject({
      fuseA: 13,
      connectionId: 'c',
    });
    expect(network.nodes.find(({ id }) => id === 'c/unit')).toMatchObject({
      kind: 'terminals',
      pointId: null,
      connectionId: 'c',
      place: unit.place,
    });
    expect(network.nodes.find(({ id }) => id === 'c/unit/load')?.kind).toBe('load-terminals');
  });

  const existing = pointOf('U', { kind: 'fused-unit', unit: { switched: true, fuseA: 13 } });
  const cases: [string, Connection, string[], string[]][] = [
    [
      'a unit that is no fused unit',
      { ...base, unit: 'W3', feeds: [{ from: 'unit', to: 'W1' }] },
      ['c/cable-1: R1>W3 ?', 'c/cable-2: W3>W1 ?'],
      ['c unit-is-no-fused-unit W3'],
    ],
    [
      'carrying on from an existing unit',
      { ...base, from: { point: 'U' }, unit: 'U', feeds: [{ from: 'unit', to: 'W1' }] },
      ['c/cable-1: U/load>W1 ?'],
      [],
    ],
    [
      'a second supply to an existing unit',
      { ...base, unit: 'U', feeds: [{ from: 'unit', to: 'W1' }] },
      ['c/cable-1: U/load>W1 ?'],
      ['c already-connected U'],
    ],
    [
      'a feed from a point that the unit does not reach',
      { ...base, feeds: [{ from: 'R1', to: 'W1' }] },
      ['c/cable-1: R1>F1 ?', 'c/cable-2: R1>W1 ?'],
      ['c feed-not-reached R1'],
    ],
    [
      'a unit tapped from itself',
      { ...base, from: { point: 'F1' }, feeds: [{ from: 'unit', to: 'W1' }] },
      ['c/cable-1: F1/load>W1 ?'],
      ['c nothing-to-connect F1'],
    ],
  ];
  it.each(cases)('with %s', (_, connection, cables, problems) => {
    const points = [pointOf('R1'), existing];
    const network = proposedOf(jobWith([connection], { points, legs: chainOf('oA R1 U oB') }));
    expect(edgesOf(network).filter((edge) => edge.startsWith('c/'))).toEqual(cables);
    expect(problemsOf(network)).toEqual(problems);
  });
});

describe('a ring extension', () => {
  const joint = (alongMm: number) => ({ how: 'joint', alongMm }) as const;
  const old = (alongMm: number) => ({ how: 'old-cable', alongMm }) as const;
  const terminals = { how: 'terminals' } as const;
  const cases: [string, Connection, string[], string[], string[]][] = [
    [
      'from terminals to terminals',
      extension({ through: ['W1', 'W2'] }),
      ['c/cable-1: R2>W1 ?', 'c/cable-2: W1>W2 ?', 'c/cable-3: W2>R3 ?'],
      ['R2-R3 0-10000'],
      ['W1', 'W2'],
    ],
    [
      'by two joints',
      extension({ out: joint(3000), back: joint(4500) }),
      [
        'R2-R3/part-1: R2>c/joint-out 3000',
        'R2-R3/part-2: c/joint-back>R3 5500',
        'c/cable-1: c/joint-out>W1 ?',
        'c/cable-2: W1>c/joint-back ?',
      ],
      ['R2-R3 3000-4500'],
      ['c/joint-out', 'W1', 'c/joint-back'],
    ],
    [
      'by two joints at one place',
      extension({ out: joint(3000), back: joint(3000) }),
      [
        'R2-R3/part-1: R2>c/joint-out 3000',
        'R2-R3/part-2: c/joint-back>R3 7000',
        'c/cable-1: c/joint-out>W1 ?',
        'c/cable-2: W1>c/joint-back ?',
      ],
      [],
      ['c/joint-out', 'W1', 'c/joint-back'],
    ],
    [
      'with the neighbours named the other way round',
      extension({
        between: [endOf('R3'), endOf('R2')],
        out: joint(4500),
        back: joint(3000),
        through: ['W1', 'W2'],
      }),
      [
        'R2-R3/part-1: R2>c/joint-back 3000',
        'R2-R3/part-2: c/joint-out>R3 5500',
        'c/cable-1: c/joint-out>W1 ?',
        'c/cable-2: W1>W2 ?',
        'c/cable-3: W2>c/joint-back ?',
      ],
      ['R2-R3 3000-4500'],
      ['c/joint-back', 'W2', 'W1', 'c/joint-out'],
    ],
    [
      'by the old cable on both sides',
      extension({ out: old(4000), back: old(6000) }),
      ['R2-R3/part-1: R2>W1 4000', 'R2-R3/part-2: W1>R3 4000'],
      ['R2-R3 4000-6000'],
      ['W1'],
    ],
    [
      'from terminals and back by the old cable',
      extension({ out: terminals, back: old(6000), through: ['W1', 'W2'] }),
      ['R2-R3/part-1: W2>R3 4000', 'c/cable-1: R2>W1 ?', 'c/cable-2: W1>W2 ?'],
      ['R2-R3 0-6000'],
      ['W1', 'W2'],
    ],
    [
      'by a joint and back to terminals',
      extension({ out: joint(2500), back: terminals, leg: 'R2-R3' }),
      ['R2-R3/part-1: R2>c/joint-out 2500', 'c/cable-1: c/joint-out>W1 ?', 'c/cable-2: W1>R3 ?'],
      ['R2-R3 2500-10000'],
      ['c/joint-out', 'W1'],
    ],
  ];
  it.each(cases)('%s', (_, connection, edges, removed, inserted) => {
    const job = jobWith([connection]);
    const network = proposedOf(job);
    expect(changed(network)).toEqual(edges);
    expect(removedOf(network)).toEqual(removed);
    expect(problemsOf(network)).toEqual([]);
    expect(shapeOf(job, network)).toMatchObject({
      shape: 'ring',
      ringNodes: ['R1', 'R2', ...inserted, 'R3', 'R4'],
    });
  });

  it('notes no lifted cable where a leg tells of it', () => {
    expect(proposedOf(jobWith([extension()])).lifted).toBeUndefined();
  });

  it('reports one problem once, however often it is met', () => {
    const network = proposedOf(jobWith([extension({ out: joint(12_000), back: joint(13_000) })]));
    expect(problemsOf(network)).toEqual(['c leg-too-short R2-R3']);
  });

  it('at the board opens the leg of the told end', () => {
    const points = [pointOf('R1')];
    const legs = chainOf('oA R1 oB', 5000);
    for (const [end, leg] of [
      ['oA', 'oA-R1'],
      ['oB', 'R1-oB'],
    ] as const) {
      const job = jobWith([extension({ between: [endOf(end), endOf('R1')] })], { points, legs });
      expect(removedOf(proposedOf(job))).toEqual([`${leg} 0-5000`]);
      expect(shapeOf(job, proposedOf(job)).shape).toBe('ring');
    }
  });

  it('carries a fused unit in the ring on its supply side', () => {
    const job = jobWith([extension({ through: ['W1', 'F1'] })]);
    const shape = shapeOf(job, proposedOf(job));
    expect(shape.ringNodes).toEqual(['R1', 'R2', 'W1', 'F1', 'R3', 'R4']);
    expect(placeOf(shape, 'F1/load').role).toBe('behind-fuse');
  });

  it('uses a leg that an earlier joint divided, on one side of it', () => {
    const job = jobWith([
      spur('b', { leg: 'R2-R3', alongMm: 2000 }, 'W2'),
      extension({ out: joint(4000), back: terminals }),
    ]);
    const network = proposedOf(job);
    expect(shapeOf(job, network).ringNodes).toEqual(['R1', 'R2', 'b/joint', 'c/joint-out', 'W1', 'R3', 'R4']);
    expect(removedOf(network)).toEqual(['R2-R3 4000-10000']);
    expect(problemsOf(network)).toEqual([]);
  });

  const faults: [string, Connection[], string[], string][] = [
    [
      'over the joint of an earlier spur',
      [spur('b', { leg: 'R2-R3', alongMm: 5000 }, 'W2'), extension({ out: joint(4000), back: joint(6000) })],
      ['c joint-cut-away R2-R3'],
      'ring',
    ],
    [
      'with its cuts the wrong way round',
      [extension({ out: joint(6000), back: joint(4000) })],
      ['c cut-order R2-R3'],
      'ring',
    ],
    ['beyond the end of the leg', [extension({ out: joint(12_000) })], ['c leg-too-short R2-R3'], 'ring'],
    [
      'between points that are no neighbours',
      [extension({ between: [endOf('R1'), endOf('R4')] })],
      ['c not-neighbours c'],
      'interconnected',
    ],
    [
      'in a leg between others',
      [extension({ between: [endOf('R1'), endOf('R3')], leg: 'R2-R3' })],
      ['c leg-elsewhere R2-R3'],
      'ring',
    ],
    [
      'of a leg that is gone',
      [extension({ id: 'b', through: ['W2'] }), extension({ leg: 'R2-R3' })],
      ['c leg-gone R2-R3'],
      'interconnected',
    ],
    [
      'from a point that is not there',
      [extension({ between: [endOf('W3'), endOf('R3')] })],
      ['c point-not-connected-here W3'],
      'ring',
    ],
    ['through nothing', [extension({ through: [] })], ['c nothing-to-connect c'], 'ring'],
    [
      'through a point of the ring',
      [extension({ through: ['R4'] })],
      ['c already-connected R4', 'c nothing-to-connect c'],
      'ring',
    ],
    [
      'of a circuit that the leg is not on',
      [extension({ circuit: 'p', leg: 'R2-R3' })],
      ['c leg-of-other-circuit R2-R3'],
      'ring',
    ],
  ];
  it.each(faults)('%s is reported, and its rest done', (_, connections, problems, shape) => {
    const job = jobWith(connections);
    const network = proposedOf(job);
    expect(problemsOf(network)).toEqual(problems);
    expect(shapeOf(job, network).shape).toBe(shape);
  });

  it('without legs goes by its neighbours, old cable of unknown length kept where a cut is told', () => {
    const points = [...smallRing().points, ...wanted];
    const job = jobOf({
      points,
      legs: [],
      circuit: { shape: 'ring' },
      connections: [
        extension(),
        extension({
          id: 'd',
          between: [endOf('R3'), endOf('R4')],
          out: joint(500),
          back: old(700),
          through: ['W2'],
        }),
      ],
    });
    const network = proposedOf(job);
    expect(edgesOf(network).filter((edge) => !edge.includes('fuse'))).toEqual([
      'c/cable-1: R2>W1 ?',
      'c/cable-2: W1>R3 ?',
      'd/cable-1: d/joint-out>W2 ?',
      'd/old-back: R4>W2 ?',
      'd/old-out: R3>d/joint-out ?',
    ]);
    expect(network.edges.find(({ id }) => id === 'd/old-out')).toMatchObject({ state: 'found', legId: null });
    expect(removedOf(network)).toEqual([]);
    expect(network.lifted).toEqual([
      { nodeId: 'R2', connectionId: 'c' },
      { nodeId: 'R3', connectionId: 'c' },
    ]);
    expect(problemsOf(network)).toEqual([]);
    const shape = shapeOf(job, network);
    expect(shape).toMatchObject({ shape: 'unknown', spurs: [] });
    expect(placeOf(shape, 'W1').role).toBe('claimed-ring');
    expect(placeOf(shape, 'd/joint-out').role).toBe('claimed-ring');
  });
});

describe('a new radial', () => {
  const device = { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 } as const;
  const radial = (feeds: { from: string; to: string }[]): Connection => ({
    id: 'c',
    kind: 'radial',
    board: 'board',
    device,
    feeds,
  });
  it('is a circuit of its own', () => {
    const feeds = [
      { from: 'origin', to: 'W1' },
      { from: 'W1', to: 'W2' },
      { from: 'origin', to: 'W3' },
    ];
    const job = jobWith([radial(feeds)]);
    const network = proposedOf(job);
    expect(network.circuits.map(({ id, isNew }) => [id, isNew])).toEqual([
      ['c/circuit', true],
      ['o', false],
    ]);
    expect(network.circuits[0]).toMatchObject({ device, circuit: null, name: 'New radial: W1, W2, W3' });
    expect(network.circuits[0]?.board?.id).toBe('board');
    expect(shapeOf(job, network, 'c/circuit')).toMatchObject({
      shape: 'radial',
      claimed: null,
      spurs: [],
      evidence: 'recorded',
    });
    expect(rolesOf(shapeOf(job, network, 'c/circuit'))).toEqual(['W1 radial', 'W2 radial', 'W3 radial']);
    expect(shapeOf(job, network)).toMatchObject({ shape: 'ring', joinedTo: [] });
    expect(problemsOf(network)).toEqual([]);
  });
  it('without feeds, or fed from elsewhere, is reported', () => {
    expect(problemsOf(proposedOf(jobWith([radial([])])))).toEqual(['c nothing-to-connect c']);
    expect(problemsOf(proposedOf(jobWith([radial([{ from: 'R1', to: 'W1' }])])))).toEqual([
      'c feed-not-reached R1',
    ]);
  });
});

describe('fusing a spur down', () => {
  const down = (more: Partial<Extract<Connection, { kind: 'fuse-down' }>> = {}): Connection => ({
    id: 'c',
    kind: 'fuse-down',
    leg: 'R3-S1',
    unit: 'F1',
    feeds: [{ from: 'S1', to: 'W1' }],
    ...more,
  });
  const cases: [string, Connection, string[]][] = [
    [
      'beside its source',
      down(),
      ['F1/fuse: F1>F1/load ?', 'R3-S1: F1/load>S1 10000', 'c/cable-1: R3>F1 ?', 'c/cable-2: S1>W1 ?'],
    ],
    [
      'in its leg',
      down({ alongMm: 3000 }),
      [
        'F1/fuse: F1>F1/load ?',
        'R3-S1/part-1: R3>F1 3000',
        'R3-S1/part-2: F1/load>S1 7000',
        'c/cable-1: S1>W1 ?',
      ],
    ],
    [
      'with a unit of its own',
      down({ unit: { fuseA: 13 }, feeds: [{ from: 'unit', to: 'W1' }] }),
      [
        'R3-S1: c/unit/load>S1 10000',
        'c/cable-1: R3>c/unit ?',
        'c/cable-2: c/unit/load>W1 ?',
        'c/unit/fuse: c/unit>c/unit/load ?',
      ],
    ],
  ];
  it.each(cases)('%s', (_, connection, edges) => {
    const job = jobWith([connection]);
    const network = proposedOf(job);
    expect(changed(network)).toEqual(edges);
    expect(problemsOf(network)).toEqual([]);
    expect(removedOf(network)).toEqual([]);
    const shape = shapeOf(job, network);
    expect([placeOf(shape, 'S1').role, placeOf(shape, 'W1').role]).toEqual(['behind-fuse', 'behind-fuse']);
    expect(shape.spurs.map(({ accessoryNodes }) => accessoryNodes.length)).toEqual([1]);
  });

  it('finds the source of a leg that was written down from the spur’s end', () => {
    const ring = smallRing();
    const legs = ring.legs.map((leg) => (leg.id === 'R3-S1' ? { ...leg, from: leg.to, to: leg.from } : leg));
    const whole = proposedOf(jobWith([down()], { legs }));
    expect(edgesOf(whole)).toEqual(expect.arrayContaining(['R3-S1: S1>F1/load 10000', 'c/cable-1: R3>F1 ?']));
    const cut = proposedOf(jobWith([down({ alongMm: 3000 })], { legs }));
    expect(edgesOf(cut)).toEqual(
      expect.arrayContaining(['R3-S1/part-1: S1>F1/load 3000', 'R3-S1/part-2: F1>R3 7000']),
    );
  });

  const faults: [string, Connection[], string[]][] = [
    ['on a leg of the ring', [down({ leg: 'R2-R3' })], ['c not-a-spur R2-R3']],
    [
      'with a unit that is used already',
      [spur('b', { point: 'R1' }, 'F1'), down()],
      ['b unit-by-spur F1', 'c already-connected F1'],
    ],
    ['beyond the end of the leg', [down({ alongMm: 11_000 })], ['c leg-too-short R3-S1']],
    ['feeding from elsewhere', [down({ feeds: [{ from: 'R1', to: 'W1' }] })], ['c feed-not-reached R1']],
    [
      'of a leg that is gone',
      [extension({ id: 'b', between: [endOf('R3'), endOf('S1')] }), down()],
      ['c leg-gone R3-S1'],
    ],
  ];
  it.each(faults)('%s is reported', (_, connections, problems) => {
    expect(problemsOf(proposedOf(jobWith(connections)))).toEqual(problems);
  });
});

describe('closing a spur into the ring', () => {
  const close = (more: Partial<Extract<Connection, { kind: 'close-spur' }>> = {}): Connection => ({
    id: 'c',
    kind: 'close-spur',
    point: 'S1',
    leg: 'R3-R4',
    back: { how: 'terminals' },
    ...more,
  });
  const cases: [string, Connection, string[], string[], string[]][] = [
    ['to the neighbour’s terminals', close(), ['c/cable-1: S1>R4 ?'], ['R3-R4 0-10000'], ['R3', 'S1', 'R4']],
    [
      'to a joint in the leg',
      close({ back: { how: 'joint', alongMm: 4000 } }),
      ['R3-R4/part-1: c/joint-back>R4 6000', 'c/cable-1: S1>c/joint-back ?'],
      ['R3-R4 0-4000'],
      ['R3', 'S1', 'c/joint-back', 'R4'],
    ],
    [
      'with the old cable itself',
      close({ back: { how: 'old-cable', alongMm: 4000 } }),
      ['R3-R4/part-1: S1>R4 6000'],
      ['R3-R4 0-4000'],
      ['R3', 'S1', 'R4'],
    ],
    [
      'on the other side of its source',
      close({ leg: 'R2-R3', back: { how: 'joint', alongMm: 4000 } }),
      ['R2-R3/part-1: R2>c/joint-back 4000', 'c/cable-1: S1>c/joint-back ?'],
      ['R2-R3 4000-10000'],
      ['c/joint-back', 'S1', 'R3', 'R4'],
    ],
  ];
  it.each(cases)('%s', (_, connection, edges, removed, tail) => {
    const job = jobWith([connection]);
    const network = proposedOf(job);
    expect(changed(network)).toEqual(edges);
    expect(removedOf(network)).toEqual(removed);
    expect(problemsOf(network)).toEqual([]);
    expect(shapeOf(job, network)).toMatchObject({
      shape: 'ring',
      spurs: [],
      ringNodes: ['R1', 'R2', ...tail],
    });
  });

  const ring = smallRing();
  const more = {
    points: [...ring.points, pointOf('T1')],
    legs: [...ring.legs, legOf('R3-T1', 1000)],
  };
  const faults: [string, Connection[], string[]][] = [
    ['of a point in the ring', [close({ point: 'R2' })], ['c not-a-spur R2']],
    ['by a leg elsewhere', [close({ leg: 'R1-R2' })], ['c not-from-source R1-R2']],
    ['by its own leg', [close({ leg: 'R3-S1' })], ['c not-from-source R3-S1']],
    ['by the leg of another spur', [close({ leg: 'R3-T1' })], ['c not-from-source R3-T1']],
    ['of a point that is not there', [close({ point: 'W1' })], ['c no-existing-point W1']],
    [
      'by a leg that is gone',
      [extension({ id: 'b', between: [endOf('R3'), endOf('R4')] }), close()],
      ['c leg-gone R3-R4'],
    ],
  ];
  it.each(faults)('%s is reported and not done', (_, connections, problems) => {
    const network = proposedOf(jobWith(connections, more));
    expect(problemsOf(network)).toEqual(problems);
    expect(edgesOf(network).filter((edge) => edge.startsWith('c/'))).toEqual([]);
  });
});

describe('points that go', () => {
  const changedPoint =
    (id: string, status: Point['status'], more: Partial<Point> = {}) =>
    (point: Point) =>
      point.id === id ? { ...point, status, ...more } : point;
  const ring = smallRing();

  it('leave a joint of their cables in their box when removed from the ring', () => {
    const points = ring.points.map(changedPoint('R2', 'removed'));
    const job = jobWith([spur('c', { point: 'R2' }, 'W1')], { points });
    const network = proposedOf(job);
    expect(network.nodes.find(({ id }) => id === 'R2/joined')).toMatchObject({
      kind: 'joint',
      pointId: 'R2',
      joint: null,
      state: 'new',
    });
    expect(shapeOf(job, network).ringNodes).toEqual(['R1', 'R2/joined', 'R3', 'R4']);
    expect(edgesOf(network)).toContain('c/cable-1: R2/joined>W1 ?');
    expect(problemsOf(network)).toEqual([]);
  });

  it('lose their leg when removed from the end of a spur, and so up the spur', () => {
    const points = [...ring.points, pointOf('S2')]
      .map(changedPoint('S1', 'removed'))
      .map(changedPoint('S2', 'removed'));
    const job = jobWith([spur('c', { point: 'S1' }, 'W1')], {
      points,
      legs: [...ring.legs, legOf('S1-S2', 2000)],
    });
    const network = proposedOf(job);
    expect(removedOf(network)).toEqual(['R3-S1 0-10000', 'S1-S2 0-2000']);
    expect(network.nodes.map(({ id }) => id)).toEqual(['R1', 'R2', 'R3', 'R4', 'o']);
    expect(problemsOf(network)).toEqual(['c no-existing-point S1']);
  });

  it('pass their cables to the point that replaces them', () => {
    const replacing = wantedOf('N1', { replaces: 'R2', kind: 'fused-unit', unit: { switched: true } });
    const points = [...ring.points.map(changedPoint('R2', 'replaced')), replacing];
    const connections = [spur('c', { point: 'R2' }, 'W1'), extension({ id: 'd', through: ['W2'] })];
    const job = jobWith(connections, { points });
    const network = proposedOf(job);
    expect(network.nodes.some(({ id }) => id === 'R2')).toBe(false);
    expect(shapeOf(job, network).ringNodes).toEqual(['R1', 'N1', 'W2', 'R3', 'R4']);
    expect(edgesOf(network)).toEqual(
      expect.arrayContaining(['R1-R2: R1>N1 10000', 'c/cable-1: N1/load>W1 ?', 'd/cable-1: N1>W2 ?']),
    );
    expect(problemsOf(network)).toEqual([]);
  });

  it('are extended from the old box to a replacement that stands elsewhere', () => {
    const placed = (alongMm: number) => ({ wall: 'w', side: 'left' as const, alongMm, heightMm: 450 });
    const at = (alongMm: number) => {
      const replacing = wantedOf('N1', { replaces: 'R2', place: placed(alongMm) });
      const points = ring.points.map((point) =>
        point.id === 'R2' ? { ...point, status: 'replaced' as const, place: placed(1000) } : point,
      );
      const job = jobWith([], { points: [...points, replacing] });
      return { job, network: proposedOf(job) };
    };
    const { job, network } = at(1800);
    expect(shapeOf(job, network).ringNodes).toEqual(['R1', 'R2/joined-1', 'N1', 'R2/joined-2', 'R3', 'R4']);
    expect(edgesOf(network)).toEqual(
      expect.arrayContaining(['R1-R2: R1>R2/joined-1 10000', 'R2/extension-1: R2/joined-1>N1 ?']),
    );
    expect(network.edges.filter(({ state }) => state === 'new').map(({ id }) => id)).toEqual([
      'R2/extension-1',
      'R2/extension-2',
    ]);
    expect(problemsOf(network)).toEqual([]);
    // Within reach of the old box’s own slack it is the same box.
    expect(shapeOf(at(1060).job, at(1060).network).ringNodes).toEqual(['R1', 'N1', 'R3', 'R4']);
  });

  it('keep a fused unit’s sides apart when another takes its place', () => {
    const unit = (id: string, more: Partial<Point>) => pointOf(id, { kind: 'fused-unit', ...more });
    const points = [
      pointOf('R1'),
      pointOf('S1'),
      unit('U', { status: 'replaced' }),
      unit('N', { status: 'wanted', replaces: 'U' }),
    ];
    const network = proposedOf(
      jobWith([], { points, legs: [...chainOf('oA R1 oB'), ...chainOf('R1 U S1')] }),
    );
    expect(edgesOf(network)).toEqual(expect.arrayContaining(['R1-U: R1>N ?', 'U-S1: N/load>S1 ?']));
    expect(network.edges.some(({ id }) => id === 'U/fuse')).toBe(false);
  });

  it('stay when nothing is said to replace them', () => {
    const job = jobWith([], { points: ring.points.map(changedPoint('R2', 'replaced')) });
    expect(edgesOf(proposedOf(job))).toEqual(edgesOf(foundNetwork(job)));
  });

  it('go by the survey’s word without legs', () => {
    const points = [
      pointOf('a', { status: 'removed' }),
      pointOf('s', { status: 'removed', asFound: { role: 'spur' } }),
      pointOf('b', { status: 'replaced' }),
      wantedOf('n', { replaces: 'b' }),
    ];
    const job = jobOf({
      points,
      legs: [],
      circuit: { shape: 'ring' },
      connections: [spur('c', { point: 'n' }, 'W1')],
    });
    const network = proposedOf({ ...job, points: [...points, wantedOf('W1')] });
    expect(network.nodes.map(({ id }) => id)).toEqual(['W1', 'a/joined', 'n', 'o']);
    expect(network.unwired.get('o')?.map(({ id }) => id)).toEqual(['n']);
    const shape = shapeOf({ ...job, points: [...points, wantedOf('W1')] }, network);
    expect(rolesOf(shape)).toEqual(['W1 unfused-spur', 'a/joined claimed-ring', 'n claimed-ring']);
    expect(problemsOf(network)).toEqual([]);
  });
});

describe('a scheme as a whole', () => {
  it('leaves wanted points out that it does not join on', () => {
    const network = proposedOf(jobWith([spur('c', { point: 'R1' }, 'W1')]));
    expect(network.nodes.filter(({ pointId }) => pointId?.startsWith('W')).map(({ id }) => id)).toEqual([
      'W1',
    ]);
  });

  it('carries on from points of earlier connections', () => {
    const job = jobWith([extension(), spur('d', { point: 'W1' }, 'W2')]);
    const shape = shapeOf(job, proposedOf(job));
    expect(shape.spurs.map(({ rootNode }) => rootNode)).toEqual(['R3', 'W1']);
    expect(placeOf(shape, 'W2')).toMatchObject({ rootNode: 'W1', upstreamEdgeId: 'd/cable-1' });
  });

  it('shows a spur that is taken from a spur as one tree with two accessories', () => {
    const job = jobWith([spur('c', { point: 'S1' }, 'W1')]);
    expect(shapeOf(job, proposedOf(job)).spurs).toMatchObject([
      { rootNode: 'R3', accessoryNodes: ['S1', 'W1'], edgeIds: ['R3-S1', 'c/cable-1'], isNew: true },
    ]);
  });

  it('does not pretend that a broken ring is mended by an extension elsewhere', () => {
    const points = ['a', 'b', 'c', 'd'].map((id) => pointOf(id));
    const legs = [...chainOf('oA a b', 1000), ...chainOf('c d oB', 1000)];
    const job = jobWith([extension({ between: [endOf('a'), endOf('b')] })], { points, legs });
    const shape = shapeOf(job, proposedOf(job));
    expect(shape.shape).toBe('broken-ring');
    expect(rolesOf(shape).filter((role) => role.endsWith(' ring'))).toEqual([
      'W1 ring',
      'a ring',
      'b ring',
      'c ring',
      'd ring',
    ]);
  });
});
