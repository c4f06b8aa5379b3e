import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { type Contract, pricingVariation, variationOf } from '#engine/quotation/variation.ts';
import { workMoved } from '#engine/work-moved.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';

const when = { date: '2026-11-26', revision: 1 };
const library = demoLibrary();
const quotedJob = demoJob('saltglass-row');
const schemeId = quotedJob.schemes[0]?.id ?? '';
const [quoted] = estimate(quotedJob, library, when, { schemeIds: [schemeId], depth: 'live' }).schemes;
const contractPence = quoted?.totals.grossPence ?? 0;
const contract: Contract = { schemeId, quotedJob, library, agreedJob: quotedJob, contractPence };

/** The wall that a wanted point stands on turns out to be of another build. */
function withHardWall(job: Job): Job {
  const walls = new Set(
    job.points.flatMap(({ status, place }) =>
      status === 'wanted' && place !== undefined && 'wall' in place ? [place.wall] : [],
    ),
  );
  return {
    ...job,
    storeys: job.storeys.map((storey) => ({
      ...storey,
      walls: storey.walls.map((wall) => (walls.has(wall.id) ? { ...wall, core: 'concrete' as const } : wall)),
    })),
  };
}

const parts = (job: Job) => variationOf(contract, job)?.moved.parts ?? [];

describe('a variation', () => {
  it('is nothing where the job is as it was agreed', () => {
    expect(variationOf(contract, quotedJob)).toMatchObject({
      beforePence: contractPence,
      afterPence: contractPence,
    });
    expect(parts(quotedJob)).toEqual([]);
  });

  it('adds what was found to the contract, to the penny of its parts', () => {
    const made = variationOf(contract, withHardWall(quotedJob));
    expect(made?.beforePence).toBe(contractPence);
    expect(made?.afterPence).toBeGreaterThan(contractPence);
    const sum = made?.moved.parts.reduce((all, { figures }) => all + figures.grossPence, 0);
    expect(sum).toBe((made?.afterPence ?? 0) - contractPence);
    expect(made?.moved.parts.every(({ cause }) => cause === 'survey')).toBe(true);
  });

  it('prices a surprise that no drawing shows, by its own words', () => {
    const skip = { id: 'x1', words: 'Take the rubble away', typicalMin: 30, materialsPence: 6000 };
    const job = { ...quotedJob, extras: [skip] };
    const made = variationOf(contract, job);
    expect(made?.moved.parts.map(({ cause, words }) => [cause, words])).toEqual([['extra', skip.words]]);
    expect(made?.moved.idle).toEqual([]);
    const [part] = made?.moved.parts ?? [];
    expect(part?.figures.labourMin).toBeCloseTo(30, 9);
    expect(part?.figures.grossPence).toBe((made?.afterPence ?? 0) - contractPence);
    expect(part?.figures.cableMm).toBe(0);
  });

  it('tells what extra work was changed, and what was left out again', () => {
    const [joist, skip] = [
      { id: 'x1', words: 'Double the joist', typicalMin: 60 },
      { id: 'x2', words: 'Take the rubble away', materialsPence: 6000 },
    ];
    const agreed = { ...contract, agreedJob: { ...quotedJob, extras: [joist, skip] } };
    const made = variationOf(agreed, { ...quotedJob, extras: [{ ...joist, typicalMin: 90 }] });
    expect(made?.moved.parts.map(({ words, detail }) => [words, detail])).toEqual([
      ['Double the joist: changed', '90 min, was 60 min'],
      ['Take the rubble away: left out', ''],
    ]);
  });

  it('is priced on the terms of the quotation, whatever the job’s terms say by now', () => {
    const terms = {
      ...quotedJob.terms,
      markupPercent: 90,
      vat: 'zero' as const,
      minimumPence: 900_000,
      contingencyPercent: 50,
    };
    const [plain, otherwise] = [withHardWall(quotedJob), withHardWall({ ...quotedJob, terms })];
    expect(variationOf(contract, otherwise)).toEqual(variationOf(contract, plain));
  });

  it('takes what is told of the work itself from the job as it is now', () => {
    const job = { ...quotedJob, terms: { ...quotedJob.terms, filling: 'bonding-and-finish' as const } };
    expect(parts(job).map(({ words }) => words)).toEqual(['Plaster for cuts in walls']);
  });

  it('says what is done otherwise, as a quotation would, and nothing of what is done as agreed', () => {
    expect(workMoved(contract, quotedJob)).toEqual({ before: [], now: [] });
    const skip = { id: 'x1', words: 'Take the rubble away', typicalMin: 30, materialsPence: 6000 };
    expect(workMoved(contract, { ...quotedJob, extras: [skip] })).toEqual({ before: [], now: [skip.words] });
    const filled = { ...quotedJob, terms: { ...quotedJob.terms, filling: 'bonding-and-finish' as const } };
    expect(workMoved(contract, filled)).toEqual({
      before: ['What is cut into walls is filled flush with one coat of plaster'],
      now: ['What is cut into walls is filled with two coats of plaster, flush and smooth'],
    });
    const back = workMoved({ ...contract, agreedJob: filled }, quotedJob);
    expect(back?.now).toEqual(workMoved(contract, filled)?.before);
    expect(workMoved(contract, { ...quotedJob, schemes: [] })).toBeNull();
  });

  it('does not give the contingency back for what was found out', () => {
    const { contingencyPercent: _firm, ...firmTerms } = library.terms;
    const bySurvey = { ...library, terms: firmTerms };
    const { contingencyPercent: _job, ...terms } = demoJob('fernlow-close').terms;
    const sure: Job = { ...demoJob('fernlow-close'), terms };
    const unsure: Job = {
      ...sure,
      storeys: sure.storeys.map(({ floor: { liftable: _, ...floor }, ...one }) => ({ ...one, floor })),
    };
    const id = unsure.schemes[0]?.id ?? '';
    const [was, is] = [unsure, sure].map(
      (one) => estimate(one, bySurvey, when, { schemeIds: [id], depth: 'live' }).schemes[0],
    );
    // The case is worth something: what was found out takes a share off the contingency of a new quotation.
    expect(is?.price.contingencyPercent).toBeLessThan(was?.price.contingencyPercent ?? 0);
    const made = variationOf(
      {
        schemeId: id,
        quotedJob: unsure,
        library: bySurvey,
        agreedJob: unsure,
        contractPence: was?.totals.grossPence ?? 0,
      },
      sure,
    );
    const work = (one: typeof was): number =>
      (one?.totals.netPence ?? 0) - (one?.totals.contingencyPence ?? 0);
    const difference = (made?.afterPence ?? 0) - (made?.beforePence ?? 0);
    // By hand: what the work itself differs by, at the quoted contingency and the tax; a penny of rounding at each of both.
    const byHand =
      (work(is) - work(was)) *
      (1 + (was?.price.contingencyPercent ?? 0) / 100) *
      (1 + (was?.price.vatPercent ?? 0) / 100);
    expect(Math.abs(difference - byHand)).toBeLessThanOrEqual(4);
  });

  it('lies upon what was agreed last, and on what that came to', () => {
    const first = withHardWall(quotedJob);
    const agreed = variationOf(contract, first)?.afterPence ?? 0;
    const then: Contract = { ...contract, agreedJob: first, contractPence: agreed };
    expect(variationOf(then, first)).toMatchObject({ beforePence: agreed, afterPence: agreed });
    // Going back to the job as it was quoted takes off what was added.
    expect(variationOf(then, quotedJob)?.afterPence).toBe(contractPence);
  });

  it('is not to be had where the agreed scheme is gone', () => {
    expect(variationOf(contract, { ...quotedJob, schemes: [] })).toBeNull();
  });

  it('is the same at one go and with pauses', () => {
    const job = withHardWall(quotedJob);
    const pricing = pricingVariation(contract, job);
    let step = pricing.next();
    while (step.done !== true) step = pricing.next();
    expect(step.value).toEqual(variationOf(contract, job));
  });
});
