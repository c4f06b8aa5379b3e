import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setStock, setStockLengths } from '../../../ui/edits/stock.ts';
import {
  setDrying,
  setLabourLevel,
  setMultiplier,
  setProfitOn,
  setTerm,
  setVat,
  setVatCondition,
} from '../../../ui/edits/terms.ts';
import type { JobEdit } from '../../../ui/job-events.ts';

const edited = (job: Job, ...edits: readonly JobEdit[]): Job =>
  edits.reduce((now, { change }) => produce(now, (draft) => change(draft)), job);

describe("the job's terms", () => {
  const job = demoJob('saltglass-row');

  it('holds a mark-up or a margin, never both', () => {
    const marked = edited(job, setTerm('markupPercent', 25));
    expect(marked.terms).toMatchObject({ markupPercent: 25 });
    const margined = edited(marked, setTerm('marginPercent', 30));
    expect(margined.terms.marginPercent).toBe(30);
    expect(margined.terms).not.toHaveProperty('markupPercent');
    expect(edited(margined, setTerm('markupPercent', 20)).terms).not.toHaveProperty('marginPercent');
  });

  it('asks for a deposit in percent or in pounds, never both', () => {
    const pounds = edited(job, setTerm('depositPercent', 30), setTerm('depositPence', 5000));
    expect(pounds.terms.depositPence).toBe(5000);
    expect(pounds.terms).not.toHaveProperty('depositPercent');
    expect(edited(pounds, setTerm('depositPercent', 30)).terms).not.toHaveProperty('depositPence');
  });

  it('says what the mark-up is put on, or leaves it to the firm', () => {
    const all = edited(job, setProfitOn('all'));
    expect(all.terms.profitOn).toBe('all');
    expect(edited(all, setProfitOn(null)).terms).not.toHaveProperty('profitOn');
  });

  it('chooses multipliers by name, in one order however they were ticked, and none by leaving them out', () => {
    const both = edited(job, setMultiplier('b', 'B', true), setMultiplier('a', 'A', true));
    expect(both.terms.multipliers).toEqual(['a', 'b']);
    expect(edited(both, setMultiplier('a', 'A', true)).terms.multipliers).toEqual(['a', 'b']);
    const none = edited(both, setMultiplier('a', 'A', false), setMultiplier('b', 'B', false));
    expect(none.terms).not.toHaveProperty('multipliers');
    expect(edited(job, setDrying('wait'), setDrying(null)).terms).not.toHaveProperty('drying');
    expect(readJob(JSON.parse(JSON.stringify(edited(both, setDrying('second-visit'))))).ok).toBe(true);
  });

  it('leaves a term to the firm by leaving it out of the file', () => {
    const left = edited(job, setTerm('travelMin', 55), setTerm('travelMin', null));
    expect(left.terms).not.toHaveProperty('travelMin');
  });

  it('claims a condition of the rate that is charged, and drops it with the rate', () => {
    const claimed = edited(job, setVat('reduced'), setVatCondition('empty-two-years'));
    expect(claimed.terms).toMatchObject({ vat: 'reduced', vatCondition: 'empty-two-years' });
    expect(edited(claimed, setVat('reduced')).terms.vatCondition).toBe('empty-two-years');
    expect(edited(claimed, setVat('standard')).terms).not.toHaveProperty('vatCondition');
    expect(edited(claimed, setVatCondition(null)).terms).not.toHaveProperty('vatCondition');
  });

  it('changes nothing else of the job', () => {
    const { terms, ...rest } = edited(job, setLabourLevel('high'), setVat('zero'), setTerm('validDays', 14));
    expect(terms).toMatchObject({ labour: 'high', vat: 'zero', validDays: 14 });
    const { terms: _before, ...restBefore } = job;
    expect(rest).toEqual(restBefore);
  });
});

describe("the van's stock", () => {
  const job = demoJob('saltglass-row');

  it('holds each item once, in the place that it had, and drops what is nought', () => {
    const held = edited(job, setStock('a', 'A', 2), setStock('b', 'B', 1), setStock('a', 'A', 3));
    expect(held.stock.filter(({ item }) => item === 'a')).toEqual([{ item: 'a', quantity: 3 }]);
    expect(held.stock.findIndex(({ item }) => item === 'a')).toBeLessThan(
      held.stock.findIndex(({ item }) => item === 'b'),
    );
    expect(edited(held, setStock('a', 'A', 0)).stock.some(({ item }) => item === 'a')).toBe(false);
  });

  it('holds every length of what is cut, so that no run is planned across two', () => {
    const item = 'cable-flat-2.5-1.5';
    const held = edited(job, setStockLengths(item, 'Cable', [3, 3, 2.2]));
    expect(held.stock).toEqual([{ item, quantity: 8.2, lengthsM: [3, 3, 2.2] }]);
    expect(edited(held, setStockLengths(item, 'Cable', [12])).stock).toEqual([{ item, quantity: 12 }]);
    expect(edited(held, setStockLengths(item, 'Cable', [])).stock).toEqual([]);
  });

  it('stays readable whatever is put in', () => {
    const quantity = fc.double({ min: 0, max: 1e6, noNaN: true });
    const edits = fc.array(fc.tuple(fc.constantFrom('a', 'b', 'c'), quantity), { maxLength: 12 });
    fc.assert(
      fc.property(edits, (list) => {
        const changed = edited(job, ...list.map(([item, count]) => setStock(item, item, count)));
        expect(readJob(JSON.parse(JSON.stringify(changed))).ok).toBe(true);
        expect(new Set(changed.stock.map(({ item }) => item)).size).toBe(changed.stock.length);
      }),
    );
  });
});
