import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Shape } from '#drawing/scene.ts';
import { type CutBar, cutListsOf, nearMissWords, plainMetres } from '#drawing/shopping/cut-lists.ts';
import { cutScene } from '#drawing/shopping/cut-scene.ts';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { saltglassShopped } from './sheet-of.ts';

describe.each(demoNames)('the cut lists of %s', (name) => {
  const { schemes } = demoEstimate(name);

  it('hold every length and every cut of the purchase once, numbered through', () => {
    for (const scheme of schemes) {
      const lists = cutListsOf(scheme);
      const lines = scheme.purchase.lines.filter(({ cuts }) => cuts.length > 0);
      expect(lists.map(({ item }) => item)).toEqual(lines.map(({ item }) => item));
      for (const [i, { bars }] of lists.entries()) {
        const line = lines[i];
        expect(bars.map(({ lengthMm, leftMm }) => [lengthMm, leftMm])).toEqual(
          line?.cuts.map(({ lengthMm, leftMm }) => [lengthMm, leftMm]),
        );
        const cuts = bars.flatMap((bar) => bar.cuts);
        expect(cuts.map(({ number }) => number)).toEqual(cuts.map((_, at) => at + 1));
        expect(cuts.map(({ cause }) => cause)).toEqual(
          line?.cuts.flatMap((from) => from.cuts.map(({ cause }) => cause)),
        );
      }
    }
  });

  it('name each run by its ends and nothing by an id', () => {
    for (const scheme of schemes)
      for (const { bars } of cutListsOf(scheme))
        for (const { label, cause } of bars.flatMap((bar) => bar.cuts)) {
          expect(label).not.toContain('/');
          expect(label).not.toBe(cause);
        }
  });
});

describe('the lengths of a cut list', () => {
  const held = saltglassShopped({
    job: (job) => ({ ...job, stock: [{ item: 'cable-flat-2.5-1.5', quantity: 6, lengthsM: [6] }] }),
  });
  const coils = saltglassShopped({
    library: (library) => {
      library.prices.items = library.prices.items.map((price) =>
        price.item === 'cable-flat-2.5-1.5'
          ? { ...price, kind: 'coil' as const, packQuantity: 6, perQuantity: 6, packs: [] }
          : price,
      );
      return library;
    },
  });
  const words = ({ scheme }: typeof held) =>
    cutListsOf(scheme)
      .filter(({ item }) => item === 'cable-flat-2.5-1.5')
      .flatMap(({ bars }) => bars.map((bar) => bar.words));

  it('say whether they come from the van, are coils, or are cut off', () => {
    expect(words(saltglassShopped())).toEqual(['12 m in one length']);
    expect(words(held)).toEqual(['From the van: 6 m', '7 m in one length']);
    expect(words(coils)).toEqual(['Coil of 6 m, 1 of 3', 'Coil of 6 m, 2 of 3', 'Coil of 6 m, 3 of 3']);
  });

  it('say of what nothing is long enough for, and of a smaller coil how short it is', () => {
    const short = saltglassShopped({
      library: (library) => {
        library.prices.items = library.prices.items.map((price) =>
          price.item === 'cable-flat-2.5-1.5'
            ? { ...price, kind: 'coil' as const, packQuantity: 3, perQuantity: 3, packs: [] }
            : price,
        );
        return library;
      },
    });
    const [cable] = cutListsOf(short.scheme);
    expect(cable?.without.map(({ label, lengthMm }) => [label, lengthMm])).toEqual([['R8–W3', 5280]]);
    expect(nearMissWords({ words: '25 m coil', shortMm: 800, wouldSavePence: 1120 })).toBe(
      'A 25 m coil would do if the pieces were 0.80 m shorter in all: it saves £11.20.',
    );
  });
});

const anyBar: fc.Arbitrary<CutBar> = fc
  .record({
    key: fc.constant('coil-1/1'),
    cutsMm: fc.array(fc.integer({ min: 10, max: 20_000 }), { minLength: 1, maxLength: 12 }),
    leftMm: fc.nat({ max: 30_000 }),
  })
  .map(({ key, cutsMm, leftMm }) => ({
    key,
    words: 'a length',
    isOfVan: false,
    lengthMm: cutsMm.reduce((sum, mm) => sum + mm, 0) + leftMm,
    cuts: cutsMm.map((lengthMm, at) => ({ cause: `n${at}`, number: at + 1, label: `R${at}–W1`, lengthMm })),
    leftMm,
  }));
const anyBars = fc.array(anyBar, { minLength: 1, maxLength: 5 });

const extent = (shapes: readonly Shape[]): readonly [number, number] => {
  const xs = shapes.flatMap((shape) => (shape.kind === 'line' ? shape.points.map(([x]) => x) : []));
  return [Math.min(...xs), Math.max(...xs)];
};

describe('the picture of a cut list', () => {
  const widthMm = 72;
  const layer = (bars: readonly CutBar[], name: string): readonly Shape[] =>
    cutScene(bars, widthMm).layers.find((one) => one.name === name)?.shapes ?? [];

  it('draws all lengths to one scale, and each cut as long as its share of them', () => {
    fc.assert(
      fc.property(anyBars, (bars) => {
        const outlines = layer(bars, 'lengths').map((shape) => extent([shape]));
        const longest = Math.max(...bars.map(({ lengthMm }) => lengthMm));
        const perMm = (widthMm - 0.8) / longest;
        for (const [i, { lengthMm }] of bars.entries()) {
          const [left = 0, right = 0] = outlines[i] ?? [];
          expect(right - left).toBeCloseTo(lengthMm * perMm, 6);
        }
        const cuts = layer(bars, 'cuts').map((shape) =>
          shape.kind === 'group' ? extent(shape.shapes.slice(0, 1)) : [0, 0],
        );
        const asked = bars.flatMap((bar) => bar.cuts);
        expect(cuts).toHaveLength(asked.length);
        for (const [i, { lengthMm }] of asked.entries()) {
          const [left = 0, right = 0] = cuts[i] ?? [];
          expect(right - left).toBeCloseTo(lengthMm * perMm, 6);
        }
      }),
    );
  });

  it('hatches what is left and nothing else, and writes no words wider than their cut', () => {
    fc.assert(
      fc.property(anyBars, (bars) => {
        for (const bar of bars) {
          const hatched = cutScene([bar], widthMm).layers.find(({ name }) => name === 'left')?.shapes ?? [];
          if (bar.leftMm === 0) expect(hatched).toEqual([]);
          const ownPerMm = (widthMm - 0.8) / bar.lengthMm;
          for (const shape of hatched) {
            const [left, right] = extent([shape]);
            expect(left).toBeGreaterThanOrEqual(widthMm - 0.4 - bar.leftMm * ownPerMm - 1e-6);
            expect(right).toBeLessThanOrEqual(widthMm - 0.4 + 1e-6);
          }
        }
        for (const shape of layer(bars, 'cuts')) {
          const [left, right] = shape.kind === 'group' ? extent(shape.shapes.slice(0, 1)) : [0, 0];
          const texts = shape.kind === 'group' ? shape.shapes.filter(({ kind }) => kind === 'text') : [];
          for (const text of texts)
            if (text.kind === 'text')
              // The narrow face takes less than half its height a letter.
              expect(text.text.length * text.sizeMm * 0.45).toBeLessThanOrEqual(right - left);
        }
      }),
    );
  });

  it('tells in full below its bar, on paper, each cut that has no room for its name, within the drawing and under no other', () => {
    fc.assert(
      fc.property(anyBars, (bars) => {
        const { layers, heightMm } = cutScene(bars, widthMm, true);
        const texts = (name: string) =>
          layers
            .filter((each) => each.name === name)
            .flatMap(({ shapes }) => shapes.flatMap((each) => (each.kind === 'group' ? each.shapes : [each])))
            .flatMap((each) => (each.kind === 'text' ? [each] : []));
        const inCuts = texts('cuts').map(({ text }) => text);
        const below = texts('below');
        for (const { number, label, lengthMm } of bars.flatMap(({ cuts }) => cuts)) {
          const full = `${number}  ${label}, ${Math.round(lengthMm) / 1000} m`;
          expect(inCuts.includes(`${number}  ${label}`) || below.some(({ text }) => text === full)).toBe(
            true,
          );
        }
        const tops = layers.find(({ name }) => name === 'lengths')?.shapes ?? [];
        const ys = tops.flatMap((shape) => (shape.kind === 'line' ? shape.points.map(([, y]) => y) : []));
        for (const { at } of below) {
          expect(at[1]).toBeLessThan(heightMm);
          // A line is under its bar, and over the next.
          const over = ys.filter((y) => y < at[1]);
          expect(over.length % 4).toBe(0);
        }
      }),
    );
  });

  it('tells nothing below a bar that has room, nor on screen', () => {
    const [cable] = cutListsOf(saltglassShopped().scheme);
    const bars = cable?.bars ?? [];
    const below = (wide: number, tells: boolean) =>
      cutScene(bars, wide, tells).layers.find(({ name }) => name === 'below')?.shapes ?? [];
    expect(below(174, false)).toEqual([]);
    expect(below(3000, true)).toEqual([]);
    expect(below(60, true).length).toBeGreaterThan(0);
  });

  it('tells each cut to who points at it, and holds with no length at all', () => {
    const [cable] = cutListsOf(saltglassShopped().scheme);
    const titles = layer(cable?.bars ?? [], 'cuts').map((shape) =>
      shape.kind === 'group' ? shape.title : '',
    );
    expect(titles[0]).toBe('1: R8–W3, 5.28 m, from: 12 m in one length');
    const { heightMm, layers } = cutScene([], widthMm);
    expect(heightMm).toBeGreaterThan(0);
    expect(layers.flatMap(({ shapes }) => shapes)).toEqual([]);
  });

  it('writes lengths without idle noughts', () => {
    expect([12_000, 450, 5280].map(plainMetres)).toEqual(['12 m', '0.45 m', '5.28 m']);
  });
});
