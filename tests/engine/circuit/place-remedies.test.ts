import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import { withPlacedRemedies } from '#engine/circuit/place-remedies.ts';
import type { Circuit, Device, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Remedy, Scheme } from '#model/scheme.ts';
import { carriedOut, chainOf, jobOf, legOf, pointOf, schemeOf, wantedOf } from './circuit-job.ts';

const device = (ratingA: number): Device => ({ standard: 'BS-EN-60898', curve: 'B', ratingA });
const circuitOf = (id: string, more: Partial<Circuit> = {}): Circuit => ({
  id,
  name: id,
  board: 'board',
  use: 'sockets',
  device: device(32),
  ...more,
});
const onP = (id: string) => pointOf(id, { circuit: 'p' });

/** A ring `o` on one board with a spur to a single, a ring `p` on another. */
function house(points: Point[] = []): Job {
  return {
    ...jobOf({
      points: [
        pointOf('R1'),
        pointOf('R2'),
        pointOf('S1', { kind: 'socket-single' }),
        onP('U1'),
        ...['W1', 'W2'].map((id) => wantedOf(id)),
        wantedOf('F1', { kind: 'fused-unit' }),
        ...points,
      ],
      legs: [
        ...chainOf('oA R1 R2 oB', 5000),
        legOf('R2-S1', 5000),
        ...chainOf('pA U1 pB', 5000).map((leg) => ({ ...leg, circuit: 'p' })),
      ],
      circuits: [circuitOf('o'), circuitOf('p', { board: 'other', device: device(20) })],
    }),
    boards: [
      { id: 'board', label: 'Board', rcds: [] },
      { id: 'other', label: 'Other board', rcds: [] },
    ],
  };
}

const spur = (id: string, from: string, to: string): Connection => ({
  id,
  kind: 'spur',
  from: { point: from },
  to,
});
const onO = spur('c', 'R1', 'W1');
const ownUnit: Connection = {
  id: 'd',
  kind: 'fused-spur',
  from: { point: 'R2' },
  unit: { fuseA: 13 },
  feeds: [{ from: 'unit', to: 'W2' }],
};

function worked(job: Job, connections: Connection[], remedies: Remedy[]) {
  const scheme: Scheme = { ...schemeOf(connections), remedies };
  const found = foundNetwork(job);
  const network = carriedOut(job, found, scheme);
  return { scheme, found, network, placed: withPlacedRemedies(job, network, scheme) };
}
const targets = (job: Job, connections: Connection[], remedies: Remedy[]) =>
  worked(job, connections, remedies).placed.remedies.map(({ at }) => at ?? null);
const astray = (job: Job, connections: Connection[], remedies: Remedy[]) =>
  worked(job, connections, remedies).network.problems;

describe('a remedy that does not say what it is done to', () => {
  const cases: [string, Remedy['kind'], Connection[], string][] = [
    ['an RCBO: the one circuit with new wiring', 'rcbo', [onO], 'o'],
    ['an enclosure: the same', 'rcd-enclosure', [spur('c', 'U1', 'W1')], 'p'],
    ['a smaller device: the same', 'lower-device', [onO, ownUnit], 'o'],
    ['a new board: that of the one circuit with new wiring', 'new-board', [spur('c', 'U1', 'W1')], 'other'],
    ['an RCD unit: the one that a connection brings along', 'rcd-unit', [onO, ownUnit], 'd/unit'],
    [
      'an RCD unit: the one wanted unit',
      'rcd-unit',
      [onO, { id: 'd', kind: 'fused-spur', from: { point: 'R2' }, unit: 'F1', feeds: [] }],
      'F1',
    ],
    ['an RCD outlet: the one new outlet', 'rcd-outlet', [onO], 'W1'],
    ['a deeper box: the one found point with new cable', 're-box', [onO], 'R1'],
    ['a twin for a single: the one single found', 'single-to-twin', [], 'S1'],
  ];
  it.each(cases)('is done to the only thing it can mean; %s', (_, kind, connections, target) => {
    expect(targets(house(), connections, [{ kind }])).toEqual([target]);
    expect(astray(house(), connections, [{ kind }])).toEqual([]);
  });

  const open: [string, Remedy['kind'], Connection[]][] = [
    ['an RCBO for two circuits with new wiring', 'rcbo', [onO, spur('d', 'U1', 'W2')]],
    ['an RCBO where no wiring changes and there are two circuits', 'rcbo', []],
    ['a new board of two', 'new-board', [onO, spur('d', 'U1', 'W2')]],
    ['an RCD unit where there is no fused unit', 'rcd-unit', [onO]],
    ['an RCD outlet of two new ones', 'rcd-outlet', [onO, ownUnit]],
    ['a deeper box of two points with new cable', 're-box', [onO, ownUnit]],
  ];
  it.each(open)('is reported and left as written where that is not one thing: %s', (_, kind, connections) => {
    expect(targets(house(), connections, [{ kind }])).toEqual([null]);
    expect(astray(house(), connections, [{ kind }, { kind }])).toEqual([
      { connectionId: null, code: 'remedy-without-target', subjectId: `remedy/${kind}` },
    ]);
  });

  it('of bonds means all services, and is no problem', () => {
    expect(targets(house(), [], [{ kind: 'bond-upgrade' }])).toEqual([null]);
    expect(astray(house(), [], [{ kind: 'bond-upgrade' }])).toEqual([]);
  });

  it('is done to the one circuit there is, whatever the wiring', () => {
    const job = { ...house(), circuits: [circuitOf('o')] };
    expect(targets(job, [], [{ kind: 'rcbo' }])).toEqual(['o']);
  });

  it('goes by the circuit, board or point that it names instead of its target', () => {
    const both = [onO, spur('d', 'U1', 'W2')];
    expect(targets(house(), both, [{ kind: 'rcbo', at: 'other' }])).toEqual(['p']);
    expect(targets(house(), both, [{ kind: 'rcbo', at: 'R2' }])).toEqual(['o']);
    expect(targets(house(), both, [{ kind: 'rcd-outlet', at: 'p' }])).toEqual(['W2']);
    expect(targets(house(), both, [{ kind: 'new-board', at: 'U1' }])).toEqual(['other']);
    expect(astray(house(), both, [{ kind: 'rcd-unit', at: 'p' }])).toEqual([
      { connectionId: null, code: 'remedy-without-target', subjectId: 'remedy/rcd-unit/p' },
    ]);
  });

  it('leaves a scheme that says everything as it is', () => {
    const { scheme, placed } = worked(
      house(),
      [onO],
      [
        { kind: 'rcbo', at: 'o' },
        { kind: 'rcd-outlet', at: 'R2' },
        { kind: 'bond-upgrade', at: 'gas' },
      ],
    );
    expect(placed).toBe(scheme);
  });

  it('has its target once and for all, for any remedies', () => {
    const kinds: Remedy['kind'][] = [
      'rcbo',
      'rcd-enclosure',
      'rcd-unit',
      'rcd-outlet',
      're-box',
      'single-to-twin',
      'lower-device',
      'new-board',
    ];
    const ats = [undefined, 'o', 'p', 'board', 'other', 'R1', 'U1', 'W1', 'F1', 'nowhere'];
    const remedy = fc
      .record({ kind: fc.constantFrom(...kinds), at: fc.constantFrom(...ats) })
      .map(({ kind, at }): Remedy => (at === undefined ? { kind } : { kind, at }));
    fc.assert(
      fc.property(
        fc.array(remedy, { maxLength: 4 }),
        fc.subarray([onO, ownUnit]),
        (remedies, connections) => {
          const job = house();
          const { network, placed } = worked(job, connections, remedies);
          expect(withPlacedRemedies(job, network, placed)).toBe(placed);
          const again = worked(job, connections, placed.remedies).network;
          expect(again).toEqual(network);
        },
      ),
      { seed: 5, numRuns: 200 },
    );
  });
});

describe('circuits whose device a remedy exchanges', () => {
  const ratings = (connections: Connection[], remedies: Remedy[], job = house()) =>
    worked(job, connections, remedies).network.circuits.map((circuit) => [
      circuit.id,
      circuit.device?.ratingA ?? null,
      circuit.device?.rcd?.mA ?? null,
    ]);

  it('have it in the wiring as proposed, the found one and other circuits untouched', () => {
    const { found, network } = worked(house(), [onO], [{ kind: 'rcbo', at: 'o', device: device(40) }]);
    expect(network.circuits[0]?.device).toEqual({
      ...device(40),
      standard: 'BS-EN-61009',
      rcd: { type: 'A', mA: 30 },
    });
    expect(found.circuits[0]?.device).toEqual(device(32));
    expect(network.circuits[1]).toBe(found.circuits[1]);
  });

  it('keep the very device found when an enclosure comes before it', () => {
    const { found, network } = worked(house(), [onO], [{ kind: 'rcd-enclosure' }]);
    expect(network.circuits[0]?.device).toBe(found.circuits[0]?.device);
  });

  it('have what two remedies make of it together', () => {
    const lowerThenRcbo: Remedy[] = [
      { kind: 'lower-device', at: 'o' },
      { kind: 'rcbo', at: 'o' },
    ];
    expect(ratings([onO], lowerThenRcbo)[0]).toEqual(['o', 20, 30]);
    expect(ratings([onO], lowerThenRcbo.toReversed())[0]).toEqual(['o', 20, 30]);
  });

  it('have in a new board the device it names only if the scheme changes them', () => {
    const job = { ...house(), circuits: [circuitOf('o'), circuitOf('p', { device: device(6) })] };
    expect(ratings([onO], [{ kind: 'new-board', at: 'board', device: device(25) }], job)).toEqual([
      ['o', 25, null],
      ['p', 6, 30],
    ]);
    const single: Remedy[] = [
      { kind: 'rcbo', at: 'o', device: device(20) },
      { kind: 'new-board', at: 'board' },
    ];
    expect(ratings([onO], single, job)[0]).toEqual(['o', 20, 30]);
  });

  it('stay unknown where nobody looked and the remedy names none', () => {
    const { device: _, ...unseen } = circuitOf('o');
    const job = { ...house(), circuits: [unseen] };
    expect(ratings([onO], [{ kind: 'rcbo' }], job)[0]).toEqual(['o', null, null]);
  });

  it('never are those that the scheme itself makes', () => {
    const radial: Connection = {
      id: 'n',
      kind: 'radial',
      board: 'board',
      device: device(20),
      feeds: [{ from: 'origin', to: 'W1' }],
    };
    expect(ratings([radial], [{ kind: 'new-board', at: 'board', device: device(16) }])).toContainEqual([
      'n/circuit',
      20,
      null,
    ]);
  });
});
