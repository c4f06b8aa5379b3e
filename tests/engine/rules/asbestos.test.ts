import { describe, expect, it } from 'vitest';
import { asbestos } from '#engine/rules/asbestos.ts';
import type { Site } from '#model/building.ts';
import { factsOf, jobOf, saidBy } from './facts-builder.ts';

const said = (site: Partial<Site>, value?: string) =>
  saidBy(
    asbestos,
    factsOf({
      job: {
        site: { ...jobOf().site, ...site },
        answers: value ? [{ question: 'asbestos', value, certainty: 'seen' }] : [],
      },
    }),
  );

describe('asbestos', () => {
  it('[SC3] is asked about in buildings from before 2000 and of unknown age', () => {
    expect(said({ builtBefore2000: true })).toMatchObject([{ outcome: 'advice', messageId: 'possible' }]);
    expect(said({})).toMatchObject([{ outcome: 'advice', messageId: 'ageUnknown' }]);
  });

  it('[SC3] stops the work where it is suspected', () => {
    expect(said({ builtBefore2000: true }, 'suspected')).toMatchObject([{ outcome: 'decide' }]);
  });

  it('[SC3] passes after a survey and is silent in newer buildings', () => {
    expect(said({ builtBefore2000: true }, 'surveyed-clear')).toMatchObject([{ outcome: 'passes' }]);
    expect(said({ builtBefore2000: false })).toEqual([]);
  });
});
