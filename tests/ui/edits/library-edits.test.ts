import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { demoMarks } from '#engine/demo-marks.ts';
import { knownTasks } from '#engine/labour/known-tasks.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import type { Library } from '#model/library.ts';
import { readLibraryText } from '#model/read-library.ts';
import {
  setFirmAddress,
  setFirmDetail,
  setFirmFinish,
  setFirmHeight,
  setFirmProfitOn,
  setFirmTerm,
  setLimit,
  setRegistered,
} from '../../../ui/edits/firm.ts';
import { libraryText, takeLibraryIn } from '../../../ui/edits/library-file.ts';
import {
  addMultiplier,
  ownNorms,
  removeMultiplier,
  setCount,
  setMultiplierOf,
  setNormMess,
  setNormMinutes,
  setOverhead,
  setRate,
  setRateBasis,
  setSold,
  setSum,
  setWaste,
} from '../../../ui/edits/norms.ts';
import { ownPrices, setPrice, setPriceDetail, setPriceListFact } from '../../../ui/edits/prices.ts';
import type { LibraryEdit } from '../../../ui/library-events.ts';

const edited = (library: Library, ...edits: readonly LibraryEdit[]): Library =>
  edits.reduce((now, { change }) => produce(now, (draft) => change(draft)), library);
const readable = (library: Library): boolean => readLibraryText(JSON.stringify(library)).ok;

const library = demoLibrary();
const [item] = knownItems;
const [task] = knownTasks;
if (item === undefined || task === undefined) throw new Error('no items or tasks');

describe("the firm's details", () => {
  it('keeps the address by lines and leaves out empty ones', () => {
    expect(edited(library, setFirmAddress(' 1 Here \n\n There\n')).firm.address).toEqual(['1 Here', 'There']);
  });

  it('drops a VAT number that is emptied, and keeps an empty name', () => {
    const firm = edited(library, setFirmDetail('vatNumber', ' '), setFirmDetail('name', '')).firm;
    expect(firm).not.toHaveProperty('vatNumber');
    expect(firm.name).toBe('');
  });

  it('has usual heights of its own by kind, and is silent again', () => {
    const own = edited(library, setFirmHeight('socket-twin', 300), setFirmHeight('dp-switch', 1350));
    expect(own.terms.heights).toEqual({ 'socket-twin': 300, 'dp-switch': 1350 });
    expect(readable(own)).toBe(true);
    expect(edited(own, setFirmHeight('socket-twin', null), setFirmHeight('dp-switch', null))).toEqual(
      library,
    );
  });

  it('has a usual finish of new plates, and is silent again', () => {
    const black = edited(library, setFirmFinish('black'));
    expect(black.terms.finish).toBe('black');
    expect(readable(black)).toBe(true);
    expect(edited(black, setFirmFinish(null))).toEqual(library);
  });

  it('keeps spacings of pins and screws as the reader takes them', () => {
    const own = edited(library, setCount('cappingPinMm', 250), setCount('channelScrewMm', 50));
    expect(own.norms.counts).toMatchObject({ cappingPinMm: 250, channelScrewMm: 50 });
    expect(readable(own)).toBe(true);
    expect(readable(edited(library, setCount('channelScrewMm', 49)))).toBe(false);
    const silent = edited(own, setCount('cappingPinMm', null), setCount('channelScrewMm', null));
    expect(silent.norms.counts).toEqual(library.norms.counts);
  });

  it('is not registered without a VAT number, and registered again when it says so', () => {
    const without = edited(library, setFirmDetail('vatNumber', ''));
    expect(without.terms.vat).toBe('not-registered');
    expect(edited(library, setRegistered(false))).toEqual(without);
    expect(edited(without, setRegistered(true)).terms.vat).toBe('standard');
    const reduced = { ...library, terms: { ...library.terms, vat: 'reduced' as const } };
    expect(edited(reduced, setRegistered(true))).toEqual(reduced);
  });

  it('holds a mark-up or a margin, never both', () => {
    const { terms } = edited(library, setFirmTerm('marginPercent', 30));
    expect(terms.marginPercent).toBe(30);
    expect(terms).not.toHaveProperty('markupPercent');
  });

  it('reckons with an hour at cost and an overhead, and stays readable', () => {
    const day = { pencePerDay: 4286, hoursPerDay: 8 };
    const atCost = edited(library, setRateBasis('cost'), setOverhead(day), setFirmProfitOn('all'));
    expect(atCost.norms).toMatchObject({ rateBasis: 'cost', overhead: day });
    expect(readable(atCost)).toBe(true);
    expect(edited(atCost, setOverhead(null)).norms).not.toHaveProperty('overhead');
    expect(edited(atCost, setFirmProfitOn(null)).terms).not.toHaveProperty('profitOn');
  });

  it('copies the usual multipliers before one of them is changed, which is the firm’s own from then on', () => {
    expect(library.norms).not.toHaveProperty('multipliers');
    const changed = edited(library, setMultiplierOf('alone', { factor: 1.4 }));
    const [alone, other] = ['alone', 'empty-house'].map((id) =>
      changed.norms.multipliers?.find((one) => one.id === id),
    );
    expect(alone?.factor).toBe(1.4);
    expect(alone).not.toHaveProperty('origin');
    expect(other?.origin).toBe('demo');
    const own = edited(changed, addMultiplier('mine'), removeMultiplier('alone'), ownNorms());
    expect(own.norms.multipliers?.map(({ id }) => id)).toEqual([
      'empty-house',
      'fragile-finishes',
      'repeated-points',
      'mine',
    ]);
    expect(own.norms.multipliers?.some(({ origin }) => origin === 'demo')).toBe(false);
    expect(readable(own)).toBe(true);
  });

  it('leaves a length or count to the usual one by leaving it out', () => {
    const own = edited(library, setCount('slackMm', 500), setCount('sleeveMm', 100));
    expect(own.norms.counts).toEqual({ slackMm: 500, sleeveMm: 100 });
    expect(readable(own)).toBe(true);
    const left = edited(own, setCount('slackMm', null), setCount('sleeveMm', null));
    expect(left.norms).not.toHaveProperty('counts');
  });

  it('buys every size again by leaving them out', () => {
    const own = edited(library, setSold('boardWays', [6, 12]), setSold('leverWays', [3, 5]));
    expect(own.norms.sold).toEqual({ boardWays: [6, 12], leverWays: [3, 5] });
    expect(readable(own)).toBe(true);
    expect(readable(edited(library, setSold('leverWays', [])))).toBe(false);
    const left = edited(own, setSold('boardWays', null), setSold('leverWays', null));
    expect(left.norms).not.toHaveProperty('sold');
  });

  it('leaves a limit to the rule by leaving it out', () => {
    const { limits } = edited(library, setLimit('maximumSpurs', 3), setLimit('maximumSpurs', null));
    expect(limits).not.toHaveProperty('maximumSpurs');
  });
});

describe('the price list', () => {
  it('takes an item off and puts it back with a price', () => {
    const off = edited(library, setPrice(item, null));
    expect(off.prices.items.some((price) => price.item === item.id)).toBe(false);
    const on = edited(off, setPrice(item, 1234));
    expect(on.prices.items.find((price) => price.item === item.id)).toMatchObject({
      pricePence: 1234,
      perQuantity: 1,
      unit: item.unit,
    });
  });

  it('is the firm’s own line by line as prices are set, or all at once, and never by its name', () => {
    const left = ({ prices }: Library): number =>
      prices.items.filter(({ origin }) => origin === 'demo').length;
    const all = left(library);
    expect(all).toBe(library.prices.items.length);
    expect(left(edited(library, setPriceListFact({ source: 'My merchant' })))).toBe(all);
    expect(left(edited(library, setPriceDetail(item, { packQuantity: 3 })))).toBe(all);
    expect(left(edited(library, setPrice(item, 1)))).toBe(all - 1);
    const taken = edited(library, ownPrices(), ownNorms());
    expect(library.prices.items.some(({ packs }) => packs?.some(({ origin }) => origin === 'demo'))).toBe(
      true,
    );
    expect(taken.prices.items.flatMap(({ packs }) => packs ?? []).filter(({ origin }) => origin)).toEqual([]);
    expect(demoMarks({ ...taken, firm: { name: '', address: [], contact: '' } })).toEqual({
      firm: false,
      prices: false,
      norms: false,
    });
  });

  it('sells in any quantity when the pack is emptied', () => {
    const { items } = edited(library, setPriceDetail(item, { packQuantity: null })).prices;
    expect(items.find((price) => price.item === item.id)).not.toHaveProperty('packQuantity');
  });
});

describe('the norms', () => {
  it('are the firm’s own as they are set', () => {
    const set = edited(
      library,
      setRate(5100),
      setSum('parking', 100),
      setNormMinutes(task, 'highMin', 500),
    ).norms;
    expect(set).not.toHaveProperty('rateOrigin');
    expect(set.sums.find(({ sum }) => sum === 'parking')?.origin).toBeUndefined();
    expect(set.tasks.filter(({ origin }) => origin !== 'demo').map((row) => row.task)).toEqual([task.id]);
  });

  it('stays in order whichever of the three is set, and keeps the one that was', () => {
    const which = fc.constantFrom('lowMin', 'typicalMin', 'highMin');
    fc.assert(
      fc.property(fc.array(fc.tuple(which, fc.nat(500)), { minLength: 1, maxLength: 8 }), (sets) => {
        const changed = edited(library, ...sets.map(([key, min]) => setNormMinutes(task, key, min)));
        const norm = changed.norms.tasks.find((row) => row.task === task.id);
        const last = sets.at(-1);
        expect(norm?.[last?.[0] ?? 'lowMin']).toBe(last?.[1]);
        expect(norm?.lowMin).toBeLessThanOrEqual(norm?.typicalMin ?? -1);
        expect(norm?.typicalMin).toBeLessThanOrEqual(norm?.highMin ?? -1);
      }),
    );
  });
});

describe('the disturbance of a task', () => {
  const messOf = ({ norms }: Library, id: string): number | undefined =>
    norms.tasks.find((row) => row.task === id)?.mess;

  it('is set and left out, and leaves whose the minutes are as it was', () => {
    const set = edited(library, setNormMess(task, 7.5));
    expect(messOf(set, task.id)).toBe(7.5);
    expect(set.norms.tasks.find((row) => row.task === task.id)?.origin).toBe('demo');
    const emptied = edited(set, setNormMess(task, null));
    expect(emptied.norms.tasks.find((row) => row.task === task.id)).not.toHaveProperty('mess');
  });

  it('stays when minutes are set, and goes with the norm', () => {
    const minutes = edited(library, setNormMess(task, 7), setNormMinutes(task, 'lowMin', 1));
    expect(messOf(minutes, task.id)).toBe(7);
    const off = edited(minutes, setNormMinutes(task, 'lowMin', null));
    expect(edited(off, setNormMess(task, 3))).toEqual(off);
  });
});

describe('any edits of the library', () => {
  const known = fc.constantFrom(...knownItems.slice(0, 6));
  const edits = fc.oneof(
    fc.tuple(known, fc.option(fc.nat(1e6))).map(([one, pence]) => setPrice(one, pence)),
    fc
      .tuple(known, fc.integer({ min: 1, max: 100 }))
      .map(([one, count]) => setPriceDetail(one, { packQuantity: count })),
    fc.string().map((source) => setPriceListFact({ source })),
    fc.string().map((text) => setFirmAddress(text)),
    fc.nat(20_000).map(setRate),
    fc.nat(50_000).map((pence) => setSum('parking', pence)),
    fc.integer({ min: 0, max: 100 }).map((percent) => setWaste('cable', percent)),
    fc
      .tuple(fc.constantFrom(...knownTasks.slice(0, 5)), fc.option(fc.nat(600)))
      .map(([one, min]) => setNormMinutes(one, 'typicalMin', min)),
    fc
      .tuple(
        fc.constantFrom(...knownTasks.slice(0, 5)),
        fc.option(fc.double({ min: 0, max: 1000, noNaN: true })),
      )
      .map(([one, points]) => setNormMess(one, points)),
  );

  it('leave a library that the reader takes', () => {
    fc.assert(
      fc.property(fc.array(edits, { maxLength: 10 }), (list) => {
        expect(readable(edited(library, ...list))).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the library as a file', () => {
  it('comes back from its own text as it was', () => {
    const read = readLibraryText(libraryText(library));
    expect(read.ok && read.library).toEqual(library);
  });

  it('takes the place of all that was there when it is taken in', () => {
    const other = edited(
      library,
      setFirmDetail('name', 'Other'),
      setLimit('maximumSpurs', 3),
      setCount('boardEndMm', 900),
      setPrice(item, null),
    );
    expect(edited(library, takeLibraryIn(other, 'other.json'))).toEqual(other);
    expect(edited(other, takeLibraryIn(library, 'own.json'))).toEqual(library);
  });
});
