import { describe, expect, it } from 'vitest';
import { checklist, type Question } from '#engine/rules/checklist.ts';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf } from './demo-estimates.ts';

const whole = demoJob('saltglass-row-quoting');
const job: Job = { ...whole, answers: [], schemes: whole.schemes.slice(0, 1) };

/** What is not proven of the job's scheme, by rule and subject. */
const notProven = (of: Job): readonly string[] =>
  estimateOf(of).schemes.flatMap(({ findings }) =>
    findings
      .filter(({ outcome }) => outcome === 'not-proven')
      .map(({ rule, subject }) => `${rule} ${subject}`),
  );

const questions: readonly Question[] = checklist;
const told = questions.flatMap(({ id, answers, unit }) =>
  (unit === null ? answers.map(({ value }) => value) : [60]).map((value) => ({ question: id, value })),
);

describe('an answer as told, which nobody has seen', () => {
  const before = new Set(notProven(job));

  it.each(told)('to $question ($value) leaves nothing not proven that was not so before', (answer) => {
    const after = notProven({ ...job, answers: [{ ...answer, certainty: 'assumed' }] });
    expect(after.filter((one) => !before.has(one))).toEqual([]);
  });

  it('that a circuit has no RCD leaves nothing not proven that was not so before', () => {
    const boards = (rcds: 'unknown' | 'assumed'): Job => ({
      ...job,
      boards: job.boards.map((board) => ({
        ...board,
        rcds: [],
        certainty: { ...board.certainty, rcds },
      })),
    });
    const open = new Set(notProven(boards('unknown')));
    expect(notProven(boards('assumed')).filter((one) => !open.has(one))).toEqual([]);
  });
});
