import { describe, expect, it } from 'vitest';
import { dryingWords, hasPlaster } from '#engine/labour/drying.ts';
import type { Terms } from '#model/job.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const job = demoJob('saltglass-row');

function priced(drying: Terms['drying']) {
  const terms = { ...job.terms, ...(drying === undefined ? {} : { drying }) };
  const [scheme] = estimateOf({ ...job, terms, schemes: job.schemes.slice(0, 1) }).schemes;
  if (scheme === undefined) throw new Error('no scheme');
  return scheme;
}

const returning = ({ labour }: ReturnType<typeof priced>) =>
  labour.find(({ task }) => task === 'return-visit');
const travel = ({ price }: ReturnType<typeof priced>) => price.other.find(({ sum }) => sum === 'travel');

describe('plaster that has to set', () => {
  it('may take a further visit where nobody has said: at the high end only', () => {
    expect(returning(priced(undefined))).toMatchObject({ quantity: 0, highQuantity: 1 });
    // 12.68 h at 8 h a day.
    expect(priced(undefined).price.visits).toMatchObject({ days: 2, returns: 0, count: 2 });
  });

  it('is waited for: no second visit at either end', () => {
    expect(returning(priced('wait'))).toBeUndefined();
    expect(priced('wait').range.highPence).toBeLessThan(priced(undefined).range.highPence);
    expect(priced('wait').totals).toEqual(priced(undefined).totals);
  });

  it('is come back for: the visit is priced, and its travel once more', () => {
    const [once, twice] = [priced('wait'), priced('second-visit')];
    expect(returning(twice)).toMatchObject({ quantity: 1, lowQuantity: 1, highQuantity: 1 });
    expect(once.price.visits.count).toBe(2);
    expect(twice.price.visits).toMatchObject({ days: 2, returns: 1, count: 3 });
    expect(travel(once)?.description).toBe('Travel, 2 × 30 min: 2 days of 8 h');
    expect(2 * (travel(twice)?.pence ?? 0)).toBe(3 * (travel(once)?.pence ?? 0));
    expect(travel(twice)?.description).toBe(
      'Travel, 3 × 30 min: 2 days of 8 h, and to come back for the plaster',
    );
  });

  it('is nothing to wait for where nothing is filled', () => {
    const dry = [{ task: 'fit-socket', quantity: 2 }];
    expect(hasPlaster(dry)).toBe(false);
    expect(dryingWords({ drying: 'wait' }, dry)).toBeNull();
  });

  it.each([
    ['wait', /that much longer/],
    ['second-visit', /priced, with its travel/],
  ] as const)('is told: %s', (drying, words) => {
    expect(dryingWords({ drying }, priced(drying).labour)).toMatch(words);
  });
});
