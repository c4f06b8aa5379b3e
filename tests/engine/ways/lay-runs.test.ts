import { describe, expect, it } from 'vitest';
import type { Network } from '#engine/circuit/network.ts';
import type { CircuitShape } from '#engine/circuit/shape.ts';
import { USUAL_CABLE } from '#engine/circuit/usual-cable.ts';
import type { Plan } from '#engine/plan/plan.ts';
import { plainRoute } from '#engine/ways/find-run.ts';
import { layRuns } from '#engine/ways/lay-runs.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { nodePositions } from '#engine/ways/node-positions.ts';
import type { Run } from '#engine/ways/run.ts';
import type { End } from '#model/cable.ts';
import type { Place, Point } from '#model/installation.ts';
import type { Connection } from '#model/scheme.ts';
import { planOf, point } from '#tests/engine/plan/small-house.ts';
import { inShort, semi, semiPlaces, tariff, terrace, terracePlaces } from './demo-houses.ts';
import { broughtNode, legCable, networkOf, newCable, node } from './small-network.ts';

function furnished(house: Plan, places: Record<string, Place>, more: Partial<Point> = {}): Plan {
  const points = Object.entries(places).map(([id, place]) => point(id, place, more));
  return planOf(
    house.storeys.map(({ storey }) => storey),
    points,
  );
}

interface Laid {
  readonly connections?: Connection[];
  readonly shapes?: ReadonlyMap<string, CircuitShape>;
}

function laid(
  plan: Plan,
  network: Network,
  { connections = [], shapes = new Map() }: Laid = {},
): readonly Run[] {
  const allowances = defaultLengthAllowances;
  return layRuns({
    plan,
    network,
    shapes,
    nodePositions: nodePositions({ plan, network, foundRuns: new Map(), allowances }),
    connections,
    tariff,
    allowances,
    findRun: plainRoute,
  });
}

const house = furnished(terrace(), terracePlaces);

describe('layRuns', () => {
  it.each([
    ['R6', 'W4', 1.6],
    ['R8', 'W3', 5.0],
    ['joint', 'W2', 2.3],
    // By hand: 300 level, 130 through the wall, 150 up, and 700 of ends and slack.
    ['R1', 'W1', 1.3],
  ])('gives the cable from %s to %s of the terraced house %f m', (from, to, metres) => {
    const [run] = laid(house, networkOf([node(from), node(to)], [newCable('c/cable-1', from, to)]));
    expect(Math.round((run?.lengthMm ?? 0) / 100) / 10).toBe(metres);
  });

  it.each([
    // By hand: 1950 up, 78 to the middle of the joists, 900 and 800 in the void, 78 and 1300 down, and 700 of ends and slack.
    ['A4', 'unit', 5.8],
    ['joint', 'B1', 3.9],
    ['B1', 'B2', 1.6],
    ['B2', 'B3', 1.6],
    ['B3', 'joint', 5.7],
  ])('gives the cable from %s to %s of the semi %f m', (from, to, metres) => {
    const plan = furnished(semi(), semiPlaces);
    const [run] = laid(plan, networkOf([node(from), node(to)], [newCable('c/cable-1', from, to)]));
    expect(Math.round((run?.lengthMm ?? 0) / 100) / 10).toBe(metres);
  });

  it('counts the tails by what is at the ends, and the slack once', () => {
    const joint = broughtNode('c/joint', 'c', { kind: 'joint', place: terracePlaces.joint });
    const origin = node('ring', {
      kind: 'origin',
      pointId: null,
      circuitId: 'ring',
      place: terracePlaces.R9,
    });
    const network = networkOf(
      [node('W2'), joint, origin],
      [newCable('c/cable-1', 'c/joint', 'W2'), newCable('c/cable-2', 'ring', 'W2')],
    );
    const [fromJoint, fromBoard] = laid(house, network);
    expect(fromJoint).toMatchObject({ endsMm: 400, slackMm: 300, lengthMm: 1560 + 700 });
    expect([fromJoint?.from.kind, fromJoint?.to.kind]).toEqual(['joint', 'accessory']);
    expect(fromBoard?.endsMm).toBe(950);
    expect(fromBoard?.from.kind).toBe('board');
    for (const run of [fromJoint, fromBoard]) {
      const sumMm = run?.segments.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
      expect(run?.routeMm).toBeCloseTo(sumMm ?? -1, 6);
      expect(run?.lengthMm).toBeCloseTo((run?.routeMm ?? 0) + (run?.endsMm ?? 0) + 300, 6);
    }
  });

  it('lays new cable only, sorted by id, in the usual cable where none is named', () => {
    const cable = { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 } as const;
    const network = networkOf(
      [node('R6'), node('W4'), node('R8')],
      [
        newCable('c/cable-2', 'R6', 'W4', { cable }),
        newCable('c/cable-1', 'R6', 'R8'),
        newCable('u/fuse', 'R6', 'W4', { kind: 'fuse' }),
        legCable('leg1', 'R6', 'R8'),
      ],
    );
    const runs = laid(house, network);
    expect(runs.map(({ id, cable: made }) => [id, made])).toEqual([
      ['c/cable-1', USUAL_CABLE],
      ['c/cable-2', cable],
    ]);
  });

  it('has no path and no length where an end has no place', () => {
    const [run] = laid(house, networkOf([node('R6'), node('lost')], [newCable('c/cable-1', 'R6', 'lost')]));
    expect(run).toMatchObject({
      segments: [],
      routeMm: 0,
      lengthMm: null,
      lowMm: null,
      highMm: null,
      cuts: [],
      steps: [],
    });
    expect(run?.to.position).toBeNull();
  });

  it('widens by 5 % what is derived, by 30 % what is assumed, and by nothing what is pinned', () => {
    const network = networkOf([node('R6'), node('W4')], [newCable('c/cable-1', 'R6', 'W4')]);
    const [derived] = laid(house, network);
    expect([derived?.lowMm, derived?.highMm]).toEqual([1600 - 45, 1600 + 45]);
    const guessed = planOf(
      house.storeys.map(({ storey }) => ({
        ...storey,
        walls: storey.walls.map((each) => ({ ...each, certainty: { core: 'assumed' as const } })),
      })),
      [...house.pointById.values()],
    );
    const [assumed] = laid(guessed, network);
    expect([assumed?.lowMm, assumed?.highMm]).toEqual([1600 - 270, 1600 + 270]);
    const via = [{ storey: 'gf', at: [0, 8500] as [number, number], heightMm: 1100 }];
    const pin: Connection = {
      id: 'c',
      kind: 'spur',
      from: { point: 'R6' },
      to: 'W4',
      runs: [{ from: { point: 'R6' }, to: { point: 'W4' }, via }],
    };
    const [pinned] = laid(house, network, { connections: [pin] });
    expect([pinned?.lowMm, pinned?.highMm, pinned?.pinned]).toEqual([1600, 1600, true]);
  });

  it('keeps to a pinned run named from its other end, turned round', () => {
    const via = [
      { storey: 'ff', at: [1050, 5200] as [number, number], heightMm: -110, medium: 'stud-cavity' as const },
      { storey: 'ff', at: [1050, 5000] as [number, number], heightMm: -110 },
    ];
    const pin: Connection = {
      id: 'c',
      kind: 'spur',
      from: { point: 'R8' },
      to: 'W3',
      runs: [{ from: { point: 'W3' }, to: { point: 'R8' }, via }],
    };
    const network = networkOf([node('R8'), node('W3')], [newCable('c/cable-1', 'R8', 'W3')]);
    const [run] = laid(house, network, { connections: [pin] });
    expect(inShort(run?.segments ?? [])).toEqual([
      'wall-chase 300',
      'void-open 110',
      'void-along 3150',
      'void-across 200',
      'stud-cavity 560',
    ]);
    expect(run?.segments.map(({ certainty }) => certainty)).toEqual([
      'derived',
      'derived',
      'derived',
      'pinned',
      'pinned',
    ]);
    expect(run?.segments[0]?.from).toEqual(run?.from.position);
  });

  it('gives a pinned run that names one end twice to the cable between a joint and a unit, which have no name', () => {
    const joint = broughtNode('c/joint', 'c', { kind: 'joint', place: terracePlaces.joint });
    const unit = broughtNode('c/unit', 'c', { place: terracePlaces.W3 });
    const network = networkOf(
      [joint, unit, node('W2')],
      [newCable('c/cable-1', 'c/joint', 'c/unit'), newCable('c/cable-2', 'c/unit', 'W2')],
    );
    const via = [{ storey: 'ff', at: [2000, 0] as [number, number], heightMm: -110 }];
    const pinnedBy = (to: End) => {
      const runs = [{ from: { origin: 'ring' }, to, via }];
      const tap = { leg: 'leg1', alongMm: 1000 };
      const pin: Connection = { id: 'c', kind: 'fused-spur', from: tap, unit: {}, feeds: [], runs };
      return laid(house, network, { connections: [pin] }).map(({ pinned }) => pinned);
    };
    expect(pinnedBy({ origin: 'ring' })).toEqual([true, false]);
    expect(pinnedBy({ point: 'gone' })).toEqual([false, false]);
  });

  it('gives a pinned run to the cable at the joint that no end can name, but first to the one that fits exactly', () => {
    const joint = broughtNode('c/joint', 'c', { kind: 'joint', place: terracePlaces.joint });
    const via = (x: number) => [{ storey: 'ff', at: [x, 0] as [number, number], heightMm: -110 }];
    const runs = [
      { from: { point: 'R9' }, to: { point: 'W2' }, via: via(2000) },
      { from: { point: 'W2' }, to: { point: 'W3' }, via: via(2500) },
    ];
    const pin: Connection = { id: 'c', kind: 'spur', from: { point: 'R9' }, to: 'W2', runs };
    const network = networkOf(
      [node('W2'), node('W3'), joint],
      [newCable('c/cable-1', 'c/joint', 'W2'), newCable('c/cable-2', 'W2', 'W3')],
    );
    const laidRuns = laid(house, network, { connections: [pin] });
    expect(laidRuns.map(({ segments }) => segments[0]?.to.at[0])).toEqual([2000, 2500]);
  });

  it('gives a pinned run to the first cable of a new radial, whose circuit has no name as yet', () => {
    const origin = broughtNode('c/circuit', 'c', {
      kind: 'origin',
      circuitId: 'c/circuit',
      place: terracePlaces.R9,
    });
    const network = networkOf([origin, node('W2')], [newCable('c/cable-1', 'c/circuit', 'W2')]);
    const via = [{ storey: 'ff', at: [2000, 0] as [number, number], heightMm: -110 }];
    const runs = [{ from: { point: 'W2' }, to: { point: 'W2' }, via }];
    const device = { standard: 'BS-EN-61009', curve: 'B', ratingA: 20 } as const;
    const feeds = [{ from: 'origin', to: 'W2' }];
    const pin: Connection = { id: 'c', kind: 'radial', board: 'b', device, feeds, runs };
    const [run] = laid(house, network, { connections: [pin] });
    expect([run?.pinned, run?.segments[0]?.to.at[0]]).toEqual([true, 2000]);
  });

  it('gives of out and back, alike at joints without names, each its own pinned run by its direction', () => {
    const [out, back] = ['c/joint-out', 'c/joint-back'].map((id) =>
      broughtNode(id, 'c', { kind: 'joint', place: terracePlaces.joint }),
    );
    const network = networkOf(
      [node('W2'), node('R8'), out ?? node('none'), back ?? node('none')],
      [newCable('c/cable-1', 'c/joint-out', 'W2'), newCable('c/cable-2', 'W2', 'c/joint-back')],
    );
    const via = [{ storey: 'ff', at: [2000, 0] as [number, number], heightMm: -110 }];
    const pin = (from: string, to: string): Connection => ({
      id: 'c',
      kind: 'spur',
      from: { point: 'R8' },
      to: 'W2',
      runs: [{ from: { point: from }, to: { point: to }, via }],
    });
    const pinned = (connection: Connection) =>
      laid(house, network, { connections: [connection] }).map((run) => run.pinned);
    expect(pinned(pin('R8', 'W2'))).toEqual([true, false]);
    expect(pinned(pin('W2', 'R8'))).toEqual([false, true]);
  });

  it('puts a surface accessory’s cable in channel down to the floor', () => {
    const plan = furnished(terrace(), terracePlaces, { mount: 'surface' });
    const [run] = laid(plan, networkOf([node('R8'), node('W3')], [newCable('c/cable-1', 'R8', 'W3')]));
    expect(run?.segments.at(0)).toMatchObject({ medium: 'surface-channel', containment: 'channel' });
    expect(run?.segments.at(-1)).toMatchObject({ medium: 'surface-channel', containment: 'channel' });
  });

  it('names the circuits that both ends are on', () => {
    const shape = (circuitId: string, nodeIds: string[]): CircuitShape => ({
      circuitId,
      shape: 'radial',
      claimed: null,
      contradicts: false,
      evidence: 'recorded',
      ringNodes: [],
      ringEdges: [],
      ringLengthMm: null,
      spurs: [],
      places: nodeIds.map((nodeId) => ({
        nodeId,
        circuitId,
        role: 'radial',
        upstreamNode: null,
        upstreamEdgeId: null,
        rootNode: null,
        fuseA: null,
        behindUnit: null,
        depth: 0,
      })),
      joinedTo: [],
      unwiredPointIds: [],
    });
    const shapes = new Map([
      ['y', shape('y', ['R6', 'W4'])],
      ['x', shape('x', ['R6'])],
    ]);
    const [run] = laid(house, networkOf([node('R6'), node('W4')], [newCable('c/cable-1', 'R6', 'W4')]), {
      shapes,
    });
    expect(run?.circuitIds).toEqual(['y']);
  });
});
