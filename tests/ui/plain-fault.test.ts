import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { Fault } from '#model/fault.ts';
import type { Job } from '#model/job.ts';
import { readJobText } from '#model/read-job.ts';
import { readLibrary } from '#model/read-library.ts';
import { smallJob } from '#tests/model/small-job.ts';
import { plainFault } from '../../ui/elements/plain-fault.ts';

const small = (): Job => structuredClone(smallJob()) as unknown as Job;
const faultsOf = (job: unknown): readonly Fault[] => {
  const read = readJobText(JSON.stringify(job));
  return read.ok ? [] : read.faults;
};
const spoilt = (change: (job: Job) => unknown): readonly Fault[] => {
  const job = small();
  change(job);
  return faultsOf(job);
};

/** Words that only those know who know the file from inside. */
const INSIDE = /json|\bids?\b|\bkeys?\b|\bnull\b|[[\]{}]/i;

describe('a fault in plain words', () => {
  it('names the thing by its label and the entry by its words', () => {
    const [fault] = spoilt(({ points }) => Object.assign(points[1] ?? {}, { kind: 'sokcet' }));
    const { place, what } = plainFault(fault ?? expect.fail('no fault'));
    const { label } = small().points[1] ?? expect.fail('no point');
    expect(place).toContain(label);
    expect(place).toMatch(/kind$/);
    expect(what).toBe('this is none of the words that can stand here');
  });

  it('counts where a thing has no name', () => {
    const [fault] = spoilt(({ legs }) => Object.assign(legs[1] ?? {}, { to: undefined }));
    expect(plainFault(fault ?? expect.fail('no fault')).place).toBe('Leg number 2, to');
    const library = demoLibrary();
    const items = library.prices.items.map((row, i) => (i === 3 ? { ...row, pricePence: 'much' } : row));
    const read = readLibrary({ ...library, prices: { ...library.prices, items } });
    expect(read.ok ? [] : read.faults.map(plainFault)).toEqual([
      { place: 'prices, items, number 4, price', what: 'what stands here cannot be read' },
    ]);
  });

  it('never speaks the file’s own language', () => {
    const all = [
      ...spoilt((job) => Object.assign(job, { unheard: true, legs: 7, points: undefined })),
      ...spoilt(({ legs }) => Object.assign(legs[0] ?? {}, { to: 'nobody', routeMm: -3 })),
      ...spoilt(({ points }) => Object.assign(points[1] ?? {}, { id: points[0]?.id, place: 'there' })),
    ];
    expect(all.length).toBeGreaterThan(4);
    for (const fault of all) {
      const { place, what } = plainFault(fault);
      expect(`${place}: ${what}`).not.toMatch(INSIDE);
    }
    const cut = readJobText(JSON.stringify(smallJob()).slice(0, 200));
    expect(cut.ok ? [] : cut.faults.map(plainFault)).toEqual([
      { place: expect.stringMatching(/^Line 1, column/), what: 'the file breaks off or was damaged here' },
    ]);
  });
});
