import { describe, expect, it } from 'vitest';
import { hiddenServices } from '#engine/rules/hidden-services.ts';
import { runOf, saidBy, segmentOf } from './facts-builder.ts';
import { houseOf, uprightOf } from './house-builder.ts';

const chased = [runOf('r', [uprightOf(1000, [0, 450])])];

describe('hidden pipes and cables', () => {
  it('[RT13] advises to trace before a wall is cut, also where nobody answered', () => {
    expect(saidBy(hiddenServices, houseOf({ runs: chased }))).toMatchObject([
      { outcome: 'advice', messageId: 'untraced', subjectId: 'r' },
    ]);
  });

  it('[RT13] advises it before a joist or a stud is drilled', () => {
    const drilled = [{ joistsCrossed: 1 }, { studsCrossed: 1 }].map((crossed, index) =>
      runOf(`r${index}`, [segmentOf(crossed)]),
    );
    expect(saidBy(hiddenServices, houseOf({ runs: drilled })).map(({ subjectId }) => subjectId)).toEqual([
      'r0',
      'r1',
    ]);
  });

  it('[RT13] is silent once they were traced, and for cable on the surface', () => {
    const answers = [{ question: 'hidden-services', value: 'traced', certainty: 'seen' as const }];
    expect(saidBy(hiddenServices, houseOf({ runs: chased, job: { answers } }))).toEqual([]);
    expect(saidBy(hiddenServices, houseOf({ runs: [runOf('r', [segmentOf()])] }))).toEqual([]);
  });
});
