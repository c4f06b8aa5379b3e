import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { houseFor } from '#engine/schemes/house-for.ts';
import { gapOf, openGaps } from '#engine/schemes/open-gaps.ts';
import { priceSchemeWithRange } from '#engine/schemes/price-scheme-with-range.ts';
import { endsOfWorked } from '#engine/schemes/price-worked.ts';
import { workedAs } from '#engine/schemes/turns/price-turn.ts';
import { turnsOf } from '#engine/schemes/turns/turns-of.ts';
import { workScheme } from '#engine/schemes/work-scheme.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';

/** Without a contingency of the job's own, so that the survey sets it; each gap adds 1 %, however many there are. */
function bySurvey({ terms: { contingencyPercent: _, ...terms }, ...job }: Job): Job {
  return { ...job, terms };
}
const usual = demoLibrary();
const firm: Library = {
  ...usual,
  norms: { ...usual.norms, counts: { gapPercent: 1, mostGapsPercent: 100 } },
};

const schemes = demoNames.flatMap((name) => {
  const job = bySurvey(demoJob(name));
  const { house, library } = houseFor(job, firm);
  return job.schemes.map((scheme) => {
    const worked = workScheme(house, scheme);
    return { name: `${name} ${scheme.id}`, toPrice: { house, worked, library } };
  });
});

describe('what is set aside for all that is open', () => {
  it.each(schemes)(
    'has a part for every answer that would make $name dearer, and no other',
    ({ toPrice }) => {
      const { house, worked, library } = toPrice;
      const dearer = turnsOf(house, worked, library).filter((turn) => turn.dearer.length > 0);
      const { price } = priceSchemeWithRange(toPrice);
      const counted = openGaps(worked, []);
      expect([...price.surveyGaps].sort()).toEqual([...new Set([...counted, ...dearer.map(gapOf)])].sort());
      expect([price.contingencySource, price.contingencyPercent]).toEqual([
        'survey',
        price.surveyGaps.length,
      ]);
      expect(price.contingencyParts.map(({ gap }) => gap)).toEqual(price.surveyGaps);
    },
  );

  it.each(schemes)(
    'is not set aside again at the end of the range of $name where it has turned out so',
    ({ toPrice }) => {
      const { house, worked, library } = toPrice;
      const turns = turnsOf(house, worked, library);
      const dearest = workedAs(
        house,
        worked,
        turns.flatMap(({ dearer }) => dearer.slice(0, 1)),
      );
      const once = endsOfWorked(dearest, library, openGaps(dearest, []));
      const counted = endsOfWorked(worked, library, openGaps(worked, turns));
      const { range, price } = priceSchemeWithRange(toPrice);
      expect(range.highPence).toBe(Math.max(once.highPence, counted.highPence));
      expect(price.totals.grossPence).toBeLessThanOrEqual(range.highPence);
      expect(range.lowPence).toBeLessThanOrEqual(price.totals.grossPence);
    },
  );

  it('has cases with bonds, walls, RCBOs and asbestos open, and some with nothing of that', () => {
    const gaps = schemes.map(({ toPrice: { house, worked, library } }) =>
      turnsOf(house, worked, library).map(gapOf),
    );
    expect(new Set(gaps.flat())).toEqual(new Set(['bonds', 'walls', 'rcbos', 'asbestos']));
    expect(gaps.some((some) => some.length === 0)).toBe(true);
  });

  it('falls once somebody has looked', () => {
    const job = bySurvey(demoJob('saltglass-row-quoting'));
    const gapsOf = (of: Job) =>
      estimate(of, firm, { date: '2026-11-27', revision: 1 }).schemes[0]?.price.surveyGaps ?? [];
    const told: Job = {
      ...job,
      answers: [
        ...job.answers.filter(({ question }) => question !== 'asbestos'),
        { question: 'asbestos', value: 'none', certainty: 'seen' },
      ],
    };
    expect(gapsOf(job)).toContain('asbestos');
    expect(gapsOf(told)).toEqual(gapsOf(job).filter((gap) => gap !== 'asbestos'));
  });
});
