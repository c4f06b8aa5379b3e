import { describe, expect, it } from 'vitest';
import type { Connection } from '#model/scheme.ts';
import {
  chainOf,
  endOf,
  jobOf,
  legOf,
  placeOf,
  pointOf,
  problemsOf,
  proposedOf,
  shapeOf,
  wantedOf,
} from './circuit-job.ts';

const ringIds = ['R1', 'R2', 'R3', 'R4', 'R5', 'R6', 'R7', 'R8', 'R9'];
const lengthsMm = [6300, 6200, 3600, 2400, 7300, 7000, 5300, 8500, 7900, 6600];

/** An invented terrace: nine points on the ring, one spur, three sockets and a boiler wanted. */
function terrace(connections: Connection[]) {
  const legs = chainOf(`oA ${ringIds.join(' ')} oB`).map((leg, n) => ({
    ...leg,
    lengthMm: lengthsMm[n] ?? 0,
  }));
  const boiler = wantedOf('W4', { kind: 'fused-unit', unit: { switched: true, fuseA: 3, flexOutlet: true } });
  const points = [...ringIds, 'S1'].map((id) => pointOf(id));
  return jobOf({
    points: [...points, wantedOf('W1'), wantedOf('W2'), wantedOf('W3'), boiler],
    legs: [...legs, legOf('R9-S1', 7100)],
    circuit: { shape: 'ring' },
    connections,
  });
}

const boilerSpur: Connection = { id: 'c4', kind: 'fused-spur', from: { point: 'R6' }, unit: 'W4', feeds: [] };
const joint = { kind: 'maintenance-free', ratingA: 32, accessible: false } as const;

describe('a terrace’s ring with several connections at once', () => {
  it('carries three unfused spurs, one from a joint, and a fused one', () => {
    const job = terrace([
      { id: 'c1', kind: 'spur', from: { point: 'R1' }, to: 'W1' },
      { id: 'c2', kind: 'spur', from: { leg: 'R8-R9', alongMm: 6000, joint }, to: 'W2' },
      { id: 'c3', kind: 'spur', from: { point: 'R8' }, to: 'W3' },
      boilerSpur,
    ]);
    const network = proposedOf(job);
    const shape = shapeOf(job, network);
    expect(problemsOf(network)).toEqual([]);
    expect(shape).toMatchObject({ shape: 'ring', ringLengthMm: 61_100, contradicts: false });
    expect(shape.ringNodes).toEqual([...ringIds.slice(0, 8), 'c2/joint', 'R9']);
    expect(
      shape.spurs.map(({ rootNode, accessoryNodes, isNew }) => [rootNode, accessoryNodes, isNew]),
    ).toEqual([
      ['R9', ['S1'], false],
      ['R1', ['W1'], true],
      ['c2/joint', ['W2'], true],
      ['R8', ['W3'], true],
      ['R6', ['W4'], true],
    ]);
    expect(placeOf(shape, 'W4/load')).toMatchObject({ role: 'behind-fuse', fuseA: 3, rootNode: 'R6' });
  });

  it('takes in its spur and a new point, and loses nothing on the way', () => {
    const job = terrace([
      {
        id: 'c1',
        kind: 'close-spur',
        point: 'S1',
        leg: 'R9-oB',
        back: { how: 'joint', alongMm: 2000, joint },
      },
      {
        id: 'c2',
        kind: 'ring-extension',
        circuit: 'o',
        between: [endOf('R9'), endOf('R8')],
        out: { how: 'joint', alongMm: 5000 },
        back: { how: 'joint', alongMm: 4000 },
        through: ['W2', 'W3'],
      },
      boilerSpur,
    ]);
    const network = proposedOf(job);
    const shape = shapeOf(job, network);
    expect(problemsOf(network)).toEqual([]);
    expect(shape.ringNodes.slice(7)).toEqual([
      'R8',
      'c2/joint-back',
      'W3',
      'W2',
      'c2/joint-out',
      'R9',
      'S1',
      'c1/joint-back',
    ]);
    expect(network.removed).toEqual([
      { legId: 'R8-R9', fromMm: 4000, toMm: 5000, connectionId: 'c2' },
      { legId: 'R9-oB', fromMm: 0, toMm: 2000, connectionId: 'c1' },
    ]);
    expect(shape.ringEdges.at(-1)).toMatchObject({ id: 'R9-oB/part-1', originEnd: 'B', lengthMm: 4600 });
  });

  it('puts two accessories on one unfused spur right by fusing it down', () => {
    const bad: Connection = { id: 'c1', kind: 'spur', from: { point: 'S1' }, to: 'W2' };
    const worse = shapeOf(terrace([bad]), proposedOf(terrace([bad])));
    expect(worse.spurs.find(({ rootNode }) => rootNode === 'R9')?.accessoryNodes).toEqual(['S1', 'W2']);
    const down: Connection = {
      id: 'c1',
      kind: 'fuse-down',
      leg: 'R9-S1',
      unit: { fuseA: 13 },
      feeds: [{ from: 'S1', to: 'W2' }],
    };
    const mended = shapeOf(terrace([down]), proposedOf(terrace([down])));
    expect(mended.spurs.find(({ rootNode }) => rootNode === 'R9')?.accessoryNodes).toEqual(['c1/unit']);
    expect(placeOf(mended, 'W2')).toMatchObject({
      role: 'behind-fuse',
      fuseA: 13,
      behindUnit: 'c1/unit/load',
    });
  });
});
