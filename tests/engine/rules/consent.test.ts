import { describe, expect, it } from 'vitest';
import { consent } from '#engine/rules/consent.ts';
import type { Site } from '#model/building.ts';
import { factsOf, jobOf, saidBy } from './facts-builder.ts';

const said = (site: Partial<Site>, value?: string) =>
  saidBy(
    consent,
    factsOf({
      job: {
        site: { ...jobOf().site, ...site },
        answers: value ? [{ question: 'consent', value, certainty: 'seen' }] : [],
      },
    }),
  );

describe('the owner’s consent', () => {
  it('[PR4] is asked of tenants and leaseholders, and of whom nobody asked', () => {
    expect(said({ tenure: 'tenant' })).toMatchObject([
      { outcome: 'advice', messageId: 'missing', actual: 'tenant' },
    ]);
    expect(said({})).toMatchObject([{ outcome: 'advice', messageId: 'unknown' }]);
  });

  it('[PR4] is silent for owners and passes once given', () => {
    expect(said({ tenure: 'owner' })).toEqual([]);
    expect(said({ tenure: 'leaseholder' }, 'given')).toMatchObject([{ outcome: 'passes' }]);
  });
});
