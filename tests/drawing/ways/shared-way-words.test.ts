import { describe, expect, it } from 'vitest';
import { sharedWayWords } from '#drawing/ways/shared-way-words.ts';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const wordsOf = (job: Parameters<typeof demoEstimate>[0], schemeId: string, runId: string) => {
  const { worked } = schemeOf(demoEstimate(job), schemeId);
  const run = worked.runs.find(({ id }) => id === runId);
  if (run === undefined) throw new Error(`no run ${runId}`);
  return sharedWayWords(worked, run);
};

describe('what a cable shares, in words', () => {
  it('tells of a ring carried out and back what is opened once and what is cut twice', () => {
    expect(wordsOf('saltglass-row', 'ring-to-w2', 'c2-w2-ring/cable-1')).toEqual([
      'Beside W2 to joint in R8–R9: 450 mm of chase, one for each cable (one for both would leave joint in R8–R9 to W2 with 18.4 A, 20 A needed); the same 2 joists, a hole for each cable; 2 boards up once for both',
    ]);
  });

  it('tells two legs in one channel from legs in channels of their own', () => {
    expect(wordsOf('quarrel-court', 'onechannel', 'c4-w1-ring/cable-1')).toEqual([
      'Beside W1 to C7: 2.2 m of channel, one for both',
    ]);
    expect(wordsOf('quarrel-court', 'ring-apart', 'c3-w1-ring/cable-1')).toEqual([
      'Beside W1 to C7: 2.2 m of channel, one for each cable',
    ]);
  });

  it('tells nothing of a cable that goes its own way', () => {
    expect(wordsOf('saltglass-row', 'spurs-rcbo', 'c1-w1-spur/cable-1')).toEqual([]);
  });
});
