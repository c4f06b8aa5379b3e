import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circuitShapes } from '#engine/circuit/circuit-shapes.ts';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import type { Network } from '#engine/circuit/network.ts';
import type { Leg, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Cut, Tap } from '#model/scheme.ts';
import { carriedOut, jobOf, pointOf, schemeOf, shapeOf, wantedOf } from './circuit-job.ts';

/** A closed ring with trees on it, and what its making says about every node. */
interface Grown {
  readonly job: Job;
  readonly ring: readonly string[];
  readonly fuseBehind: ReadonlyMap<string, string | null>;
  readonly rootOf: ReadonlyMap<string, string>;
  readonly depthOf: ReadonlyMap<string, number>;
}

interface Seedling {
  readonly ringSize: number;
  readonly branches: readonly { on: number; isUnit: boolean; isReversed: boolean; lengthMm: number }[];
  readonly reversed: readonly boolean[];
  readonly isSwapped: boolean;
  /** Turns ids about, so that no order of ids is the order of the ring. */
  readonly turn: number;
}

const seedling: fc.Arbitrary<Seedling> = fc.record({
  ringSize: fc.integer({ min: 1, max: 9 }),
  branches: fc.array(
    fc.record({
      on: fc.nat(30),
      isUnit: fc.boolean(),
      isReversed: fc.boolean(),
      lengthMm: fc.integer({ min: 0, max: 20_000 }),
    }),
    { maxLength: 10 },
  ),
  reversed: fc.array(fc.boolean(), { minLength: 10, maxLength: 10 }),
  isSwapped: fc.boolean(),
  turn: fc.nat(96),
});

const idOf = (n: number, turn: number) => `n${String((n * 37 + turn) % 97).padStart(2, '0')}`;

function grow({ ringSize, branches, reversed, isSwapped, turn }: Seedling): Grown {
  const ring = Array.from({ length: ringSize }, (_, n) => idOf(n, turn));
  const [first, last] = isSwapped ? (['B', 'A'] as const) : (['A', 'B'] as const);
  const stops = [
    { origin: 'o', end: first },
    ...ring.map((point) => ({ point })),
    { origin: 'o', end: last },
  ];
  const legs: Leg[] = stops.slice(1).map((to, n) => {
    const from = stops[n] ?? to;
    const ends = reversed[n] ? { from: to, to: from } : { from, to };
    return { id: `link-${idOf(n, turn)}`, circuit: 'o', lengthMm: 1000 + n, ...ends };
  });
  const points: Point[] = ring.map((id) => pointOf(id));
  const grown = [...ring];
  const fuseBehind = new Map<string, string | null>(ring.map((id) => [id, null]));
  const rootOf = new Map<string, string>();
  const depthOf = new Map<string, number>(ring.map((id) => [id, 0]));
  for (const [n, { on, isUnit, isReversed, lengthMm }] of branches.entries()) {
    const id = idOf(ringSize + n, turn);
    const host = grown[on % grown.length] ?? id;
    points.push(
      isUnit ? pointOf(id, { kind: 'fused-unit', unit: { switched: true, fuseA: 13 } }) : pointOf(id),
    );
    const ends = isReversed
      ? { from: { point: id }, to: { point: host } }
      : { from: { point: host }, to: { point: id } };
    legs.push({ id: `leg-${id}`, circuit: 'o', lengthMm, ...ends });
    const isHostUnit = points.find((point) => point.id === host)?.kind === 'fused-unit';
    // All fuses are alike, so the first one passed is the smallest.
    fuseBehind.set(id, fuseBehind.get(host) ?? (isHostUnit ? host : null));
    rootOf.set(id, rootOf.get(host) ?? host);
    depthOf.set(id, (depthOf.get(host) ?? 0) + 1);
    grown.push(id);
  }
  const job = jobOf({ points, legs, circuit: { shape: 'ring' } });
  return { job, ring: isSwapped ? ring.toReversed() : ring, fuseBehind, rootOf, depthOf };
}

describe('a ring with trees on it', () => {
  it('is told as it was made: order, roots, depths, fuses; every node once', () => {
    fc.assert(
      fc.property(seedling, (seed) => {
        const { job, ring, fuseBehind, rootOf, depthOf } = grow(seed);
        const network = foundNetwork(job);
        const shape = shapeOf(job, network);
        expect(shape.shape).toBe('ring');
        expect(shape.ringNodes).toEqual(ring);
        expect(shape.ringEdges.length).toBe(ring.length + 1);
        expect(shape.places.map(({ nodeId }) => nodeId)).toEqual(network.nodes.map(({ id }) => id));
        for (const place of shape.places) {
          const expected = fuseBehind.get(place.nodeId);
          if (expected === undefined) continue;
          const role = ring.includes(place.nodeId) ? 'ring' : expected ? 'behind-fuse' : 'unfused-spur';
          expect(place).toMatchObject({
            role,
            rootNode: rootOf.get(place.nodeId) ?? null,
            depth: depthOf.get(place.nodeId),
            behindUnit: expected ? `${expected}/load` : null,
          });
        }
      }),
    );
  });

  it('has every unfused cable either in the ring or on exactly one spur', () => {
    fc.assert(
      fc.property(seedling, (seed) => {
        const { job, fuseBehind } = grow(seed);
        const shape = shapeOf(job, foundNetwork(job));
        const unfused = job.points.filter(({ id }) => fuseBehind.get(id) === null).length;
        const cables = [
          ...shape.ringEdges.map(({ id }) => id),
          ...shape.spurs.flatMap(({ edgeIds }) => edgeIds),
        ];
        expect(new Set(cables).size).toBe(cables.length);
        // As many cables as points that no fuse protects, and one more to close the ring.
        expect(cables.length).toBe(unfused + 1);
        const onSpurs = shape.spurs.flatMap(({ accessoryNodes }) => accessoryNodes);
        expect(onSpurs.length).toBe(unfused - shape.ringNodes.length);
      }),
    );
  });

  it('is the same ring when legs are written down the other way round, and turned when A and B are', () => {
    fc.assert(
      fc.property(seedling, fc.boolean(), (seed, isLegsOnly) => {
        const { job, ring } = grow(seed);
        const other = isLegsOnly
          ? { ...seed, reversed: seed.reversed.map((each) => !each) }
          : { ...seed, isSwapped: !seed.isSwapped };
        const turned = grow(other).job;
        const [a, b] = [job, turned].map((each) => shapeOf(each, foundNetwork(each)));
        expect(b?.ringNodes).toEqual(isLegsOnly ? ring : ring.toReversed());
        const edges = a?.ringEdges.map(({ id }) => id) ?? [];
        expect(b?.ringEdges.map(({ id }) => id)).toEqual(isLegsOnly ? edges : edges.toReversed());
        expect(b?.ringLengthMm).toBe(a?.ringLengthMm);
      }),
    );
  });

  it('is broken without any one of its cables, and still a ring without any other', () => {
    fc.assert(
      fc.property(seedling, fc.nat(), (seed, pick) => {
        const { job } = grow(seed);
        const network = foundNetwork(job);
        const inRing = new Set(shapeOf(job, network).ringEdges.map(({ id }) => id));
        const cables = network.edges.filter(({ kind }) => kind === 'cable');
        const gone = cables[pick % cables.length];
        const rest: Network = { ...network, edges: network.edges.filter((edge) => edge !== gone) };
        const expected = inRing.has(gone?.id ?? '') ? 'broken-ring' : 'ring';
        expect(shapeOf(job, rest).shape).toBe(expected);
      }),
    );
  });
});

const wantedIds = ['w1', 'w2', 'w3', 'w4', 'u1', 'u2'];

/** Connections of every kind between points and legs that need not suit them. */
function connectionsOn(job: Job): fc.Arbitrary<Connection[]> {
  const point = fc.constantFrom(...wantedIds, ...job.points.map(({ id }) => id));
  const leg = fc.constantFrom(...job.legs.map(({ id }) => id));
  const alongMm = fc.integer({ min: 0, max: 1200 });
  const end = fc.oneof(
    point.map((each) => ({ point: each })),
    fc.constant({ origin: 'o' }),
  );
  const tap: fc.Arbitrary<Tap> = fc.oneof(end, fc.record({ leg, alongMm }));
  const cut: fc.Arbitrary<Cut> = fc.oneof(
    fc.constant({ how: 'terminals' as const }),
    fc.record({ how: fc.constantFrom('joint' as const, 'old-cable' as const), alongMm }),
  );
  const unit = fc.oneof(point, fc.constant({ fuseA: 13 }));
  const through = fc.array(point, { maxLength: 3 });
  const feeds = fc.array(fc.record({ from: fc.oneof(fc.constant('unit'), point), to: point }), {
    maxLength: 3,
  });
  const radialFeeds = fc.array(fc.record({ from: fc.oneof(fc.constant('origin'), point), to: point }), {
    maxLength: 3,
  });
  const neighbours = leg.map((id) => {
    const each = job.legs.find((other) => other.id === id);
    return each ? ([each.from, each.to] as [Leg['from'], Leg['to']]) : undefined;
  });
  const device = { standard: 'BS-EN-60898', ratingA: 20 } as const;
  const kinds = fc.oneof(
    fc.record({ kind: fc.constant('spur' as const), from: tap, to: point }),
    fc.record({ kind: fc.constant('fused-spur' as const), from: tap, unit, feeds }),
    fc
      .record({
        between: fc.oneof(fc.tuple(end, end), neighbours),
        out: cut,
        back: cut,
        through,
        isTurned: fc.boolean(),
      })
      .map(({ between, isTurned, ...rest }) => {
        const [a, b] = between ?? [{ origin: 'o' }, { origin: 'o' }];
        const ends: [Leg['from'], Leg['to']] = isTurned ? [b, a] : [a, b];
        return { kind: 'ring-extension' as const, circuit: 'o', between: ends, ...rest };
      }),
    fc
      .record({ kind: fc.constant('radial' as const), feeds: radialFeeds })
      .map((each) => ({ ...each, board: 'board', device })),
    fc.record({ kind: fc.constant('fuse-down' as const), leg, unit, feeds }),
    fc.record({ kind: fc.constant('fuse-down' as const), leg, alongMm, unit, feeds }),
    fc.record({ kind: fc.constant('close-spur' as const), point, leg, back: cut }),
  );
  return fc
    .array(kinds, { maxLength: 5 })
    .map((list) => list.map((each, n): Connection => ({ id: `c${n + 1}`, ...each })));
}

const statuses = fc.array(fc.constantFrom('existing', 'existing', 'existing', 'removed', 'replaced'), {
  minLength: 20,
  maxLength: 20,
});

/** A ring with trees and wanted points, some found points to go, and connections of every kind. */
const edited = fc.tuple(seedling, statuses).chain(([seed, status]) => {
  const { job } = grow(seed);
  const found = job.points.map((point, n) => ({ ...point, status: status[n] ?? point.status }) as Point);
  const goes = found.find((point) => point.status === 'replaced');
  const wanted = wantedIds.map((id) =>
    wantedOf(id, {
      ...(id.startsWith('u') ? { kind: 'fused-unit' as const } : {}),
      ...(id === 'w4' && goes ? { replaces: goes.id } : {}),
    }),
  );
  const whole: Job = { ...job, points: [...found, ...wanted] };
  return connectionsOn(job).map((connections) => ({ ...whole, schemes: [schemeOf(connections)] }));
});

function proposedOfFirst(job: Job, found: Network): Network {
  return carriedOut(job, found, job.schemes[0] ?? schemeOf([]));
}

describe('a scheme of any connections', () => {
  it('never changes the network as found, and gives the same again', () => {
    fc.assert(
      fc.property(edited, (job) => {
        const found = foundNetwork(job);
        const before = structuredClone(found);
        const once = proposedOfFirst(job, found);
        expect(found).toEqual(before);
        expect(proposedOfFirst(job, found)).toEqual(once);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps every millimetre of every leg, in use or removed', () => {
    fc.assert(
      fc.property(edited, (job) => {
        const network = proposedOfFirst(job, foundNetwork(job));
        for (const { id, lengthMm } of job.legs) {
          const stretches = [
            ...network.edges.filter(({ legId }) => legId === id).map(({ partMm }) => partMm),
            ...network.removed.filter(({ legId }) => legId === id),
          ].map((each) => [each?.fromMm ?? Number.NaN, each?.toMm ?? Number.NaN] as const);
          const sorted = stretches.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
          let atMm = 0;
          for (const [fromMm, toMm] of sorted) {
            expect(fromMm).toBe(atMm);
            atMm = toMm;
          }
          expect(atMm).toBe(lengthMm);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('leaves no edge without its nodes, no id twice, and every list in order', () => {
    fc.assert(
      fc.property(edited, (job) => {
        const network = proposedOfFirst(job, foundNetwork(job));
        const ids = network.nodes.map(({ id }) => id);
        const edgeIds = network.edges.map(({ id }) => id);
        for (const list of [ids, edgeIds]) {
          expect(new Set(list).size).toBe(list.length);
          expect(list).toEqual(list.toSorted());
        }
        for (const { from, to, legId, lengthMm, partMm } of network.edges) {
          expect(ids).toEqual(expect.arrayContaining([from, to]));
          if (legId !== null) expect(lengthMm).toBe((partMm?.toMm ?? 0) - (partMm?.fromMm ?? 0));
        }
      }),
      { numRuns: 300 },
    );
  });

  it('gives every node a place in one circuit at most, and in one if cable joins it to an origin', () => {
    fc.assert(
      fc.property(edited, (job) => {
        const network = proposedOfFirst(job, foundNetwork(job));
        const shapes = [...circuitShapes(job, network).values()];
        const placed = shapes.flatMap(({ places }) => places.map(({ nodeId }) => nodeId));
        expect(new Set(placed).size).toBe(placed.length);
        const live = new Set(network.circuits.map(({ id }) => id));
        for (let size = 0; size !== live.size; ) {
          size = live.size;
          for (const { from, to } of network.edges)
            if (live.has(from) || live.has(to)) {
              live.add(from);
              live.add(to);
            }
        }
        expect(new Set(placed)).toEqual(new Set([...placed, ...live]));
        for (const { places } of shapes)
          for (const { upstreamNode, upstreamEdgeId, nodeId } of places) {
            const edge = network.edges.find(({ id }) => id === upstreamEdgeId);
            const ends = edge ? [edge.from, edge.to].toSorted() : [];
            expect(ends).toEqual(upstreamNode === null ? [] : [nodeId, upstreamNode].toSorted());
          }
      }),
      { numRuns: 300 },
    );
  });
});
