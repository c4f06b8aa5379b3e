import { describe, expect, it } from 'vitest';
import { surge } from '#engine/rules/surge.ts';
import { factsOf, saidBy, schemeOf } from './facts-builder.ts';

const newBoard = schemeOf([], { remedies: [{ kind: 'new-board', at: 'b1' }] });
const answered = (value: string) => ({
  answers: [{ question: 'surge-protection', value, certainty: 'seen' as const }],
});

describe('surge protection', () => {
  it('[PR2] is advice for added points', () => {
    expect(saidBy(surge, factsOf())).toMatchObject([{ outcome: 'advice', messageId: 'offer' }]);
  });

  it('[PR2] is to be decided with a new board', () => {
    expect(saidBy(surge, factsOf({ scheme: newBoard }))).toMatchObject([
      { outcome: 'decide', origin: 'scheme' },
    ]);
  });

  it('[PR2] passes with a new board where it is wanted, since a device is counted with that', () => {
    expect(saidBy(surge, factsOf({ scheme: newBoard, job: answered('wanted') }))).toMatchObject([
      { outcome: 'passes', messageId: 'counted', origin: 'scheme' },
    ]);
  });

  it('[PR2] says that nothing is counted where it is wanted and the board stays', () => {
    expect(saidBy(surge, factsOf({ job: answered('wanted') }))).toMatchObject([
      { outcome: 'advice', messageId: 'wanted' },
    ]);
  });

  it('[PR2] passes once it is fitted or declined', () => {
    expect(saidBy(surge, factsOf({ scheme: newBoard, job: answered('declined') }))).toMatchObject([
      { outcome: 'passes', messageId: 'declined' },
    ]);
    expect(saidBy(surge, factsOf({ job: answered('fitted') }))).toMatchObject([{ messageId: 'fitted' }]);
  });
});
