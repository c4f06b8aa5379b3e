import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Answer, AnswerDrafts } from '../../../ui/quotations/answer-drafts.ts';

function drafts() {
  const texts = new Map<string, string>();
  const store = () => ({
    getItem: (key: string) => texts.get(key) ?? null,
    setItem: (key: string, text: string) => void texts.set(key, text),
  });
  return { texts, open: () => new AnswerDrafts(store) };
}

const answer: Answer = {
  by: 'A. Customer',
  how: 'signed',
  on: '2026-11-26',
  schemeId: 'one',
  earlyStart: null,
};

const answers: fc.Arbitrary<Answer> = fc.record({
  by: fc.string(),
  how: fc.constantFrom('signed', 'message', 'in-person', 'telephone'),
  on: fc.string(),
  schemeId: fc.option(fc.string(), { nil: null }),
  earlyStart: fc.option(fc.boolean(), { nil: null }),
});

describe('an answer that is being typed', () => {
  it('is there again for whoever opens the page anew, by job and by what it answers', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.constantFrom('a', 'b'), fc.string(), answers)), (steps) => {
        const { open } = drafts();
        const wanted = new Map<string, Answer>();
        for (const [jobId, name, one] of steps) {
          open().keep(jobId, name, one);
          wanted.set(JSON.stringify([jobId, name]), one);
        }
        for (const [key, one] of wanted) {
          const [jobId, name] = JSON.parse(key) as [string, string];
          expect(open().of(jobId, name)).toEqual(one);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is gone once it is recorded or dropped, and the others stay', () => {
    const { open } = drafts();
    open().keep('job', 'q1/accepted', answer);
    open().keep('job', 'q2/accepted', { ...answer, by: 'B' });
    open().keep('job', 'q1/accepted', null);
    expect(open().of('job', 'q1/accepted')).toBeNull();
    expect(open().of('job', 'q2/accepted')?.by).toBe('B');
    open().clear('job');
    expect(open().of('job', 'q2/accepted')).toBeNull();
  });

  it('is none where the device keeps nothing, or something else under the name', () => {
    const refusing = new AnswerDrafts(() => {
      throw new Error('not allowed');
    });
    refusing.keep('job', 'q1', answer);
    expect(refusing.of('job', 'q1')).toBeNull();
    const { texts, open } = drafts();
    for (const text of ['', 'null', '[1]', '{"q1":5}', '{"q1":{"by":"A","how":"guessed","on":""}}']) {
      texts.set('answers/job', text);
      expect(open().of('job', 'q1')).toBeNull();
    }
  });
});
