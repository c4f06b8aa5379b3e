import { describe, expect, it } from 'vitest';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import { chainOf, edgesOf, jobOf, legOf, pointOf, smallRing, wantedOf } from './circuit-job.ts';

const unit = (id: string) => pointOf(id, { kind: 'fused-unit', unit: { fuseA: 13, switched: true } });

describe('the network as found', () => {
  it('has origins, points and legs, sorted by id, and remembers told ends', () => {
    const network = foundNetwork(jobOf(smallRing()));
    expect(network.nodes.map(({ id, kind }) => `${id} ${kind}`)).toEqual([
      'R1 terminals',
      'R2 terminals',
      'R3 terminals',
      'R4 terminals',
      'S1 terminals',
      'o origin',
    ]);
    expect(network.edges.map(({ id, originEnd }) => [id, originEnd])).toEqual([
      ['R1-R2', null],
      ['R2-R3', null],
      ['R3-R4', null],
      ['R3-S1', null],
      ['R4-oB', 'B'],
      ['oA-R1', 'A'],
    ]);
    expect(network.edges[0]?.partMm).toEqual({ fromMm: 0, toMm: 10_000 });
    expect(network.unwired.size).toBe(0);
  });

  it('gives a joint its make and a fused unit two sides with a fuse between them', () => {
    const made = { kind: 'screw', ratingA: 30, accessible: true } as const;
    const points = [pointOf('J', { kind: 'joint', joint: made }), unit('U')];
    const network = foundNetwork(jobOf({ points, legs: chainOf('o J U') }));
    expect(network.nodes.find(({ id }) => id === 'J')).toMatchObject({ kind: 'joint', joint: made });
    expect(network.edges.find(({ id }) => id === 'U/fuse')).toMatchObject({
      kind: 'fuse',
      from: 'U',
      to: 'U/load',
      fuseA: 13,
    });
  });

  it('leaves the rating of a fuse nobody looked at unknown', () => {
    const network = foundNetwork(
      jobOf({ points: [pointOf('U', { kind: 'fused-unit' })], legs: chainOf('o U') }),
    );
    expect(network.edges.find(({ id }) => id === 'U/fuse')?.fuseA).toBeNull();
  });

  it('gives fused grid modules load sides, found by what they feed or by the side', () => {
    const modules = [
      { kind: 'switch' },
      { kind: 'fuse', feeds: 'F1', fuseA: 3 },
      { kind: 'fuse', feeds: 'F2', fuseA: 13 },
    ];
    const points = [pointOf('G', { kind: 'grid', modules }), pointOf('F1'), pointOf('F2'), pointOf('F3')];
    const legs = [legOf('o-G'), legOf('G-F1'), legOf('F2-G'), legOf('G>-F3')];
    const network = foundNetwork(jobOf({ points, legs }));
    expect(edgesOf(network)).toEqual([
      'F2-G: F2>G/module-3 ?',
      'G-F1: G/module-2>F1 ?',
      'G-F3: G/module-2>F3 ?',
      'G/module-2/fuse: G>G/module-2 ?',
      'G/module-3/fuse: G>G/module-3 ?',
      'o-G: o>G ?',
    ]);
  });

  const sides: [string, string[], string[]][] = [
    [
      'on a spur: supply towards the board, load beyond',
      ['o R1 R2 o', 'R1 U S'],
      ['R1-U: R1>U', 'U-S: U/load>S'],
    ],
    ['in the ring: both legs on the supply', ['o R1 U o'], ['R1-U: R1>U', 'U-o: U>o']],
    [
      'in the ring with a load: the branch is on the load',
      ['o R1 U o', 'U S'],
      ['R1-U: R1>U', 'U-S: U/load>S', 'U-o: U>o'],
    ],
    ['written down the other way round', ['o R1 R2 o', 'S U R1'], ['S-U: S>U/load', 'U-R1: U>R1']],
    ['said in the legs', ['o >U', 'U> S'], ['U-S: U/load>S', 'o-U: o>U']],
    ['with nothing leading to the board: the first leg by id', ['X U S'], ['U-S: U>S', 'X-U: X>U/load']],
    ['a loop behind it', ['o U S T U'], ['S-T: S>T', 'T-U: T>U/load', 'U-S: U/load>S', 'o-U: o>U']],
  ];
  it.each(sides)('finds the sides of a fused unit %s', (_, chains, expected) => {
    const points = ['R1', 'R2', 'S', 'T', 'X'].map((id) => pointOf(id));
    const legs = chains.flatMap((chain) => chainOf(chain));
    const edges = edgesOf(foundNetwork(jobOf({ points: [...points, unit('U')], legs })));
    expect(edges).toEqual(expect.arrayContaining(expected.map((edge) => `${edge} ?`)));
  });

  it('has wanted points only where legs reach them, and lists points without legs by circuit', () => {
    const points = [pointOf('R2'), pointOf('R1'), wantedOf('W1', { circuit: 'o' }), wantedOf('W2')];
    const network = foundNetwork(jobOf({ points, legs: [legOf('o-W2')] }));
    expect(network.nodes.map(({ id }) => id)).toEqual(['R1', 'R2', 'W2', 'o']);
    expect(network.unwired.get('o')?.map(({ id }) => id)).toEqual(['R1', 'R2']);
  });

  it('leaves out legs that end nowhere', () => {
    const network = foundNetwork(jobOf({ points: [pointOf('R1')], legs: [legOf('o-R1'), legOf('R1-gone')] }));
    expect(network.edges.map(({ id }) => id)).toEqual(['o-R1']);
  });
});
