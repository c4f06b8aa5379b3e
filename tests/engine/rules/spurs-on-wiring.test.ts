import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circuitShapes } from '#engine/circuit/circuit-shapes.ts';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import { spurLoads } from '#engine/proof/spur-load.ts';
import { spurFeeds } from '#engine/rules/spur-feeds.ts';
import { spurFromSpur } from '#engine/rules/spur-from-spur.ts';
import type { PointKind } from '#model/installation.ts';
import { circuitOf, factsOf, jobOf, legOf, pointOf, saidBy } from './facts-builder.ts';

/** A point hung on the ring or on an earlier one; `load`: joined to the load side where that is a fused unit. */
interface Hung {
  readonly kind: Extract<PointKind, 'socket-single' | 'socket-twin' | 'fused-unit'>;
  readonly parent: number;
  readonly load: boolean;
}

const RING = ['r0', 'r1', 'r2'];
const names = (hung: readonly Hung[]) => [...RING, ...hung.map((_, i) => `h${i}`)];

/** The parent's number is taken among the ring points and what was hung before. */
const parentOf = (hung: readonly Hung[], index: number) => (hung[index]?.parent ?? 0) % (RING.length + index);

function factsFrom(hung: readonly Hung[]) {
  const ids = names(hung);
  const spurLegs = hung.map(({ load }, i) => {
    const parent = parentOf(hung, i);
    const isUnit = parent >= RING.length && hung[parent - RING.length]?.kind === 'fused-unit';
    const from = {
      point: ids[parent] ?? 'r0',
      ...(isUnit ? { side: load ? ('load' as const) : ('supply' as const) } : {}),
    };
    return legOf(`s${i}`, 'r0', `h${i}`, { from });
  });
  const job = jobOf({
    circuits: [circuitOf('c', { shape: 'ring' })],
    points: [
      ...RING.map((id) => pointOf(id, { circuit: 'c' })),
      ...hung.map(({ kind }, i) => pointOf(`h${i}`, { kind, circuit: 'c' })),
    ],
    legs: [
      legOf('a', 'c', 'r0'),
      legOf('b', 'r0', 'r1'),
      legOf('d', 'r1', 'r2'),
      legOf('e', 'r2', 'c'),
      ...spurLegs,
    ],
  });
  const found = foundNetwork(job);
  const shapes = [...circuitShapes(job, found).values()];
  return factsOf({ job, found, proposed: found, shapes });
}

/** By the definition: what is met from a ring point outwards before any fuse, one list a cable that leaves it. */
function spursByDefinition(hung: readonly Hung[]): number[][] {
  const children = (parent: number) => hung.flatMap((_, i) => (parentOf(hung, i) === parent ? [i] : []));
  const met = (index: number): number[] => {
    const isUnit = hung[index]?.kind === 'fused-unit';
    const beyond = children(index + RING.length).filter((child) => !(isUnit && hung[child]?.load));
    return [index, ...beyond.flatMap(met)];
  };
  return RING.flatMap((_, ring) => children(ring).map(met));
}

const amps = { 'socket-single': 13, 'socket-twin': 26, 'fused-unit': 13 } as const;
const trees = fc.array(
  fc.record({
    kind: fc.constantFrom<Hung['kind']>('socket-single', 'socket-twin', 'fused-unit'),
    parent: fc.nat(11),
    load: fc.boolean(),
  }),
  { maxLength: 9 },
);

describe('spurs of wiring built from legs, against their definition', () => {
  it('[SP1] fails exactly the spurs with more than one accessory before any fuse', () => {
    fc.assert(
      fc.property(trees, (hung) => {
        const facts = factsFrom(hung);
        const expected = spursByDefinition(hung);
        const said = saidBy(spurFeeds, facts);
        expect(said.filter(({ outcome }) => outcome === 'fails')).toHaveLength(
          expected.filter(({ length }) => length > 1).length,
        );
        expect(said.filter(({ outcome }) => outcome === 'passes')).toHaveLength(
          expected.filter(({ length }) => length === 1).length,
        );
        const sums = expected.map((spur) =>
          spur.reduce((sum, i) => sum + amps[hung[i]?.kind ?? 'fused-unit'], 0),
        );
        const byRule = spurLoads(facts, 'c').map(({ possibleA }) => possibleA);
        expect(byRule.sort((a, b) => a - b)).toEqual(sums.sort((a, b) => a - b));
      }),
      { seed: 7 },
    );
  });

  it('[SP3] fails every accessory that hangs on another one before any fuse', () => {
    fc.assert(
      fc.property(trees, (hung) => {
        const beyond = spursByDefinition(hung).flatMap((spur) => spur.slice(1).map((i) => `h${i}`));
        const failed = saidBy(spurFromSpur, factsFrom(hung)).filter(({ outcome }) => outcome === 'fails');
        expect(failed.map(({ subjectId }) => subjectId).sort()).toEqual(beyond.sort());
      }),
      { seed: 8 },
    );
  });
});
