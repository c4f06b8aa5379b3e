import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { backWords } from '#drawing/shopping/back-words.ts';
import { kitWords, staysWords } from '#drawing/shopping/kit-words.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { packAnswers } from '../../../ui/outcomes/pack-answers.ts';

const job = demoJob('saltglass-row');
const ask = {
  job: { ...job, packFor: [{ question: 'box/r6-kitchen', outcomes: ['deep', 'shallow'] }] },
  library: demoLibrary(),
  schemeId: 'spurs-rcbo',
  otherIds: [],
  turnedOut: {},
};

describe('what the screen is told of open outcomes', () => {
  it('says what an outcome takes, small things by their number, and what goes back by pack', () => {
    const { plan, back } = packAnswers()(ask);
    const kit = plan.questions.find(({ id }) => id === 'box/r6-kitchen')?.outcomes[1]?.kit ?? [];
    expect(kitWords(kit)).toEqual({
      more:
        '0.1 m of Green/yellow single 2.5 mm², box earth tails; 1 × Steel back box, twin, 35 mm deep; ' +
        '2 × Open grommet 20 mm; 1 × Fire putty pad for a twin back box; 3 kinds of fixings and the like',
      less: '',
    });
    expect(kitWords([])).toEqual({ more: '', less: '' });
    const goes = back.lines.filter((line) => line.back.length > 0);
    expect(goes.map(backWords)).toEqual([
      '1 × Steel back box, twin, 35 mm deep',
      '1 × Fire putty pad for a twin back box',
    ]);
    expect(back.lines.find(({ item }) => item === 'cable-flat-2.5-1.5')).toMatchObject({
      back: [],
      unit: 'm',
    });
    expect(back.lines.filter(({ item }) => item.startsWith('grommet')).map(staysWords)).toEqual([
      '8 × Open grommet 20 mm',
    ]);
  });

  it('keeps what was worked out while only the choice changes, and answers anew for other facts', () => {
    const answer = packAnswers();
    const first = answer(ask);
    expect(answer({ ...ask, job })).toMatchObject({ plan: { extraPence: 0 } });
    expect(answer(ask)).toEqual(first);
    const measured = job.points.map((point) =>
      point.id === 'r6-kitchen' ? { ...point, certainty: { boxDepthMm: 'measured' as const } } : point,
    );
    const { plan } = answer({ ...ask, job: { ...ask.job, points: measured } });
    expect(plan.questions.map(({ id }) => id)).toEqual(['box/r1-hallway']);
    expect(plan.extraPence).toBe(0);
  });

  it('throws for a scheme that the job does not have', () => {
    expect(() => packAnswers()({ ...ask, schemeId: 'none-such' })).toThrow('none-such');
  });
});
