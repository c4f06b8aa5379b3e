import { describe, expect, it } from 'vitest';
import {
  ERASED,
  eraseRefusal,
  forgetRefusal,
  noteWithoutNames,
  paperWithoutCustomer,
  withoutCustomer,
} from '#engine/quotation/erasure.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { demoJob, demoNames } from '../demo-jobs/demo-estimates.ts';
import { offering, quoted, textOf } from './quoted.ts';

const telling = 'The spare key hangs in the shed.';
const named: Job = {
  ...offering('saltglass-row', { schemes: ['spurs-rcbo'], remarks: telling, start: 'After their holiday' }),
  title: 'Sockets for Wilhelmina Quillfeather',
};
const job: Job = {
  ...named,
  site: {
    ...named.site,
    customer: 'Wilhelmina Quillfeather',
    address: ['3 Tidewater Row', 'Saltmarrow'],
    notes: telling,
  },
};
const words = ['Quillfeather', 'Tidewater', 'Saltmarrow', 'spare key', 'holiday'];

/** Every number of a plain value, in order. */
const numbersOf = (value: unknown): readonly number[] => {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : [];
};

describe('a job without its customer', () => {
  it('names them nowhere, and is priced as before', () => {
    const forgotten = withoutCustomer(job);
    for (const word of words) expect(JSON.stringify(forgotten)).not.toContain(word);
    const totals = (one: Job) => quoted(one).result.schemes.map((scheme) => scheme.totals);
    expect(totals(forgotten)).toEqual(totals(job));
  });

  it.each(demoNames)('can be read: %s', (name) => {
    expect(readJob(withoutCustomer(demoJob(name))).ok).toBe(true);
  });
});

describe('a paper without its customer', () => {
  const { paper } = quoted(job);
  const forgotten = paperWithoutCustomer(paper, job);

  it('names them nowhere, in no form and no sentence, and the firm as before', () => {
    expect(words.every((word) => textOf(paper).includes(word) || word === 'spare key')).toBe(true);
    for (const word of words) expect(textOf(forgotten)).not.toContain(word);
    expect(forgotten.firm).toEqual(paper.firm);
  });

  it('keeps every figure', () => {
    expect(numbersOf(forgotten)).toEqual(numbersOf(paper));
  });

  it('is not torn where a name is too short to be theirs alone', () => {
    const short = paperWithoutCustomer(paper, {
      ...job,
      site: { ...job.site, customer: 'A', address: [''] },
    });
    expect(short.schemes).toEqual(paper.schemes);
  });
});

describe('what may be erased', () => {
  it('is what came to nothing, and of what was agreed the customer', () => {
    expect((['declined', 'withdrawn', 'replaced'] as const).map(eraseRefusal)).toEqual([null, null, null]);
    expect(eraseRefusal('issued')).toContain('open');
    expect(eraseRefusal('accepted')).toContain('The customer’s data alone');
    expect(forgetRefusal([{ revision: 1, status: 'accepted' }])).toBeNull();
    expect(forgetRefusal([{ revision: 2, status: 'issued' }])).toContain('Revision 2 is open');
  });

  it('are the name and the words of a note, not its kind, its way and its day', () => {
    const note = {
      kind: 'variation-agreed',
      variationId: 'v1',
      by: 'A. B.',
      how: 'signed',
      on: '2026-11-26',
    } as const;
    expect(noteWithoutNames({ ...note, words: telling })).toEqual({ ...note, by: ERASED });
    expect(noteWithoutNames({ kind: 'issued' })).toEqual({ kind: 'issued' });
  });
});
