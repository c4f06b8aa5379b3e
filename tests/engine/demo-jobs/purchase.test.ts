import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { estimateJson } from '#exports/estimate-json.ts';
import { demoEstimate, demoJob, demoNames, schemeOf } from './demo-estimates.ts';

const when = { date: '2026-11-25', revision: 1 };
const lineOf = ({ purchase }: SchemeEstimate, item: string) =>
  purchase.lines.find((line) => line.item === item);

describe.each(demoNames)('what is bought for %s', (name) => {
  const result = demoEstimate(name);

  it('is proved to be the cheapest in every scheme, and cuts every run in one', () => {
    for (const { purchase, runs } of result.schemes) {
      expect(purchase.proved).toBe(true);
      const cut = purchase.lines
        .flatMap(({ cuts }) => cuts)
        .flatMap(({ cuts }) => cuts.map(({ cause }) => cause));
      expect(runs.filter(({ id }) => !cut.includes(id)).map(({ id }) => id)).toEqual([]);
      expect(purchase.lines.flatMap(({ unserved }) => unserved)).toEqual([]);
    }
  });

  it('has a line for every line of the bill that is needed', () => {
    for (const { purchase, price } of result.schemes)
      expect(purchase.lines.map(({ item }) => item).toSorted()).toEqual(
        price.bill
          .filter(({ quantity }) => quantity > 0)
          .map(({ item }) => item)
          .toSorted(),
      );
  });

  it('stands in estimate.json', () => {
    const { schemes } = JSON.parse(estimateJson(result));
    expect(schemes.map(({ purchase }: SchemeEstimate) => purchase)).toEqual(
      result.schemes.map(({ purchase }) => purchase),
    );
  });
});

describe('what is bought for the first scheme of saltglass-row', () => {
  it('is 12 m of cable cut off, as counted by hand', () => {
    const cable = lineOf(schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo'), 'cable-flat-2.5-1.5');
    expect(cable).toMatchObject({ boughtQuantity: 12, pence: 12 * 112, packs: [{ offer: { kind: 'cut' } }] });
    expect(cable?.cuts.flatMap(({ cuts }) => cuts)).toHaveLength(4);
  });

  it('comes out of a length in the van that holds them all, and a list that sells nothing as long is told of', () => {
    const job = demoJob('saltglass-row');
    const held = { ...job, stock: [{ item: 'cable-flat-2.5-1.5', quantity: 14, lengthsM: [14] }] };
    const [scheme] = estimate(held, demoLibrary(), when, { schemeIds: ['spurs-rcbo'] }).schemes;
    expect(scheme && lineOf(scheme, 'cable-flat-2.5-1.5')).toMatchObject({ boughtQuantity: 0, pence: 0 });
    const library = demoLibrary();
    library.prices.items = library.prices.items.flatMap(({ packs: _, ...price }) => {
      if (price.item !== 'cable-flat-2.5-1.5') return [price];
      const short = { ...price, kind: 'coil' as const, packQuantity: 5 };
      return [short, short];
    });
    const [told] = estimate(job, library, when, { schemeIds: ['spurs-rcbo'] }).schemes;
    const messages = told?.findings
      .filter(({ rule }) => rule === 'PL1')
      .map(({ messageId, outcome }) => `${messageId} ${outcome}`);
    expect(messages?.toSorted()).toEqual(['tooShort decide', 'twice advice']);
  });
});
