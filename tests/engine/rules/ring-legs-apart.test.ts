import { describe, expect, it } from 'vitest';
import { capacities } from '#engine/proof/capacity-of-run.ts';
import type { Facts } from '#engine/rules/facts.ts';
import { ringCable } from '#engine/rules/ring-cable.ts';
import { ringLegsApart } from '#engine/rules/ring-legs-apart.ts';
import type { Containment, Medium } from '#model/cable.ts';
import {
  edgeOf,
  factsOf,
  legOf,
  nodeOf,
  runOf,
  saidBy,
  segmentOf,
  shapeOf,
  twinOf,
} from './facts-builder.ts';

interface Lying {
  readonly medium?: Medium;
  readonly containment?: Containment;
  readonly mm2?: 2.5 | 4;
  /** Names of the tubes of the way out and of the way back. */
  readonly bundles?: readonly [string | null, string | null];
  /** What the way back lies in before, where that is worse. */
  readonly insulated?: boolean;
}

/** The ring carried out and back: two new legs, 2.2 m of each in what is named. */
function outAndBack(lying: Lying = {}): Facts {
  const { medium = 'surface-channel', containment = 'channel', mm2 = 2.5 } = lying;
  const { bundles = ['pair', 'pair'], insulated = false } = lying;
  const cable = twinOf(mm2, 1.5);
  const ends = [
    ['out', 'r1', 'w1'],
    ['back', 'w1', 'r2'],
  ] as const;
  const edges = ends.map(([id, from, to]) => edgeOf(id, from, to, { state: 'new', cable }));
  const runs = ends.map(([id], i) =>
    runOf(
      id,
      [
        segmentOf({ medium, containment, bundle: bundles[i] ?? null, lengthMm: i === 0 ? 2200 : 3000 }),
        ...(insulated ? [segmentOf({ insulation: 'surrounded', lengthMm: 800 })] : []),
      ],
      { cable },
    ),
  );
  const facts = factsOf({
    proposed: { nodes: ['r1', 'w1', 'r2'].map((id) => nodeOf(id)), edges },
    runs,
    shapes: [shapeOf('c', { ringEdges: edges })],
  });
  return { ...facts, capacities: capacities(facts) };
}

describe('two legs of a ring in one tube or channel', () => {
  it('[RG4] fail at 2.5 mm²: 23 × 0.8 = 18.4 A, told once for both, with how far they lie together', () => {
    const facts = outAndBack();
    expect(saidBy(ringLegsApart, facts)).toMatchObject([
      { outcome: 'fails', subjectId: 'out', origin: 'scheme', actual: 18.4, limit: 20, unit: 'A' },
    ]);
    expect(ringLegsApart.check(facts)[0]?.values).toMatchObject({ lengthM: 2.2 });
    expect(saidBy(ringCable, facts)).toEqual([]);
  });

  it('[RG4] fail in an oval tube under plaster as well', () => {
    expect(saidBy(ringLegsApart, outAndBack({ medium: 'wall-chase', containment: 'oval' }))).toMatchObject([
      { outcome: 'fails', actual: 18.4 },
    ]);
  });

  it('[RG4] pass in a cable that has enough left: 4 mm², 30 × 0.8 = 24 A', () => {
    expect(saidBy(ringLegsApart, outAndBack({ mm2: 4 }))).toMatchObject([{ outcome: 'passes', actual: 24 }]);
  });

  it('[RG4] say nothing of a tube for each leg, nor of legs clipped side by side', () => {
    expect(saidBy(ringLegsApart, outAndBack({ bundles: ['one', 'two'] }))).toEqual([]);
    expect(saidBy(ringLegsApart, outAndBack({ bundles: [null, null] }))).toEqual([]);
    expect(saidBy(ringLegsApart, outAndBack({ medium: 'surface-clipped', containment: 'none' }))).toEqual([]);
  });

  it('[RG4] leave it to CA1 where the legs fall short elsewhere', () => {
    const facts = outAndBack({ insulated: true });
    expect(saidBy(ringLegsApart, facts)).toEqual([]);
    expect(saidBy(ringCable, facts)).toMatchObject([
      { outcome: 'fails', messageId: 'tooLittle' },
      { outcome: 'fails', messageId: 'tooLittle' },
    ]);
  });

  it('[RG4] are as found where the survey found them so, and nothing was changed', () => {
    const edges = [edgeOf('l1', 'r1', 'w1'), edgeOf('l2', 'w1', 'r2')];
    const inTube = (id: string) =>
      runOf(id, [segmentOf({ medium: 'wall-chase', containment: 'oval', bundle: 'pair' })], { pinned: true });
    const facts = factsOf({
      job: {
        legs: [
          legOf('l1', 'r1', 'w1', { cable: twinOf(2.5, 1.5) }),
          legOf('l2', 'w1', 'r2', { cable: twinOf(2.5, 1.5) }),
        ],
      },
      proposed: { nodes: ['r1', 'w1', 'r2'].map((id) => nodeOf(id)), edges },
      foundRuns: [inTube('l1'), inTube('l2')],
      shapes: [shapeOf('c', { ringEdges: edges })],
    });
    expect(saidBy(ringLegsApart, { ...facts, capacities: capacities(facts) })).toMatchObject([
      { outcome: 'fails', subjectId: 'l1', origin: 'found', actual: 18.4 },
    ]);
  });
});
