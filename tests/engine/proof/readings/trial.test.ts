import { describe, expect, it } from 'vitest';
import { inferCircuit } from '#engine/proof/readings/infer-circuit.ts';
import type { InferredCircuit } from '#engine/proof/readings/inferred-circuit.ts';
import { drawCircuit, noises, readCircuit, seededRandom, type TrueCircuit } from './simulated-readings.ts';
import { trialCell, trialLegsM, trialRows } from './trial-cells.ts';

const CIRCUITS = 60;
/** Two points, as the whole trial allows, and two spreads of so small a sample. */
const leastOf = (percent: number): number =>
  percent - 2 - 2 * Math.sqrt((percent * (100 - percent)) / CIRCUITS);

describe(`circuits simulated with noise, ${CIRCUITS} a cell`, () => {
  it.each(trialRows)('$name: orders, parents and lengths as right as an earlier trial', (row) => {
    trialLegsM.forEach((legM, i) => {
      const { orderPercent, parentsPercent, legErrorM } = trialCell(row, legM, CIRCUITS);
      const [order, parents] = row.expected[i] ?? [101, 101];
      expect(orderPercent, `order at ${legM} m`).toBeGreaterThanOrEqual(leastOf(order));
      expect(parentsPercent, `parents at ${legM} m`).toBeGreaterThanOrEqual(leastOf(parents));
      expect(legErrorM, `leg error at ${legM} m`).toBeLessThan(row.legErrorM * 1.15);
    });
  });
});

interface Said {
  readonly kind: 'role' | 'parent' | 'pair' | 'order';
  readonly confidence: number;
  readonly isRight: boolean;
}

/** Every statement of a circuit with whether it is right. */
function statements({ ring, spurs }: TrueCircuit, inferred: InferredCircuit): readonly Said[] {
  // A spur that is taken for the ring's stands where it leaves the ring: beside its parent neither order is wrong.
  const along = new Map([...ring, ...spurs].map(({ point, alongM }) => [point, alongM]));
  const isBefore = (a: string, b: string): boolean => (along.get(a) ?? 0) <= (along.get(b) ?? 0);
  const isOnePlace = (a: string, b: string): boolean => along.get(a) === along.get(b);
  const spurOf = new Map(spurs.map((spur) => [spur.point, spur]));
  const onRing = inferred.order.points;
  const roles = inferred.points
    .filter(({ role }) => role !== 'cannot-say')
    .map(
      ({ point, role, confidence }) =>
        ({ kind: 'role', confidence, isRight: (role === 'spur') === spurOf.has(point) }) as const,
    );
  const parents = inferred.points.flatMap(({ point, role, parents: [first] }) => {
    const spur = spurOf.get(point);
    if (role !== 'spur' || spur === undefined || first === undefined) return [];
    return [{ kind: 'parent', confidence: first.confidence, isRight: first.point === spur.parent } as const];
  });
  const pairs = inferred.legs.flatMap(({ from, to, confidence }) =>
    from === null || to === null || isOnePlace(from, to)
      ? []
      : [{ kind: 'pair', confidence, isRight: isBefore(from, to) } as const],
  );
  const isOrderRight = onRing.every((point, i) => i === 0 || isBefore(onRing[i - 1] ?? '', point));
  return [
    ...roles,
    ...parents,
    ...pairs,
    { kind: 'order', confidence: inferred.order.confidence, isRight: isOrderRight },
  ];
}

function everySaid(circuits: number): readonly Said[] {
  const random = seededRandom(7);
  return Array.from({ length: circuits }, (_, i) => {
    const truth = drawCircuit(random, {
      ringPoints: 5 + (i % 8),
      legM: [0.1, 8],
      boardLegM: [2, 9],
      spurs: [0, 3],
      spurM: [0.5, 9],
      jointShare: 0.05,
    });
    const loops = i % 2 === 0 ? (['L-N'] as const) : (['L-N', 'L-cpc'] as const);
    const noise = i % 4 < 2 ? noises.ordinary : noises.poor;
    return statements(truth, inferCircuit(readCircuit(random, truth, { loops, noise }), 'ring-one'));
  }).flat();
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

describe('stated confidence', () => {
  const said = everySaid(500);
  const within = (low: number, high: number, kinds: readonly string[]): readonly Said[] =>
    said.filter(({ kind, confidence }) => kinds.includes(kind) && confidence >= low && confidence < high);
  const told = (list: readonly Said[]): number => mean(list.map(({ confidence }) => confidence));
  const share = (list: readonly Said[]): number => mean(list.map(({ isRight }) => Number(isRight)));

  it.each([
    ['role', 200],
    ['pair', 100],
    ['parent', 50],
    ['order', 40],
  ])('of statements of %s given about nine in ten, about nine in ten are right', (kind, least) => {
    const list = within(0.85, 0.95, [kind]);
    expect(list.length).toBeGreaterThanOrEqual(least);
    // Two spreads of so many, and the five points by which the draw of circuits may differ from what is usual.
    const room = 0.05 + 2 * Math.sqrt(0.09 / list.length);
    expect(Math.abs(share(list) - told(list))).toBeLessThan(room);
  });

  it.each([
    [0.6, 0.7],
    [0.7, 0.8],
    [0.8, 0.9],
    [0.9, 0.95],
    [0.95, 0.99],
    [0.99, 1.01],
  ])('of all statements from %d to %d, as many are right', (low, high) => {
    const list = within(low, high, ['role', 'pair', 'parent', 'order']);
    expect(list.length).toBeGreaterThan(100);
    expect(Math.abs(share(list) - told(list))).toBeLessThan(low < 0.8 ? 0.1 : 0.05);
  });
});
