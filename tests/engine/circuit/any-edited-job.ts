import fc from 'fast-check';
import type { Leg, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Cut, Tap } from '#model/scheme.ts';
import { jobOf, pointOf, schemeOf, wantedOf } from './circuit-job.ts';

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

/** What a ring with trees is grown from. */
export const seedling: fc.Arbitrary<Seedling> = fc.record({
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

/** Grows it. */
export function grow({ ringSize, branches, reversed, isSwapped, turn }: Seedling): Grown {
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
export const edited = fc.tuple(seedling, statuses).chain(([seed, status]) => {
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
