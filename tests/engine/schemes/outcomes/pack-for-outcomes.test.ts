import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { packForOutcomes } from '#engine/pack-for-outcomes.ts';
import { planPurchase } from '#engine/price/buying/plan-purchase.ts';
import type { OutcomePacker } from '#engine/schemes/outcomes/outcome-packer.ts';
import type { OutcomePlan, PackChoice, TurnedOut } from '#engine/schemes/outcomes/outcome-plan.ts';
import type { Job } from '#model/job.ts';
import {
  type DemoName,
  demoJob,
  demoNames,
  estimateOf,
  schemeOf,
} from '#tests/engine/demo-jobs/demo-estimates.ts';
import { randomFrom } from '#tests/engine/proof/flow/random-network.ts';

const SEED = 20_261_126;

function packerOf(job: Job, schemeId: string, otherIds: readonly string[] = []): OutcomePacker {
  const packer = packForOutcomes(job, demoLibrary(), { schemeId, otherIds });
  if (packer === null) throw new Error(`no scheme ${schemeId}`);
  return packer;
}

const firstOf = (job: Job): string => job.schemes[0]?.id ?? '';
const questionOf = (plan: OutcomePlan, id: string) => {
  const found = plan.questions.find((question) => question.id === id);
  if (found === undefined)
    throw new Error(`no question ${id} of ${plan.questions.map((one) => one.id).join(', ')}`);
  return found;
};
const kitOf = (plan: OutcomePlan, question: string, outcome: string) =>
  Object.fromEntries(
    (questionOf(plan, question).outcomes.find(({ id }) => id === outcome)?.kit ?? []).map(
      ({ item, byQuantity }) => [item, byQuantity],
    ),
  );
const everyOutcome = ({ questions }: OutcomePlan): PackChoice =>
  questions.map(({ id, outcomes }) => ({ question: id, outcomes: outcomes.map((outcome) => outcome.id) }));

describe('what is open, and what the kit hangs on', () => {
  it('is the depth of the boxes that nobody measured, at what a deeper one takes', () => {
    const job = demoJob('saltglass-row');
    const plan = packerOf(job, 'spurs-rcbo').plan([]);
    expect(plan.questions.map(({ id }) => id)).toEqual(['box/r1-hallway', 'box/r6-kitchen']);
    expect(kitOf(plan, 'box/r1-hallway', 'shallow')).toMatchObject({
      'box-steel-single-35': 1,
      'grommet-20': 2,
    });
    expect(
      questionOf(plan, 'box/r1-hallway').outcomes.map(({ isServed, addsPence }) => [isServed, addsPence]),
    ).toEqual([
      [true, null],
      [false, 72],
    ]);
    expect(plan.extraPence).toBe(0);
    expect(plan.trip).toEqual({ minutes: 45, pence: 3375 });
  });

  it('is nothing where everything was looked at', () => {
    const plan = packerOf(demoJob('fernlow-close'), 'fused-unit').plan([]);
    expect(plan.questions).toEqual([]);
  });

  it('is, after a quoting visit, boxes, starts of cables, the RCBO and the floors, in that order', () => {
    const job = demoJob('saltglass-row-quoting');
    const plan = packerOf(job, 'spurs-rcbo').plan([]);
    expect(plan.questions.map(({ kind }) => kind)).toEqual([
      ...Array.from({ length: 4 }, () => 'box'),
      ...Array.from({ length: 4 }, () => 'spur'),
      ...['rcbo', 'floor', 'floor'],
    ]);
    expect(kitOf(plan, 'rcbo/board-hall', 'enclosure')).toEqual({
      'rcbo-b32-30-a': -1,
      'enclosure-2-module': 1,
      'rcd-63-30-a': 1,
      'tails-16': 1,
    });
  });

  it('is an RCBO, or an enclosure, where it is only assumed that there is no RCD', () => {
    const job = demoJob('saltglass-row');
    const assumed: Job = {
      ...job,
      boards: job.boards.map(({ rcboAvailable: _, ...board }) => ({
        ...board,
        certainty: { rcds: 'assumed' },
      })),
      schemes: job.schemes.map((scheme) => ({ ...scheme, remedies: [] })),
    };
    const plan = packerOf(assumed, 'spurs-rcbo').plan([]);
    const { outcomes } = questionOf(plan, 'rcd/ring-house');
    expect(outcomes.map(({ id }) => id)).toEqual(['there', 'none', 'enclosure']);
    expect(kitOf(plan, 'rcd/ring-house', 'none')).toMatchObject({ 'rcbo-b32-30-a': 1 });
    expect(kitOf(plan, 'rcd/ring-house', 'enclosure')).toMatchObject({ 'rcd-63-30-a': 1 });
  });

  it('is no RCBO after all, where the scheme fits one on an assumption', () => {
    const job = demoJob('saltglass-row');
    const assumed: Job = {
      ...job,
      boards: job.boards.map((board) => ({ ...board, certainty: { rcds: 'assumed' } })),
    };
    const plan = packerOf(assumed, 'spurs-rcbo').plan([]);
    expect(questionOf(plan, 'rcd/ring-house').outcomes.map(({ id }) => id)).toEqual(['none', 'there']);
    expect(kitOf(plan, 'rcd/ring-house', 'there')).toMatchObject({ 'rcbo-b32-30-a': -1 });
    const back = packerOf(assumed, 'spurs-rcbo').takeBack([], { 'rcd/ring-house': 'there' });
    expect(back.lines.find(({ item }) => item === 'rcbo-b32-30-a')).toMatchObject({ backPence: 2240 });
  });

  it('is a joint in a leg that may be cut, where nobody has taken the plate off', () => {
    const job = demoJob('saltglass-row');
    const unopened: Job = {
      ...job,
      legs: job.legs.map((leg) =>
        leg.id === 'leg-r08r09'
          ? {
              ...leg,
              via: [{ storey: 'first-flr1', at: [2900, 900], heightMm: -110 }],
              certainty: { ...leg.certainty, route: 'seen' },
            }
          : leg,
      ),
      points: job.points.map((point) => {
        if (point.id !== 'r8-bedroom') return point;
        const { cablesSeen: _, ...asFound } = point.asFound ?? {};
        return { ...point, asFound };
      }),
    };
    const plan = packerOf(unopened, 'spurs-rcbo').plan([]);
    const question = questionOf(plan, 'spur/r8-bedroom');
    expect(question.outcomes[1]?.words).toContain('a joint in the leg R8–R9');
    expect(kitOf(plan, 'spur/r8-bedroom', 'full')).toMatchObject({ 'joint-mf-32-3': 1 });
  });

  it('is which of the kept schemes is carried out, where others are offered', () => {
    const plan = packerOf(demoJob('quarrel-court'), 'ring-by-w2', [
      'spurs-rcbo',
      'ring-by-w2',
      'unknown',
    ]).plan([]);
    expect(questionOf(plan, 'scheme').outcomes.map(({ id }) => id)).toEqual(['ring-by-w2', 'spurs-rcbo']);
    expect(kitOf(plan, 'scheme', 'spurs-rcbo')).toMatchObject({ 'rcbo-b32-30-a': 1 });
  });
});

describe('what is bought for several outcomes', () => {
  it('is the scheme’s own shopping where nothing is chosen, whatever it says of itself', () => {
    for (const name of demoNames) {
      const job = demoJob(name);
      const scheme = schemeOf(estimateOf(job), firstOf(job));
      const { purchase, extraPence } = packerOf(job, scheme.id).plan([
        { question: 'box/nowhere', outcomes: ['shallow'] },
      ]);
      expect(purchase, name).toEqual(scheme.purchase);
      expect(extraPence, name).toBe(0);
    }
  }, 60_000);

  it('costs what each outcome is said to add, and never less for an outcome more', () => {
    for (const name of ['saltglass-row', 'saltglass-row-quoting'] satisfies readonly DemoName[]) {
      const job = demoJob(name);
      const packer = packerOf(job, firstOf(job));
      let [packFor, pence]: [PackChoice, number] = [[], packer.plan([]).purchase.pence];
      for (const { id, outcomes } of packer.plan([]).questions) {
        const second = questionOf(packer.plan(packFor), id).outcomes[1];
        packFor = [...packFor, { question: id, outcomes: outcomes.map((outcome) => outcome.id) }];
        const withIt = packer.plan(packFor).purchase.pence;
        expect(withIt, id).toBeGreaterThanOrEqual(pence);
        if (outcomes.length === 2) expect(withIt - pence, id).toBe(second?.addsPence);
        pence = withIt;
      }
    }
  }, 60_000);

  it('serves every combination of them when it is worked through the stages as a whole', () => {
    const random = randomFrom(SEED);
    const demos: readonly [DemoName, string, readonly string[], number][] = [
      ['saltglass-row', 'spurs-rcbo', ['ring-to-w2'], 8],
      ['saltglass-row-quoting', 'spurs-rcbo', ['fused-beds'], 60],
      ['quarrel-court', 'ring-by-w2', ['spurs-rcbo', 'ring-apart'], 3],
    ];
    for (const [name, schemeId, otherIds, rounds] of demos) {
      const job = demoJob(name);
      const packer = packerOf(job, schemeId, otherIds);
      const all = everyOutcome(packer.plan([{ question: 'scheme', outcomes: [schemeId, ...otherIds] }]));
      const bought = packer.plan(all).purchase;
      for (let round = 0; round < rounds; round++) {
        const turnedOut: TurnedOut = Object.fromEntries(
          all.map(({ question, outcomes }) => [
            question,
            outcomes[Math.floor(random() * outcomes.length)] ?? '',
          ]),
        );
        const back = packer.takeBack(all, turnedOut);
        const what = `seed ${SEED}, ${name}: ${JSON.stringify(turnedOut)}`;
        expect(
          back.lines.filter(({ lacking }) => lacking > 0),
          what,
        ).toEqual([]);
        expect(back.pence, what).toBeLessThanOrEqual(bought.pence);
      }
    }
  }, 120_000);

  it('is no more than the combination that asks for most, where boxes are all that is open', () => {
    const job = demoJob('saltglass-row');
    const packer = packerOf(job, 'spurs-rcbo');
    const all = everyOutcome(packer.plan([]));
    const shallow: Job = {
      ...job,
      points: job.points.map((point) =>
        ['r1-hallway', 'r6-kitchen'].includes(point.id)
          ? { ...point, asFound: { ...point.asFound, boxDepthMm: 25 }, certainty: {} }
          : point,
      ),
    };
    const { takeoff } = schemeOf(estimateOf(shallow), 'spurs-rcbo');
    const { prices } = demoLibrary();
    const dearest = planPurchase({ takeoff, prices, stock: [], depth: 'whole' });
    expect(packer.plan(all).purchase.pence).toBe(dearest.pence);
    expect(packer.plan(all).purchase.proved).toBe(true);
  });

  it('leaves out what only another outcome takes, where only one is bought for', () => {
    const packer = packerOf(demoJob('saltglass-row-quoting'), 'spurs-rcbo');
    const plan = packer.plan([{ question: 'rcbo/board-hall', outcomes: ['enclosure'] }]);
    const items = plan.purchase.lines.map(({ item }) => item);
    expect(items).toContain('rcd-63-30-a');
    expect(items).not.toContain('rcbo-b32-30-a');
    expect(questionOf(plan, 'rcbo/board-hall').outcomes.map(({ isServed }) => isServed)).toEqual([
      false,
      true,
    ]);
  });

  it('is bought as one list beyond what is told apart, and proved where that costs no more than a case', () => {
    const packer = packerOf(demoJob('saltglass-row-quoting'), 'spurs-rcbo', [
      'ring-to-w2',
      'fused-beds',
      'new-radial',
    ]);
    const ids = ['spurs-rcbo', 'ring-to-w2', 'fused-beds', 'new-radial'];
    const all = everyOutcome(packer.plan([{ question: 'scheme', outcomes: ids }]));
    const cable = packer.plan(all).purchase.lines.find(({ item }) => item === 'cable-flat-2.5-1.5');
    const { optimal, boundPence } = cable?.proof ?? { optimal: false, boundPence: Number.NaN };
    expect(boundPence).toBeGreaterThan(0);
    expect(boundPence).toBeLessThanOrEqual(cable?.pence ?? 0);
    expect(optimal).toBe(boundPence === cable?.pence);
    // All points full under each scheme: the most new cable.
    for (const scheme of ids) {
      const full = Object.fromEntries(all.map(({ question, outcomes }) => [question, outcomes.at(-1) ?? '']));
      expect(packer.takeBack(all, { ...full, scheme }).isServed, scheme).toBe(true);
    }
  }, 60_000);
});

describe('what goes back when it is known how things turned out', () => {
  it('is the deeper box where the old one was deep enough, and nothing where it was not', () => {
    const packer = packerOf(demoJob('saltglass-row'), 'spurs-rcbo');
    const both: PackChoice = [{ question: 'box/r1-hallway', outcomes: ['deep', 'shallow'] }];
    const deep = packer.takeBack(both, {});
    expect(
      deep.lines.filter(({ back }) => back.length > 0).map(({ item, backPence }) => [item, backPence]),
    ).toEqual([['box-steel-single-35', 72]]);
    expect(packer.takeBack(both, { 'box/r1-hallway': 'shallow' }).pence).toBe(0);
  });

  it('says what is lacking for what was not bought for', () => {
    const packer = packerOf(demoJob('saltglass-row'), 'spurs-rcbo');
    const back = packer.takeBack([], { 'box/r1-hallway': 'shallow' });
    expect(back.isServed).toBe(false);
    expect(
      back.lines.filter(({ lacking }) => lacking > 0).map(({ item, lacking }) => [item, lacking]),
    ).toEqual([['box-steel-single-35', 1]]);
  });
});
