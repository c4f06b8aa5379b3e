import { describe, expect, it } from 'vitest';
import { allRules } from '#engine/all-rules.ts';
import { vatClaim } from '#engine/price/vat-claim.ts';
import { assumedMessages } from '#engine/quotation/assumptions.ts';
import { kindOfPaper } from '#engine/quotation/kind-of-paper.ts';
import { toldMessages } from '#engine/quotation/observations.ts';
import { paperworkMessages } from '#engine/quotation/paperwork.ts';
import { dayWords, listed, pounds } from '#engine/quotation/said.ts';
import { sumHeads } from '#engine/quotation/sum-heads.ts';
import { vatSaid, vatWithin } from '#engine/quotation/vat-said.ts';
import type { Firm } from '#model/library.ts';
import { ownLibrary } from '../own-library.ts';
import { offering, quoted, textOf } from './quoted.ts';

describe('quotation or estimate', () => {
  it.each([
    ['fixed', ['yes'], 'quotation', 'fixed'],
    ['fixed', ['not-proven'], 'quotation', 'fixed'],
    ['hourly', ['yes'], 'estimate', 'hourly'],
    [null, ['yes', 'yes'], 'quotation', 'proven'],
    [null, ['yes', 'not-proven'], 'estimate', 'not-proven'],
    [null, ['no'], 'estimate', 'not-proven'],
    [null, [], 'estimate', 'nothing-offered'],
    ['fixed', [], 'estimate', 'nothing-offered'],
  ] as const)('charged %s with %j is a %s: %s', (charging, complies, kind, reason) => {
    expect(kindOfPaper({ charging }, complies)).toMatchObject({ kind, reason });
  });

  it('shows an estimate’s range and what its sum is made of, and neither of a quotation', () => {
    const proven = quoted(offering('saltglass-row', { schemes: ['spurs-rcbo'] })).paper;
    const open = quoted(offering('saltglass-row-quoting', { schemes: ['spurs-rcbo'] })).paper;
    expect([proven.title, proven.schemes[0]?.price.range, proven.schemes[0]?.price.parts]).toEqual([
      'Quotation',
      null,
      [],
    ]);
    expect(open.title).toBe('Estimate');
    expect(open.schemes[0]?.price.range?.highPence).toBeGreaterThan(open.schemes[0]?.price.grossPence ?? 0);
    expect(open.schemes[0]?.price.parts[0]?.words).toMatch(/^Work: about [\d.]+ hours at £45\.00 an hour$/);
  });

  it('puts the firm’s way of charging after the job’s', () => {
    const own = ownLibrary();
    const hourly = { ...own, terms: { ...own.terms, charging: 'hourly' } as const };
    const job = offering('saltglass-row', { schemes: ['spurs-rcbo'] });
    expect(quoted(job, hourly).paper.kind).toBe('estimate');
    expect(quoted({ ...job, terms: { ...job.terms, charging: 'fixed' } }, hourly).paper.kind).toBe(
      'quotation',
    );
  });
});

describe('the VAT under a price', () => {
  it('is said to be in it, to the penny, or not to be charged', () => {
    expect(vatWithin({ vatPercent: 20, vatPence: 16300 })).toBe('including £163.00 VAT');
    expect(vatWithin({ vatPercent: 0, vatPence: 0 })).toBe('no VAT is charged');
  });
});

describe('words for rules', () => {
  const known = new Set(
    allRules.flatMap(({ id, messages }) => Object.keys(messages).map((message) => `${id} ${message}`)),
  );

  it('are for messages that rules have', () => {
    const used = [
      ...assumedMessages,
      ...toldMessages,
      ...paperworkMessages.NT1.map((message) => `NT1 ${message}`),
      ...paperworkMessages.NT2.map((message) => `NT2 ${message}`),
    ];
    expect(used.filter((message) => !known.has(message))).toEqual([]);
    expect(used.length).toBeGreaterThan(40);
  });

  it.each(['NT1', 'NT2'] as const)('are there for every message of %s', (id) => {
    const messages = Object.keys(allRules.find((one) => one.id === id)?.messages ?? {}).sort();
    expect([...paperworkMessages[id]].sort()).toEqual(messages);
  });
});

describe('who is told of the work, by nation', () => {
  const told = (nation: 'england' | 'wales' | 'scotland' | 'northern-ireland', firm: Partial<Firm> = {}) => {
    const job = offering('fernlow-close', { schemes: ['fused-unit'] });
    const own = ownLibrary();
    return textOf(
      quoted({ ...job, site: { ...job.site, nation } }, { ...own, firm: { ...own.firm, ...firm } }).paper
        .papers,
    );
  };

  it.each([
    ['england', 'need not be told: in England'],
    ['wales', 'we take the stricter reading, so building control is told. That is in the price; whether'],
    ['scotland', 'needs no building warrant'],
    ['northern-ireland', 'is not notified'],
  ] as const)('%s', (nation, words) => {
    expect(told(nation)).toContain(words);
    expect(told(nation)).toContain('minor electrical installation works certificate');
  });

  it('names who does it once the firm has said', () => {
    expect(told('wales', { notifiedBy: 'self' })).toContain('through the scheme that we are registered with');
    expect(told('wales', { notifiedBy: 'third-party' })).toContain('third-party certifier');
    expect(told('wales', { notifiedBy: 'building-control' })).toContain('completion certificate');
  });
});

describe('VAT in a customer’s words', () => {
  const price = (
    vat: 'standard' | 'reduced' | 'zero' | 'not-registered',
    vatCondition: 'empty-two-years' | 'new-dwelling' | null,
  ) => ({
    vat,
    vatPercent: { standard: 20, reduced: 5, zero: 0, 'not-registered': 0 }[vat],
    vatClaim: vatClaim({ vat, vatCondition }),
    totals: {
      hours: 1,
      materialsPence: 0,
      labourPence: 10_000,
      otherPence: 0,
      contingencyPence: 0,
      netPence: 10_000,
      vatPence: 0,
      grossPence: 0,
    },
  });

  it('names the rate, the condition and the price without it', () => {
    expect(vatSaid(price('standard', null), true)).toBe(
      'VAT at 20 %, the usual rate for work on a home that is lived in.',
    );
    expect(vatSaid(price('reduced', 'empty-two-years'), true)).toMatch(
      /VAT at 5 %.*two years.*VAT is 20 % and the price £120\.00/,
    );
    expect(vatSaid(price('zero', 'new-dwelling'), true)).toMatch(/VAT at 0 %.*planning permission/);
    expect(vatSaid(price('reduced', 'new-dwelling'), true)).toContain('hangs on a condition not shown yet');
    expect(vatSaid(price('not-registered', null), true)).toBe('No VAT is charged on this work.');
    expect(vatSaid(price('standard', null), false)).toContain('not registered');
  });
});

describe('plain words', () => {
  it('write sums, days and lists', () => {
    expect([pounds(92204), pounds(-5), pounds(0)]).toEqual(['£922.04', '−£0.05', '£0.00']);
    expect([dayWords('2026-11-05'), dayWords('soon'), dayWords('2026-13-01')]).toEqual([
      '5 November 2026',
      'soon',
      '2026-13-01',
    ]);
    expect([listed([]), listed(['A']), listed(['A', 'B', 'C'])]).toEqual(['', 'A', 'A, B and C']);
  });
});

describe('a firm that is not registered for VAT', () => {
  const firm = ownLibrary();
  const library = {
    ...firm,
    firm: { ...firm.firm, vatNumber: '' },
    terms: { ...firm.terms, vat: 'not-registered' as const },
  };
  const offered = { schemes: ['spurs-rcbo', 'fused-beds'] };

  it('names no price with or without VAT: what is said of it is that none is charged', () => {
    for (const name of ['saltglass-row', 'saltglass-row-quoting'] as const) {
      const { paper } = quoted(offering(name, offered), library);
      expect(sumHeads(paper)).toEqual({
        net: null,
        gross: paper.kind === 'quotation' ? 'To pay' : 'Estimated',
        alone: 'Price',
        after: '',
      });
      expect(paper.compared[0]?.what).toBe('Price');
      expect(textOf(paper)).not.toMatch(/(with|without|plus) VAT|VAT (in|ex)cluded/i);
      expect(textOf(paper)).toContain('none is added now or later');
    }
  });

  it('is told apart from one that charges it at nought', () => {
    const job = offering('saltglass-row', offered);
    const zero = { ...job, terms: { ...job.terms, vat: 'zero' as const } };
    expect(sumHeads(quoted(zero).paper)).toMatchObject({ net: 'Price without VAT', alone: 'Price with VAT' });
  });
});
