import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SchemeEstimate, SurveyAsk } from '#engine/schemes/estimate-result.ts';
import { askStages } from '#engine/survey/ask.ts';
import type { Job } from '#model/job.ts';
import { demoJob, demoNames, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { type Loosened, loosened, loosenedJob, turnedOut } from './loosened-job.ts';

const onlyScheme = (job: Job): SchemeEstimate => {
  const [scheme] = estimateOf(job).schemes;
  if (scheme === undefined) throw new Error('a job without a scheme');
  return scheme;
};
const askIn = (survey: readonly SurveyAsk[], id: string): SurveyAsk => {
  const ask = survey.find((one) => one.id === id);
  if (ask === undefined) throw new Error(`no ask ${id} of ${survey.map((one) => one.id).join(', ')}`);
  return ask;
};
const widthOf = ({ range }: SchemeEstimate): number => range.highPence - range.lowPence;

const quoting: Job = (() => {
  const job = demoJob('saltglass-row-quoting');
  return { ...job, schemes: job.schemes.slice(0, 1) };
})();
const nothingLoose: Loosened = {
  bonds: false,
  bondSizes: false,
  rcds: false,
  rcbo: false,
  walls: false,
  asbestos: false,
  readings: false,
  withoutRcbo: false,
  scheme: 'spurs-rcbo',
};

describe.each(demoNames)('the survey of %s', (name) => {
  const result = estimateOf(demoJob(name));

  it('goes by the stages of the walk, within each by worth, and asks nothing twice', () => {
    for (const { survey } of result.schemes) {
      const keys = survey.map(({ stage, worth }) => [askStages.indexOf(stage), -(worth?.rangePence ?? 0)]);
      const sorted = keys.toSorted(([a = 0, b = 0], [c = 0, d = 0]) => a - c || b - d);
      expect(keys).toEqual(sorted);
      expect(new Set(survey.map(({ id }) => id)).size).toBe(survey.length);
    }
  });

  it('holds every open question at the same worth, and no others of worth', () => {
    for (const { survey, openQuestions } of result.schemes) {
      const worth = survey.flatMap((ask) => (ask.worth === null ? [] : [[ask.id, ask.worth.rangePence]]));
      expect(new Map(openQuestions.map((one) => [one.question, one.worthPence]))).toEqual(
        new Map(worth as [string, number][]),
      );
    }
  });

  it('has no worth for what is settled', () => {
    const settled = result.schemes.flatMap(({ survey }) =>
      survey.filter(({ subjects }) => subjects.length === 0),
    );
    expect(settled.length).toBeGreaterThan(0);
    expect(settled.filter(({ worth }) => worth !== null)).toEqual([]);
    expect(settled.filter(({ state }) => state === 'open')).toEqual([]);
  });
});

/** What somebody would write into the job who had looked and found it as the price counts on it. */
const lookedAt: readonly (readonly [string, (job: Job) => Job])[] = [
  [
    'bond-water',
    (job) => ({
      ...job,
      supply: {
        ...job.supply,
        bonding: job.supply.bonding.map((bond) => (bond.service === 'water' ? { ...bond, mm2: 10 } : bond)),
      },
    }),
  ],
  [
    'asbestos',
    (job) => ({
      ...job,
      answers: [
        ...job.answers.filter(({ question }) => question !== 'asbestos'),
        { question: 'asbestos', value: 'surveyed-clear', certainty: 'seen' },
      ],
    }),
  ],
  [
    'rcbo-available',
    (job) => ({ ...job, boards: job.boards.map((board) => ({ ...board, rcboAvailable: true })) }),
  ],
  [
    'boards-liftable',
    (job) => ({
      ...job,
      storeys: job.storeys.map((storey) => ({ ...storey, floor: { ...storey.floor, liftable: true } })),
    }),
  ],
  [
    'wall-build',
    (job) => ({
      ...job,
      storeys: job.storeys.map((storey) => ({
        ...storey,
        walls: storey.walls.map((wall) => ({ ...wall, certainty: { ...wall.certainty, core: 'seen' } })),
      })),
    }),
  ],
  [
    'box-depths',
    (job) => ({
      ...job,
      points: job.points.map((point) =>
        point.status === 'existing'
          ? {
              ...point,
              asFound: { ...point.asFound, boxDepthMm: 47 },
              certainty: { ...point.certainty, boxDepthMm: 'measured' },
            }
          : point,
      ),
    }),
  ],
  [
    'ring-order',
    (job) => ({
      ...job,
      readings: (['L', 'N', 'cpc'] as const).map((loop) => ({
        id: `read-${loop}`,
        kind: 'loop',
        circuit: 'ring-house',
        loop,
        from: 'end-to-end',
        phase: 'before',
        ohm: loop === 'cpc' ? 0.74 : 0.45,
      })),
    }),
  ],
];

describe('what an ask is worth', () => {
  const before = onlyScheme(quoting);

  it.each(lookedAt)(
    'is what %s narrows the range by, once it is written into the job by hand',
    (id, look) => {
      const after = onlyScheme(look(quoting));
      const { worth } = askIn(before.survey, id);
      expect(worth).not.toBeNull();
      expect(worth?.highPence).toBe(before.range.highPence - after.range.highPence);
      expect(worth?.lowPence).toBe(after.range.lowPence - before.range.lowPence);
      expect(worth?.rangePence).toBe(widthOf(before) - widthOf(after));
    },
  );

  it.each(lookedAt)('is nothing any more, and %s not open, once it is answered', (id, look) => {
    const { state, worth, subjects } = askIn(onlyScheme(look(quoting)).survey, id);
    expect({ worth, subjects }).toEqual({ worth: null, subjects: [] });
    expect(['seen', 'measured']).toContain(state);
  });

  it('leaves the price as it was, whatever is loosened that is no quantity', () => {
    const loose = { ...nothingLoose, bonds: true, rcds: true, rcbo: true, asbestos: true };
    const [tight, slack] = [nothingLoose, loose].map((what) => onlyScheme(loosenedJob(what)));
    expect(slack?.price.totals).toEqual(tight?.price.totals);
  });

  it.each(['bonds', 'bondSizes', 'rcds', 'rcbo', 'walls', 'asbestos', 'readings'] as const)(
    'widens the range where %s is not known any more',
    (what) => {
      const tight = onlyScheme(loosenedJob(nothingLoose));
      const slack = onlyScheme(loosenedJob({ ...nothingLoose, [what]: true }));
      expect(widthOf(slack)).toBeGreaterThan(widthOf(tight));
    },
  );
});

/** For each ask that says in words that it moves nothing: answers that could be found, written into the job by hand. */
const foundAs: Readonly<Record<string, readonly ((job: Job) => Job)[]>> = {
  'main-fuse': [60, 80, 100].map((mainFuseA) => (job: Job) => ({
    ...job,
    supply: { ...job.supply, mainFuseA },
  })),
  tails: [16, 25].flatMap((tailsMm2) =>
    [6, 16].map((earthingMm2) => (job: Job) => ({
      ...job,
      supply: { ...job.supply, tailsMm2, earthingMm2 },
    })),
  ),
  'other-sources': [[], ['pv', 'battery'], ['ev']].map((otherSources) => (job: Job) => ({
    ...job,
    supply: { ...job.supply, otherSources: otherSources as Job['supply']['otherSources'] },
  })),
  ze: [0.1, 0.35, 5].map((zeOhm) => (job: Job) => ({
    ...job,
    supply: { ...job.supply, zeOhm, certainty: { ...job.supply.certainty, zeOhm: 'measured' as const } },
  })),
  tenure: (['owner', 'tenant', 'leaseholder'] as const).map((tenure) => (job: Job) => ({
    ...job,
    site: { ...job.site, tenure },
  })),
  consent: ['given', 'not-given'].map((value) => (job: Job) => ({
    ...job,
    answers: [
      ...job.answers.filter(({ question }) => question !== 'consent'),
      { question: 'consent', value, certainty: 'seen' as const },
    ],
  })),
};

describe('an ask that says in words that it moves nothing in the price', () => {
  it('is one of those that are priced here under every answer', () => {
    // Who owns the home is asked for no consent.
    const { asFound } = estimateOf({ ...quoting, schemes: [], site: { ...quoting.site, tenure: 'tenant' } });
    const told = asFound.survey.filter(({ money }) => money !== undefined).map(({ id }) => id);
    expect(told.toSorted()).toEqual(Object.keys(foundAs).toSorted());
  });

  it.each(Object.entries(foundAs))(
    '%s leaves price and range as they were, whatever is found',
    (id, answers) => {
      const before = onlyScheme(quoting);
      for (const found of answers) {
        const after = onlyScheme(found(quoting));
        expect(after.price.totals).toEqual(before.price.totals);
        expect(after.range).toEqual(before.range);
        const ask = after.survey.find((one) => one.id === id);
        expect(ask?.worth ?? null).toBeNull();
      }
    },
  );
});

describe('the range', () => {
  const isOpenIn = (what: Loosened, turn: string): boolean => {
    if (turn.startsWith('bond')) return what.bonds || what.bondSizes;
    if (turn.startsWith('asbestos')) return what.asbestos;
    if (turn.startsWith('an RCBO')) return what.rcbo;
    return what.rcds;
  };

  it('contains the price under every outcome of every open ask, alone and together', () => {
    fc.assert(
      fc.property(loosened, fc.infiniteStream(fc.boolean()), (what, coins) => {
        const job = loosenedJob(what);
        const { range } = onlyScheme(job);
        const open = Object.entries(turnedOut).filter(([turn]) => isOpenIn(what, turn));
        const jobs = open.map(([, turn]) => turn(job));
        const some = open.filter(() => coins.next().value).reduce((one, [, turn]) => turn(one), job);
        for (const turned of [...jobs, some]) {
          const { totals } = onlyScheme(turned);
          expect(totals.grossPence).toBeGreaterThanOrEqual(range.lowPence);
          expect(totals.grossPence).toBeLessThanOrEqual(range.highPence);
        }
      }),
      { numRuns: 12 },
    );
  });
});

describe('an ask that was put off', () => {
  const putOff = (id: string): Job => ({
    ...quoting,
    answers: [...quoting.answers, { question: id, value: null, certainty: 'unknown' }],
  });

  it('says so, and is worth what it was', () => {
    const before = askIn(onlyScheme(quoting).survey, 'rcbo-available');
    const after = askIn(onlyScheme(putOff('rcbo-available')).survey, 'rcbo-available');
    expect(before.state).toBe('open');
    expect(after).toEqual({ ...before, state: 'put-off' });
  });

  it('is answered all the same by an answer', () => {
    const job = putOff('rcbo-available');
    const told = { ...job, boards: job.boards.map((board) => ({ ...board, rcboAvailable: true })) };
    expect(askIn(onlyScheme(told).survey, 'rcbo-available').state).toBe('seen');
  });
});

describe('a house without a scheme', () => {
  it('is asked after without prices', () => {
    const { asFound } = estimateOf({ ...quoting, schemes: [] });
    expect(asFound.survey.length).toBeGreaterThan(10);
    expect(asFound.survey.every(({ worth }) => worth === null)).toBe(true);
    expect(asFound.survey.map(({ id }) => id)).toContain('rcd-found');
  });
});
