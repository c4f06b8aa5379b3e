import { describe, expect, it } from 'vitest';
import { meansOfEarthing } from '#engine/rules/means-of-earthing.ts';
import type { Supply } from '#model/installation.ts';
import { factsOf, jobOf, saidBy } from './facts-builder.ts';

const said = (supply: Supply, value?: string) =>
  saidBy(
    meansOfEarthing,
    factsOf({
      job: {
        supply,
        answers: value ? [{ question: 'means-of-earthing', value, certainty: 'seen' }] : [],
      },
    }),
  );
const { supply } = jobOf();

describe('means of earthing', () => {
  it('[ST1] shuts the gate where there is none', () => {
    expect(said(supply, 'absent')).toMatchObject([{ outcome: 'fails', stopGate: true, origin: 'found' }]);
  });

  it('[ST1] is not proven where it is unknown or assumed, and gates', () => {
    expect(said({ nominalV: 230, bonding: [], otherSources: [] })).toMatchObject([
      { outcome: 'not-proven', stopGate: true },
    ]);
    expect(said({ ...supply, certainty: { earthing: 'assumed' } })).toMatchObject([
      { outcome: 'not-proven', messageId: 'assumed', stopGate: true, actual: 'TN-C-S' },
    ]);
    expect(said({ ...supply, certainty: { earthing: 'unknown' } })).toMatchObject([
      { outcome: 'not-proven', messageId: 'unknown', stopGate: true },
    ]);
  });

  it('[ST1] says of an assumed earthing that it is assumed, not that it is unknown', () => {
    expect(meansOfEarthing.messages.assumed).toMatch(/assumed to be \{actual\}/);
  });

  it('[ST1] passes what was seen and notes an electrode', () => {
    expect(said(supply)).toMatchObject([{ outcome: 'passes', messageId: 'present', actual: 'TN-C-S' }]);
    expect(said({ ...supply, earthing: 'TT' })).toMatchObject([
      { outcome: 'passes', messageId: 'electrode' },
    ]);
  });
});
