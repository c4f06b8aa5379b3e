import { describe, expect, it } from 'vitest';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import type { Circuit, Point, Reading } from '#model/installation.ts';
import {
  chainOf,
  jobOf,
  legOf,
  placeOf,
  pointOf,
  proposedOf,
  rolesOf,
  shapeOf,
  smallRing,
} from './circuit-job.ts';

function shapeOfChains(
  chains: readonly string[],
  { claimed, points = [] }: { claimed?: 'ring' | 'radial' | undefined; points?: Point[] } = {},
) {
  const legs = chains.flatMap((chain) => chainOf(chain, 1000));
  const named = [...new Set(chains.flatMap((chain) => chain.split(' ')))];
  const own = new Set([...points.map(({ id }) => id), 'o', 'oA', 'oB', 'p']);
  const sockets = named.filter((id) => !own.has(id)).map((id) => pointOf(id));
  const circuit = claimed ? { shape: claimed } : {};
  const job = jobOf({ points: [...sockets, ...points], legs, circuit });
  return shapeOf(job, foundNetwork(job));
}

const unit = (id: string, fuseA?: number) =>
  pointOf(id, { kind: 'fused-unit', unit: { switched: true, ...(fuseA === undefined ? {} : { fuseA }) } });

describe('the shape of a circuit', () => {
  const cases: [string, string[], 'ring' | 'radial' | undefined, string, boolean][] = [
    ['a ring', ['oA a b c oB'], 'ring', 'ring', false],
    ['a ring of one point', ['oA a oB'], undefined, 'ring', false],
    ['a ring with a spur', ['oA a b oB', 'a s'], 'ring', 'ring', false],
    ['a ring that was claimed to be a radial', ['o a b o'], 'radial', 'ring', true],
    ['a radial', ['o a b c'], 'radial', 'radial', false],
    ['a branched radial', ['o a b', 'a c', 'o d'], 'radial', 'radial', false],
    ['a tree that nobody called anything', ['o a b'], undefined, 'radial', false],
    ['a ring with a gap', ['oA a b', 'c d oB'], 'ring', 'broken-ring', true],
    ['a gap, ends told, nothing claimed', ['oA a b', 'c oB'], undefined, 'broken-ring', false],
    ['a gap, ends told, a radial claimed', ['oA a b', 'c oB'], 'radial', 'broken-ring', true],
    ['two cables at the board, nothing claimed', ['o a', 'o b'], undefined, 'broken-ring', false],
    ['one end at the board, a ring claimed', ['o a b'], 'ring', 'broken-ring', true],
    ['a loop behind a feed', ['o a b c a'], 'ring', 'lollipop', true],
    ['two cables between two points', ['o a b', 'b a'], undefined, 'lollipop', false],
    ['a ring with a bridge across', ['oA a b c oB', 'a c'], 'ring', 'interconnected', true],
    ['two loops from the origin', ['o a b o', 'o c d o'], 'ring', 'interconnected', true],
    ['a ring with a loop on a spur', ['o a b o', 'a s t u s'], 'ring', 'interconnected', true],
    ['legs that do not reach the board', ['a b c'], 'ring', 'unknown', false],
  ];
  it.each(cases)('%s', (_, chains, claimed, shape, contradicts) => {
    const found = shapeOfChains(chains, { claimed });
    expect({ shape: found.shape, contradicts: found.contradicts }).toEqual({ shape, contradicts });
  });

  it('is unknown while a claimed ring has points that no leg reaches', () => {
    const shape = shapeOfChains(['oA a b'], { claimed: 'ring', points: [pointOf('c')] });
    expect(shape).toMatchObject({ shape: 'unknown', evidence: 'claimed', unwiredPointIds: ['c'] });
    expect(rolesOf(shape)).toEqual(['a claimed-ring', 'b claimed-ring', 'c claimed-ring']);
  });

  it('does not take a loop behind a fuse for the circuit’s own', () => {
    const shape = shapeOfChains(['oA a b oB', 'a U s t U'], { claimed: 'ring', points: [unit('U', 13)] });
    expect(shape.shape).toBe('ring');
    expect(placeOf(shape, 't')).toMatchObject({ role: 'behind-fuse', fuseA: 13, behindUnit: 'U/load' });
  });

  it('takes a fuse that cable goes round for an interconnection', () => {
    const legs = [...chainOf('oA a b oB'), legOf('a->U'), legOf('U>-b')];
    const job = jobOf({ points: [pointOf('a'), pointOf('b'), unit('U')], legs });
    expect(shapeOf(job, foundNetwork(job)).shape).toBe('interconnected');
  });
});

describe('a ring', () => {
  it('is listed from end A whichever way its legs were written down', () => {
    const job = jobOf({
      points: ['a', 'b', 'c'].map((id) => pointOf(id)),
      legs: [legOf('b-c', 2000), legOf('a-oB', 1000), legOf('b-a', 3000), legOf('c-oA', 4000)],
    });
    const shape = shapeOf(job, foundNetwork(job));
    expect(shape.ringNodes).toEqual(['c', 'b', 'a']);
    expect(shape.ringEdges.map(({ id }) => id)).toEqual(['c-oA', 'b-c', 'b-a', 'a-oB']);
    expect(shape.ringLengthMm).toBe(10_000);
  });

  it('has no length while a leg’s is unknown', () => {
    const job = jobOf({ points: [pointOf('a')], legs: [legOf('oA-a', 1), legOf('a-oB')] });
    expect(shapeOf(job, foundNetwork(job)).ringLengthMm).toBeNull();
  });

  it('has a fused unit that is wired in it among its nodes', () => {
    const shape = shapeOfChains(['oA a U b oB', 'U s'], { points: [unit('U', 3)] });
    expect(shape.ringNodes).toEqual(['a', 'U', 'b']);
    expect(shape.spurs).toEqual([]);
    expect(placeOf(shape, 's')).toMatchObject({
      role: 'behind-fuse',
      rootNode: 'U',
      fuseA: 3,
      behindUnit: 'U/load',
      upstreamNode: 'U/load',
      depth: 1,
    });
  });

  it('tells every place from what it hangs on', () => {
    const shape = shapeOfChains(['oA a b oB', 'b s t U v', 'o w'], { points: [unit('U')] });
    expect(rolesOf(shape)).toEqual([
      'U unfused-spur',
      'U/load behind-fuse',
      'a ring',
      'b ring',
      's unfused-spur',
      't unfused-spur',
      'v behind-fuse',
      'w unfused-spur',
    ]);
    expect(placeOf(shape, 't')).toMatchObject({
      upstreamNode: 's',
      upstreamEdgeId: 's-t',
      rootNode: 'b',
      depth: 2,
    });
    expect(placeOf(shape, 'a')).toMatchObject({ upstreamNode: null, rootNode: null, depth: 0 });
    expect(placeOf(shape, 'v')).toMatchObject({ fuseA: null, behindUnit: 'U/load', depth: 4 });
    expect(placeOf(shape, 'w')).toMatchObject({ rootNode: 'o' });
  });

  it('has one spur for every cable that leaves it, up to the first fuse, joints and blanks apart', () => {
    const points = [pointOf('j', { kind: 'joint' }), pointOf('k', { kind: 'blank' }), unit('U')];
    const shape = shapeOfChains(['oA a b oB', 'b j s', 'j U v', 'b k'], { points });
    expect(shape.spurs).toEqual([
      {
        id: 'spur@b-j',
        circuitId: 'o',
        rootNode: 'b',
        edgeIds: ['b-j', 'j-U', 'j-s'],
        accessoryNodes: ['U', 's'],
        jointNodes: ['j'],
        isNew: false,
      },
      {
        id: 'spur@b-k',
        circuitId: 'o',
        rootNode: 'b',
        edgeIds: ['b-k'],
        accessoryNodes: [],
        jointNodes: [],
        isNew: false,
      },
    ]);
  });

  it('counts the smallest of two fuses in a row', () => {
    const shape = shapeOfChains(['oA a oB', 'a U V s'], { points: [unit('U', 3), unit('V', 13)] });
    expect(placeOf(shape, 's')).toMatchObject({ fuseA: 3, behindUnit: 'U/load' });
    const other = shapeOfChains(['oA a oB', 'a U V s'], { points: [unit('U', 13), unit('V', 3)] });
    expect(placeOf(other, 's')).toMatchObject({ fuseA: 3, behindUnit: 'V/load' });
  });
});

describe('a circuit that is no closed ring', () => {
  it('has no spurs as a radial, only branches', () => {
    const shape = shapeOfChains(['o a b', 'a c'], { claimed: 'radial' });
    expect(shape.spurs).toEqual([]);
    expect(placeOf(shape, 'c')).toMatchObject({ role: 'radial', rootNode: 'o', upstreamNode: 'a', depth: 2 });
  });

  it('keeps what was wired in a broken ring apart from its spurs', () => {
    const spur = pointOf('s', { asFound: { role: 'spur' } });
    const shape = shapeOfChains(['oA a b s', 'c d oB', 'd t'], { claimed: 'ring', points: [spur] });
    expect(shape.shape).toBe('broken-ring');
    expect(rolesOf(shape)).toEqual([
      'a ring',
      'b ring',
      'c ring',
      'd ring',
      's unfused-spur',
      't unfused-spur',
    ]);
    expect(placeOf(shape, 'b')).toMatchObject({ upstreamNode: 'a', rootNode: null });
    expect(shape.spurs.map(({ id, rootNode }) => [id, rootNode])).toEqual([
      ['spur@b-s', 'b'],
      ['spur@d-t', 'd'],
    ]);
  });

  it('hangs spurs from the loop of a lollipop that was claimed to be a ring', () => {
    const shape = shapeOfChains(['o j a b j', 'a s'], { claimed: 'ring' });
    expect(rolesOf(shape)).toEqual(['a radial', 'b radial', 'j radial', 's unfused-spur']);
    expect(placeOf(shape, 'a')).toMatchObject({ rootNode: 'o', depth: 2, upstreamNode: 'j' });
    expect(shape.spurs.map(({ rootNode }) => rootNode)).toEqual(['a']);
  });

  it('says which points a broken ring leaves without supply', () => {
    const shape = shapeOfChains(['oA a', 'b oB', 'c d'], { claimed: 'ring' });
    expect(rolesOf(shape)).toEqual(['a ring', 'b ring', 'c unreached', 'd unreached']);
  });
});

describe('two circuits', () => {
  const circuits: Circuit[] = ['o', 'p'].map((id) => ({ id, name: id, board: 'board', use: 'sockets' }));
  const points = [pointOf('a'), pointOf('b'), pointOf('x', { circuit: 'p' }), pointOf('y', { circuit: 'p' })];
  const own = [...chainOf('oA a b oB'), ...chainOf('pA x y pB').map((leg) => ({ ...leg, circuit: 'p' }))];

  it('are told apart', () => {
    const job = jobOf({ circuits, points, legs: own });
    expect(shapeOf(job, foundNetwork(job), 'o')).toMatchObject({
      shape: 'ring',
      ringNodes: ['a', 'b'],
      joinedTo: [],
    });
    expect(shapeOf(job, foundNetwork(job), 'p')).toMatchObject({ shape: 'ring', ringNodes: ['x', 'y'] });
  });

  it('are interconnected when a cable joins them, and every node still belongs to one', () => {
    const job = jobOf({ circuits, points, legs: [...own, legOf('b-x')] });
    const [o, p] = ['o', 'p'].map((id) => shapeOf(job, foundNetwork(job), id));
    expect(o).toMatchObject({ shape: 'interconnected', joinedTo: ['p'], ringNodes: [] });
    expect(p).toMatchObject({ shape: 'interconnected', joinedTo: ['o'] });
    expect(o?.places.map(({ nodeId }) => nodeId)).toEqual(['a', 'b', 'o']);
    expect(p?.places.map(({ nodeId, role }) => `${nodeId} ${role}`)).toEqual([
      'p origin',
      'x ring',
      'y ring',
    ]);
  });

  it('are interconnected when their ends at the board are changed over', () => {
    const legs = [
      ...chainOf('o a b'),
      ...chainOf('p x y').map((leg) => ({ ...leg, circuit: 'p' })),
      legOf('b-p'),
      legOf('y-o', undefined, { circuit: 'p' }),
    ];
    const job = jobOf({ circuits, points, legs });
    expect(shapeOf(job, foundNetwork(job), 'o').shape).toBe('interconnected');
  });
});

describe('the evidence for a shape', () => {
  const loop = (id: 'L' | 'N' | 'cpc', ohm: number, phase: 'before' | 'after' = 'before'): Reading => ({
    id: `r-${id}-${phase}-${ohm}`,
    circuit: 'o',
    kind: 'loop',
    loop: id,
    from: 'end-to-end',
    ohm,
    phase,
  });
  const cases: [string, Reading[], string][] = [
    ['no readings', [], 'recorded'],
    ['all three loops', [loop('L', 0.5), loop('N', 0.55), loop('cpc', 0.8)], 'proved'],
    ['line and neutral apart', [loop('L', 0.5), loop('N', 0.56), loop('cpc', 0.8)], 'recorded'],
    ['no protective conductor loop', [loop('L', 0.5), loop('N', 0.5)], 'recorded'],
    ['an open neutral', [loop('L', 0.5), loop('N', 1999), loop('cpc', 0.8)], 'recorded'],
    ['an open line and neutral', [loop('L', 1999), loop('N', 1999), loop('cpc', 0.8)], 'recorded'],
    [
      'readings after the work only',
      [loop('L', 0.5, 'after'), loop('N', 0.5, 'after'), loop('cpc', 0.8, 'after')],
      'recorded',
    ],
  ];
  it.each(cases)('%s', (_, readings, evidence) => {
    const job = jobOf({ ...smallRing(), readings, circuit: { shape: 'ring' } });
    expect(shapeOf(job, foundNetwork(job)).evidence).toBe(evidence);
  });

  it('is proved by an order that was measured, and not by readings where legs do not close', () => {
    const measured = jobOf({ ...smallRing(), circuit: { certainty: { order: 'measured' } } });
    expect(shapeOf(measured, foundNetwork(measured)).evidence).toBe('proved');
    const readings = [loop('L', 0.5), loop('N', 0.5), loop('cpc', 0.8)];
    const broken = jobOf({
      points: [pointOf('a')],
      legs: [legOf('o-a')],
      circuit: { shape: 'ring' },
      readings,
    });
    expect(shapeOf(broken, foundNetwork(broken))).toMatchObject({
      shape: 'broken-ring',
      evidence: 'recorded',
    });
  });
});

describe('a quoting visit, without legs', () => {
  const points = [
    pointOf('a'),
    pointOf('b', { asFound: { role: 'ring' } }),
    pointOf('s', { asFound: { role: 'spur' } }),
    pointOf('U', { kind: 'fused-unit' }),
  ];
  const spur = (id: string, from: string, to: string) =>
    ({ id, kind: 'spur', from: { point: from }, to }) as const;
  const wanted = ['w', 'x', 'y'].map((id) => pointOf(id, { status: 'wanted' }));
  const connections = [spur('c1', 'a', 'w'), spur('c2', 's', 'x'), spur('c3', 'U', 'y')];

  it('goes by the survey’s word where a ring is claimed', () => {
    const job = jobOf({ points: [...points, ...wanted], legs: [], circuit: { shape: 'ring' }, connections });
    const shape = shapeOf(job, proposedOf(job));
    expect(shape).toMatchObject({ shape: 'unknown', evidence: 'claimed', contradicts: false });
    expect(rolesOf(shape)).toEqual([
      'U claimed-ring',
      'U/load behind-fuse',
      'a claimed-ring',
      'b claimed-ring',
      's claimed-spur',
      'w unfused-spur',
      'x unfused-spur',
      'y behind-fuse',
    ]);
    expect(
      shape.spurs.map(({ rootNode, accessoryNodes, isNew }) => [rootNode, accessoryNodes, isNew]),
    ).toEqual([
      ['a', ['w'], true],
      ['s', ['s', 'x'], true],
    ]);
    expect(shape.unwiredPointIds).toEqual(['U', 'a', 'b', 's']);
  });

  it('says no more than the survey where nothing or a radial is claimed', () => {
    const open = jobOf({ points, legs: [] });
    expect(shapeOf(open, foundNetwork(open))).toMatchObject({ shape: 'unknown', evidence: 'none' });
    expect(rolesOf(shapeOf(open, foundNetwork(open)))).toEqual([
      'U unreached',
      'U/load behind-fuse',
      'a unreached',
      'b claimed-ring',
      's claimed-spur',
    ]);
    const radial = jobOf({
      points: [...points, ...wanted],
      legs: [],
      circuit: { shape: 'radial' },
      connections,
    });
    const shape = shapeOf(radial, proposedOf(radial));
    expect(shape).toMatchObject({ shape: 'unknown', evidence: 'claimed', spurs: [] });
    expect(placeOf(shape, 'w').role).toBe('radial');
  });
});
