import { describe, expect, it } from 'vitest';
import { answerTo } from '#engine/rules/answer.ts';
import { checklist, type Question } from '#engine/rules/checklist.ts';
import { factsOf } from './facts-builder.ts';

const questions: readonly Question[] = checklist;

describe('the survey’s checklist', () => {
  it('names each question and each answer once', () => {
    const ids = questions.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { answers } of questions) {
      const values = answers.map(({ value }) => value);
      expect(new Set(values).size).toBe(values.length);
    }
  });

  it('lets every question be answered: by a choice, or by a number with a unit', () => {
    for (const { answers, unit } of questions) expect(answers.length >= 2 || unit !== null).toBe(true);
  });

  it('takes an answer that is not known for none', () => {
    const answered = (certainty: 'seen' | 'unknown') =>
      factsOf({ job: { answers: [{ question: 'asbestos', value: 'suspected', certainty }] } });
    expect(answerTo(answered('seen'), 'asbestos')).toBe('suspected');
    expect(answerTo(answered('unknown'), 'asbestos')).toBeNull();
    expect(answerTo(factsOf(), 'asbestos')).toBeNull();
  });
});
