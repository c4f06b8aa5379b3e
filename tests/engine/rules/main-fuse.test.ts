import { describe, expect, it } from 'vitest';
import { mainFuse } from '#engine/rules/main-fuse.ts';
import { factsOf, jobOf, saidBy } from './facts-builder.ts';

const said = (mainFuseA: number, demandA: number | null) =>
  saidBy(
    mainFuse,
    factsOf({
      job: {
        supply: { ...jobOf().supply, mainFuseA },
        answers: [{ question: 'maximum-demand', value: demandA, certainty: 'seen' }],
      },
    }),
  );

describe('main fuse and demand', () => {
  it('[SU2] passes at exactly the fuse and leaves more to be decided', () => {
    expect(said(80, 80)).toMatchObject([{ outcome: 'passes', actual: 80, limit: 80, unit: 'A' }]);
    expect(said(80, 81)).toMatchObject([{ outcome: 'decide', messageId: 'over' }]);
  });

  it('[SU2] advises to assess where nobody did', () => {
    expect(said(80, null)).toMatchObject([{ outcome: 'advice', messageId: 'notAssessed' }]);
  });

  it('[SU2] is not proven without the fuse, which does not gate', () => {
    expect(saidBy(mainFuse, factsOf())).toMatchObject([{ outcome: 'not-proven' }]);
    expect(mainFuse.couldFail).toBe(false);
  });
});
