import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob, demoNames, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { newJob } from '../../../ui/edits/new-job.ts';
import { setBond, setOtherSources, setSupplyCertainty, setSupplyFact } from '../../../ui/edits/supply.ts';
import { surveyOf } from '../../../ui/elements/as-found/ask-words.ts';
import { endChoices, endValue } from '../../../ui/elements/as-found/end-choices.ts';
import { missingFacts, missingWords } from '../../../ui/elements/as-found/missing-facts.ts';
import type { FoundSection } from '../../../ui/elements/as-found/section-of-thing.ts';
import { edited } from '../edits/random-edits.ts';

const fresh = newJob({
  reference: 'N-1',
  title: 'New',
  terms: { labour: 'typical', vat: 'standard' },
});

/** What is missing of a job, by the part of the survey. */
const missingOf = (job: Job, section: FoundSection): readonly string[] =>
  missingFacts(job, surveyOf({ scheme: null, estimate: estimateOf(job) })).get(section) ?? [];

describe('what the survey does not know', () => {
  it('is all of the supply in a new job, and less with each fact', () => {
    const before = missingOf(fresh, 'supply');
    expect(before).toContain('Ze');
    const measured = edited(fresh, setSupplyFact('zeOhm', 0.24));
    expect(missingOf(measured, 'supply')).toEqual(before.filter((name) => name !== 'Ze'));
    const doubted = edited(measured, setSupplyCertainty('zeOhm', 'unknown'));
    expect(missingOf(doubted, 'supply')).toEqual(before);
  });

  it('names other sources, and the bonds that are left to be looked at', () => {
    const open = missingOf(fresh, 'supply');
    expect(open).toEqual(expect.arrayContaining(['bond to water', 'bond to gas', 'other sources']));
    const told = edited(fresh, setOtherSources([]), setBond('water', { seen: true, mm2: 10 }));
    expect(missingOf(told, 'supply')).toContain('bond to gas');
    expect(missingOf(told, 'supply')).not.toContain('other sources');
    expect(missingOf(edited(told, setBond('gas', 'no-service')), 'supply')).not.toContain('bond to gas');
  });

  it('is nothing of the supply, the circuits and the points of a house that was surveyed in full', () => {
    const job = demoJob('saltglass-row');
    const sections = ['supply', 'circuits', 'points', 'cables'] as const;
    expect(sections.flatMap((section) => missingOf(job, section))).toEqual([]);
  });

  it('is said in few words', () => {
    expect(missingWords([])).toBe('');
    expect(missingWords(['a', 'b', 'c'])).toBe('a, b, c');
    expect(missingWords(['a', 'b', 'c', 'd', 'e'])).toBe('a, b, 3 more');
  });
});

describe('the ends that a cable can be given', () => {
  it.each(demoNames)('hold every end that a leg of %s has, each once', (name) => {
    const job = demoJob(name);
    for (const leg of job.legs)
      for (const end of [leg.from, leg.to]) {
        const choices = endChoices(job, leg.circuit, end);
        expect(choices.find(({ value }) => value === endValue(end))?.end).toEqual(end);
        expect(new Set(choices.map(({ value }) => value)).size).toBe(choices.length);
      }
  });
});
