import { describe, expect, it } from 'vitest';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setAnswer } from '../../../ui/edits/answers.ts';
import { newJob } from '../../../ui/edits/new-job.ts';
import { setBond, setOtherSources, setSupplyCertainty, setSupplyFact } from '../../../ui/edits/supply.ts';
import { endChoices, endValue } from '../../../ui/elements/as-found/end-choices.ts';
import { missingFacts, missingWords } from '../../../ui/elements/as-found/missing-facts.ts';
import { edited } from '../edits/random-edits.ts';

const fresh = newJob({
  reference: 'N-1',
  title: 'New',
  terms: { labour: 'typical', vat: 'standard' },
});

describe('what the survey does not know', () => {
  it('is all of the supply in a new job, and less with each fact', () => {
    const before = missingFacts(fresh).supply;
    expect(before).toContain('Ze');
    const measured = edited(fresh, setSupplyFact('zeOhm', 0.24));
    expect(missingFacts(measured).supply).toEqual(before.filter((name) => name !== 'Ze'));
    const doubted = edited(measured, setSupplyCertainty('zeOhm', 'unknown'));
    expect(missingFacts(doubted).supply).toEqual(before);
  });

  it('names other sources, and the bonds that are left to be looked at', () => {
    const open = missingFacts(fresh).supply;
    expect(open).toEqual(expect.arrayContaining(['main bonds', 'other sources']));
    const told = edited(fresh, setOtherSources([]), setBond('water', { seen: true }));
    expect(missingFacts(told).supply).toContain('bond to gas');
    expect(missingFacts(told).supply).not.toContain('other sources');
    expect(missingFacts(edited(told, setBond('gas', 'no-service'))).supply).not.toContain('bond to gas');
  });

  it('is an answer less with each question answered', () => {
    const question = { id: 'isolation', words: '' };
    expect(missingFacts(fresh).questions).toEqual(['9 answers']);
    expect(missingFacts(edited(fresh, setAnswer(question, 'isolator'))).questions).toEqual(['8 answers']);
  });

  it('is nothing of the supply, the cables and the readings of a house that was surveyed in full', () => {
    const { supply, cables, readings, points } = missingFacts(demoJob('saltglass-row'));
    expect({ supply, cables, readings, points }).toEqual({
      supply: [],
      cables: [],
      readings: [],
      points: [],
    });
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
