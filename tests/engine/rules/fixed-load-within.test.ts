import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CableCapacity } from '#engine/proof/cable-capacity.ts';
import type { Facts } from '#engine/rules/facts.ts';
import { fixedLoadWithin } from '#engine/rules/fixed-load-within.ts';
import type { Device } from '#model/installation.ts';
import {
  capacityOf,
  circuitOf,
  edgeOf,
  factsOf,
  nodeOf,
  nodePlaceOf,
  pointOf,
  saidBy,
  shapeOf,
  unitOf,
} from './facts-builder.ts';

interface Situation {
  readonly watts: number;
  readonly deviceA?: number | null;
  readonly capacity?: Partial<CableCapacity>;
  readonly shape?: 'ring' | 'radial';
  readonly state?: 'found' | 'new';
}

const breaker = (ratingA: number): Device => ({ standard: 'BS-EN-60898', curve: 'B', ratingA });
const heater = (watts: number) => ({ watts, use: 'heater', fixed: true });

/** One fixed item W on one cable from the ring point R1, or from the origin of a radial. */
function item({ watts, deviceA = 32, capacity = {}, shape = 'ring', state = 'new' }: Situation): Facts {
  const circuit = circuitOf('c');
  const device = deviceA === null ? null : breaker(deviceA);
  const root = shape === 'ring' ? 'r1' : 'c';
  return factsOf({
    job: {
      circuits: [circuit],
      points: [pointOf('r1'), pointOf('w', { kind: 'cooker-control', load: heater(watts) })],
    },
    proposed: {
      nodes: [nodeOf('c', { kind: 'origin', circuitId: 'c' }), nodeOf('r1'), nodeOf('w', { state })],
      edges: [edgeOf('e1', root, 'w', { state })],
      circuits: [{ id: 'c', name: 'Ring', board: null, device, circuit, isNew: false }],
    },
    capacities: [capacityOf('e1', capacity)],
    shapes: [
      shapeOf('c', {
        shape,
        places: [
          nodePlaceOf('c', { role: 'origin' }),
          nodePlaceOf('r1'),
          nodePlaceOf('w', {
            role: shape === 'ring' ? 'unfused-spur' : 'radial',
            upstreamNode: root,
            upstreamEdgeId: 'e1',
          }),
        ],
      }),
    ],
  });
}

/** A fused unit U with a load of its own; on its supply side a cable from the origin. */
function fused(watts: number, fuseA: number | null, deviceA: number | null = 32): Facts {
  const known = item({ watts, deviceA });
  const places = [
    nodePlaceOf('w', { role: 'unfused-spur', upstreamNode: 'r1', upstreamEdgeId: 'e1' }),
    nodePlaceOf('w/load', { role: 'behind-fuse', upstreamNode: 'w', upstreamEdgeId: 'f1' }),
  ];
  return {
    ...known,
    plan: {
      ...known.plan,
      pointById: new Map([['w', pointOf('w', { kind: 'fused-unit', load: heater(watts) })]]),
    },
    proposed: {
      ...known.proposed,
      nodes: [
        ...known.proposed.nodes,
        nodeOf('w/load', { kind: 'load-terminals', pointId: 'w', state: 'new' }),
      ],
      edges: [...known.proposed.edges, edgeOf('f1', 'w', 'w/load', { kind: 'fuse', state: 'new', fuseA })],
    },
    things: { ...known.things, fusedUnits: [unitOf('w', { fuseA, loadNode: 'w/load' })] },
    shapes: new Map([['c', shapeOf('c', { places })]]),
  };
}

describe('a fixed load against what feeds it', () => {
  it('[FL2] fails 7 kW, 30.43 A, on 2.5 mm² that carries 27 A', () => {
    expect(saidBy(fixedLoadWithin, item({ watts: 7000 }))).toEqual([
      {
        outcome: 'fails',
        messageId: 'over',
        subjectId: 'w',
        origin: 'scheme',
        actual: 30.43,
        limit: 27,
        unit: 'A',
      },
    ]);
  });

  it('[FL2] passes at exactly what the cable and the device carry', () => {
    expect(saidBy(fixedLoadWithin, item({ watts: 27 * 230 }))).toMatchObject([
      { outcome: 'passes', actual: 27, limit: 27 },
    ]);
    expect(saidBy(fixedLoadWithin, item({ watts: 20 * 230, deviceA: 20, shape: 'radial' }))).toMatchObject([
      { outcome: 'passes', actual: 20, limit: 20 },
    ]);
  });

  it('[FL2] fails a load above the device of its radial, though the cable would carry it', () => {
    const watts = 7000;
    const wide = { izA: 37 };
    expect(
      saidBy(fixedLoadWithin, item({ watts, deviceA: 20, capacity: wide, shape: 'radial' })),
    ).toMatchObject([{ outcome: 'fails', messageId: 'over', limit: 20 }]);
  });

  it('[FL2] is not proven on a cable whose way is not told, or behind a device nobody read', () => {
    expect(saidBy(fixedLoadWithin, item({ watts: 3000, capacity: { izA: null } }))).toMatchObject([
      { outcome: 'not-proven', messageId: 'unknown', subjectId: 'w' },
    ]);
    expect(saidBy(fixedLoadWithin, item({ watts: 3000, deviceA: null }))).toMatchObject([
      { outcome: 'not-proven', messageId: 'unknown' },
    ]);
  });

  it('[FL2] asks nothing of a found cable whose path nobody saw, and calls a found load found', () => {
    expect(saidBy(fixedLoadWithin, item({ watts: 7000, state: 'found' }))).toMatchObject([
      { outcome: 'passes', origin: 'found', limit: 32 },
    ]);
    expect(saidBy(fixedLoadWithin, item({ watts: 7500, state: 'found' }))).toMatchObject([
      { outcome: 'fails', origin: 'found', limit: 32 },
    ]);
  });

  it('[FL2] blames the scheme for a found load above the smaller device that it fits', () => {
    const facts = item({ watts: 7000, state: 'found' });
    const circuits = facts.found.circuits.map((circuit) => ({ ...circuit, device: breaker(20) }));
    const lowered = { ...facts, proposed: { ...facts.proposed, circuits } };
    expect(saidBy(fixedLoadWithin, lowered)).toMatchObject([
      { outcome: 'fails', origin: 'scheme', actual: 30.43, limit: 20 },
    ]);
  });

  it('[FL2] holds the load of a fused unit against its fuse, 3 A up to 700 W by practice', () => {
    expect(saidBy(fixedLoadWithin, fused(2990, 13))).toMatchObject([{ outcome: 'passes', limit: 13 }]);
    expect(saidBy(fixedLoadWithin, fused(3500, 13))).toMatchObject([{ outcome: 'fails', limit: 13 }]);
    expect(saidBy(fixedLoadWithin, fused(700, 3))).toMatchObject([{ outcome: 'passes' }]);
    expect(saidBy(fixedLoadWithin, fused(701, 3))).toMatchObject([{ outcome: 'fails', limit: 3 }]);
    expect(saidBy(fixedLoadWithin, fused(2990, 13, null))).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[FL2] leaves loads that only together are above the device to a decision, once a circuit', () => {
    const known = item({ watts: 4600 });
    const pointById = new Map(
      ['w', 'r1'].map((id) => [id, pointOf(id, { kind: 'flex-outlet', load: heater(4600) })]),
    );
    const said = saidBy(fixedLoadWithin, { ...known, plan: { ...known.plan, pointById } });
    expect(said.map(({ subjectId, outcome, actual }) => [subjectId, outcome, actual])).toEqual([
      ['r1', 'passes', 20],
      ['w', 'passes', 20],
      ['c', 'decide', 40],
    ]);
  });

  it('[FL2] says nothing of a load that is plugged in', () => {
    const known = item({ watts: 9000 });
    const load = { watts: 9000, use: 'kiln', fixed: false };
    const pointById = new Map([['w', pointOf('w', { load })]]);
    expect(saidBy(fixedLoadWithin, { ...known, plan: { ...known.plan, pointById } })).toEqual([]);
  });

  it('[FL2] fails exactly when Ib is above Iz or In (433.1.1 by hand)', () => {
    const amps = fc.integer({ min: 1, max: 60 });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12_000 }), amps, amps, (watts, deviceA, izA) => {
        const [said] = saidBy(fixedLoadWithin, item({ watts, deviceA, capacity: { izA }, shape: 'radial' }));
        expect(said?.outcome).toBe(watts > 230 * Math.min(deviceA, izA) ? 'fails' : 'passes');
      }),
      { seed: 7 },
    );
  });
});
