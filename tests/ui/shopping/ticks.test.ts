import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ask, ShoppingEntry, ShoppingList } from '#engine/price/shopping/shopping-list.ts';
import type { TextStore } from '../../../ui/controllers/texts-by-job.ts';
import { KeptTicks } from '../../../ui/shopping/kept-ticks.ts';
import {
  hadKeys,
  markedFrom,
  markedText,
  nothingMarked,
  strays,
  strayWords,
  type Ticks,
  ticked,
  tickState,
} from '../../../ui/shopping/ticks.ts';

const singles = (count: number): Ask => ({
  kind: 'each',
  count,
  quantity: 1,
  words: String(count),
  code: '',
});
const coil = (quantity: number): Ask => ({
  kind: 'coil',
  count: 1,
  quantity,
  words: `1 coil of ${quantity} m`,
  code: '',
});

const entry = (item: string, ...asks: readonly Ask[]): ShoppingEntry => ({
  key: `counter/${item}`,
  place: 'counter',
  item,
  description: `The ${item}`,
  group: 'boxes',
  unit: 'each',
  asks,
  supplierWords: '',
  used: 1,
  leftOver: 0,
  pence: 100,
  cuts: [],
  nearMisses: [],
  causes: ['p1'],
});

const listOf = (...entries: readonly ShoppingEntry[]): ShoppingList => ({
  groups: [
    { key: 'counter//', place: 'counter', supplier: '', counter: '', title: 'Boxes', entries, pence: 0 },
  ],
  pence: 0,
  vat: 'excluded',
});

describe('a tick', () => {
  it('holds for a thing as it was asked for, and goes again', () => {
    const box = entry('box', singles(4));
    const ticks = ticked([], box, true);
    expect(tickState(box, [])).toEqual({ is: 'open' });
    expect(tickState(box, ticks)).toEqual({ is: 'had' });
    expect(ticked(ticks, box, false)).toEqual([]);
  });

  it.each([
    [[singles(4)], [singles(6)], 'Was 4, now 6: 2 more'],
    [[singles(6)], [singles(4)], 'Was 6, now 4: 2 too many'],
    [[coil(25)], [coil(50)], 'Was 1 coil of 25 m, now 1 coil of 50 m'],
    [[coil(25)], [coil(25), singles(2)], 'Was 1 coil of 25 m, now 1 coil of 25 m and 2'],
  ])('is off when the thing is asked for otherwise, and says so', (before, now, words) => {
    const ticks = ticked([], entry('box', ...before), true);
    const changed = entry('box', ...now);
    expect(tickState(changed, ticks)).toEqual({ is: 'changed', words });
    expect([...hadKeys(listOf(changed), ticks)]).toEqual([]);
    expect(tickState(changed, ticked(ticks, changed, true))).toEqual({ is: 'had' });
    expect(tickState(entry('box', ...before), ticks)).toEqual({ is: 'had' });
  });

  it('is told of when the list wants the thing no longer', () => {
    const ticks = ticked(ticked([], entry('box', singles(4)), true), entry('clip', singles(1)), true);
    const left = strays(listOf(entry('clip', singles(1))), ticks);
    expect(left.map(strayWords)).toEqual(['4: The box']);
  });
});

const anyEntry = fc
  .record({
    item: fc.constantFrom('a', 'b', 'c', 'd'),
    asks: fc.array(fc.oneof(fc.nat({ max: 9 }).map(singles), fc.constantFrom(25, 50).map(coil)), {
      minLength: 1,
      maxLength: 3,
    }),
  })
  .map(({ item, asks }) => entry(item, ...asks));
const anyTicks: fc.Arbitrary<Ticks> = fc
  .array(anyEntry)
  .map((entries) => entries.reduce<Ticks>((ticks, one) => ticked(ticks, one, true), []));

describe('ticks as a text', () => {
  it('come back as they were', () => {
    fc.assert(
      fc.property(anyTicks, (ticks) => {
        const marked = { ticks, notInStock: ticks.map(({ key }) => key) };
        expect(markedFrom(markedText(marked))).toEqual(marked);
        // As the versions before kept them.
        expect(markedFrom(JSON.stringify({ ticks }))).toEqual({ ticks, notInStock: [] });
      }),
    );
  });

  it('are none where the text is of something else, and never break', () => {
    for (const text of [null, '', '{', '[]', '{"ticks":1}', '{"ticks":[null,{"key":1},{"key":"a"}]}', 'null'])
      expect(markedFrom(text)).toEqual(nothingMarked);
    fc.assert(
      fc.property(fc.json(), (text) => {
        const { ticks, notInStock } = markedFrom(text);
        expect([ticks, notInStock].every(Array.isArray)).toBe(true);
      }),
    );
  });
});

function store(): TextStore & { readonly texts: Map<string, string> } {
  const texts = new Map<string, string>();
  return {
    texts,
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, text) => void texts.set(key, text),
  };
}

describe('ticks on a device', () => {
  const [box, clip] = [entry('box', singles(4)), entry('clip', singles(1))];

  it('outlast the page, job by job', () => {
    const device = store();
    const first = new KeptTicks('job-1', () => device);
    first.tick(box, true);
    expect(new KeptTicks('job-1', () => device).ticks).toEqual(first.ticks);
    expect(new KeptTicks('job-2', () => device).ticks).toEqual([]);
    expect([...device.texts.keys()].filter((key) => first.isOf(key))).toHaveLength(1);
  });

  it('hold for as long as the page where the browser keeps nothing', () => {
    const kept = new KeptTicks('job-1', () => {
      throw new DOMException('no', 'SecurityError');
    });
    kept.tick(box, true);
    expect(kept.ticks).toHaveLength(1);
  });

  it('go back step by step, whatever was done', () => {
    const step = fc.oneof(
      fc.record({ do: fc.constant('tick' as const), entry: anyEntry, is: fc.boolean() }),
      fc.record({ do: fc.constant('stock' as const), entry: anyEntry, is: fc.boolean() }),
      fc.record({ do: fc.constant('clear' as const) }),
      fc.record({ do: fc.constant('forget' as const), key: fc.constantFrom('counter/a', 'counter/b') }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (stepsTaken) => {
        const device = store();
        const kept = new KeptTicks('job-1', () => device);
        const before: (readonly [Ticks, readonly string[]])[] = [];
        for (const one of stepsTaken) {
          before.push([kept.ticks, [...kept.notInStock]]);
          if (one.do === 'tick') kept.tick(one.entry, one.is);
          else if (one.do === 'stock') kept.markNotInStock(one.entry, one.is);
          else if (one.do === 'clear') kept.clear();
          else kept.forget(one.key);
        }
        for (const marked of before.toReversed()) {
          expect(kept.undoLabel).not.toBeNull();
          kept.undo();
          expect([kept.ticks, [...kept.notInStock]]).toEqual(marked);
        }
        expect(kept.undoLabel).toBeNull();
      }),
    );
  });

  it('of another window are seen, and its way back is its own', () => {
    const device = store();
    const [here, there] = [new KeptTicks('job-1', () => device), new KeptTicks('job-1', () => device)];
    here.tick(box, true);
    there.lookAgain();
    there.tick(clip, true);
    here.lookAgain();
    expect(here.ticks.map(({ key }) => key)).toEqual(['counter/box', 'counter/clip']);
    expect(here.undoLabel).toBeNull();
  });
});
