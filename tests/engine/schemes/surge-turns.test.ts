import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { packForOutcomes } from '#engine/pack-for-outcomes.ts';
import { gapOf } from '#engine/schemes/open-gaps.ts';
import type { Job } from '#model/job.ts';
import type { Remedy } from '#model/scheme.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const row = demoJob('saltglass-row');
const first = row.schemes.slice(0, 1);

const newBoard: Remedy = { kind: 'new-board', at: row.boards[0]?.id ?? '' };

/** The demo job with a new board or with its old one, and with this said of surge protection; null: nobody has asked. */
function jobWith(value: string | null, board: 'new' | 'old' = 'new'): Job {
  const others = row.answers.filter(({ question }) => question !== 'surge-protection');
  return {
    ...row,
    answers:
      value === null ? others : [...others, { question: 'surge-protection', value, certainty: 'seen' }],
    schemes: board === 'old' ? first : first.map((scheme) => ({ ...scheme, remedies: [newBoard] })),
  };
}

function priced(job: Job) {
  const estimate = estimateOf(job);
  const [scheme] = estimate.schemes;
  if (scheme === undefined) throw new Error('The job has no scheme.');
  return scheme;
}

const surgeAsk = (scheme: ReturnType<typeof priced>) =>
  scheme.survey.find(({ id }) => id === 'surge-protection');

describe('surge protection with a new board', () => {
  const [asked, wanted, declined] = [jobWith(null), jobWith('wanted'), jobWith('declined')].map(priced);
  if (asked === undefined || wanted === undefined || declined === undefined)
    throw new Error('three are wanted');

  it('costs the device, its fitting and a larger board once it is wanted', () => {
    const more = (key: 'materialsPence' | 'labourPence' | 'grossPence') =>
      wanted.totals[key] - declined.totals[key];
    // £48.50 and the step of the board, each with the mark-up; 25 minutes at £45 an hour.
    expect(more('materialsPence')).toBeGreaterThan(4850);
    expect(more('labourPence')).toBe(1875);
    // From memory: £80 to £150 for a device put into a board that is fitted anyway.
    expect(more('grossPence')).toBeGreaterThanOrEqual(8000);
    expect(more('grossPence')).toBeLessThanOrEqual(15_000);
  });

  it('is in no price, and at the high end, where nobody has asked', () => {
    expect(asked.totals.grossPence).toBe(declined.totals.grossPence);
    expect(asked.range.lowPence).toBe(declined.range.lowPence);
    expect(asked.range.highPence).toBe(wanted.range.highPence);
    expect(asked.range.highPence).toBeGreaterThan(declined.range.highPence);
  });

  it('is a question of the kit where nobody has asked, to be packed for, and none once somebody has', () => {
    const plan = (job: Job) =>
      packForOutcomes(job, demoLibrary(), { schemeId: job.schemes[0]?.id ?? '', otherIds: [] })?.plan([]);
    const open = plan(jobWith(null));
    const question = open?.questions.find(({ kind }) => kind === 'surge');
    expect(question?.words).toContain('surge protection');
    const yes = question?.outcomes.find(({ id }) => id === 'wanted');
    expect(yes?.kit.map(({ item }) => item)).toContain('surge-device');
    for (const value of ['wanted', 'declined'])
      expect(plan(jobWith(value))?.questions.filter(({ kind }) => kind === 'surge')).toEqual([]);
    expect(plan(jobWith(null, 'old'))?.questions.filter(({ kind }) => kind === 'surge')).toEqual([]);
  });

  it('is asked of the survey with what hangs on it, and with nothing once somebody has', () => {
    expect(surgeAsk(asked)?.worth?.highPence).toBe(asked.range.highPence - declined.range.highPence);
    expect([surgeAsk(declined)?.worth, surgeAsk(wanted)?.worth]).toEqual([null, null]);
  });

  it('is nothing to set money aside for where the board stays, whatever is said', () => {
    const [stays, wants] = [priced(jobWith(null, 'old')), priced(jobWith('wanted', 'old'))];
    expect(wants.totals).toEqual(stays.totals);
    expect(wants.range).toEqual(stays.range);
    expect(gapOf({ question: 'surge-protection' })).toBe('surge');
  });
});
