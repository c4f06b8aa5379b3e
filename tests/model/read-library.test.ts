import { describe, expect, it } from 'vitest';
import { readLibrary, readLibraryText } from '#model/read-library.ts';
import { cut, put } from './change.ts';

function smallLibrary(): Record<string, unknown> {
  return {
    firm: { name: 'Invented Electrical', address: ['2 Made-up Road'], contact: '000' },
    prices: {
      source: 'invented for a test',
      date: '2025-03-31',
      vat: 'excluded',
      items: [
        {
          item: 'cable-2.5',
          unit: 'm',
          pricePence: 6000,
          perQuantity: 100,
          packQuantity: 100,
          charge: 'used',
        },
      ],
    },
    norms: {
      source: 'invented for a test',
      ratePencePerHour: 4000,
      tasks: [{ task: 'fit-box', unit: 'each', lowMin: 10, typicalMin: 15, highMin: 25 }],
      sums: [],
      waste: { cable: 10, containment: 10, fixings: 5, fillers: 5 },
    },
    limits: { maximumSpurs: 3 },
    terms: { labour: 'typical', markupPercent: 20, vat: 'standard' },
  };
}

describe('a library', () => {
  it('is read whole, from parsed JSON and from text', () => {
    expect(readLibrary(smallLibrary())).toEqual({ ok: true, library: smallLibrary() });
    expect(readLibraryText(JSON.stringify(smallLibrary()))).toEqual({ ok: true, library: smallLibrary() });
  });

  it('is refused with every fault at once, in its own order', () => {
    const input = smallLibrary();
    put(input, ['prices', 'items', 0, 'charge'], 'packed');
    put(input, ['prices', 'items', 0, 'pricePence'], 10.5);
    cut(input, ['norms', 'waste', 'cable']);
    put(input, ['limits', 'maxSpurs'], 2);
    const result = readLibrary(input);
    expect(result.ok ? [] : result.faults.map(({ path, code }) => `${path} ${code}`)).toEqual([
      'prices.items[0].pricePence not-whole',
      'prices.items[0].charge unknown-value',
      'norms.waste.cable missing',
      'limits.maxSpurs unknown-key',
    ]);
  });

  it('tells the disturbance of a task or leaves it out, and never one below nothing', () => {
    const told = put(smallLibrary(), ['norms', 'tasks', 0, 'mess'], 2.5);
    expect(readLibrary(told)).toEqual({ ok: true, library: told });
    for (const mess of [-0.1, '3', null]) {
      const result = readLibrary(put(smallLibrary(), ['norms', 'tasks', 0, 'mess'], mess));
      expect(result.ok ? [] : result.faults.map(({ path }) => path)).toEqual(['norms.tasks[0].mess']);
    }
  });

  it('tells further sizes of an item, and without them reads as it did', () => {
    const packs = [
      { kind: 'coil', quantity: 25, pricePence: 1720, origin: 'demo' },
      { kind: 'cut', quantity: 0.5, pricePence: 60, leastQuantity: 2, code: 'X-1' },
    ];
    const told = put(smallLibrary(), ['prices', 'items', 0, 'packs'], packs);
    put(told, ['prices', 'items', 0, 'kind'], 'drum');
    expect(readLibrary(told)).toEqual({ ok: true, library: told });
    const wrong: readonly [string, unknown][] = [
      ['kind', 'reel'],
      ['quantity', 0],
      ['pricePence', 10.5],
      ['leastQuantity', -1],
      ['price', 3],
    ];
    for (const [key, value] of wrong) {
      const changed = put(told, ['prices', 'items', 0, 'packs'], [{ ...packs[0], [key]: value }]);
      const result = readLibrary(changed);
      const at = `prices.items[0].packs[0].${key}`;
      expect(result.ok ? [] : result.faults.map(({ path }) => path)).toEqual([at]);
    }
  });

  it('whose text is no JSON has one fault by line and column', () => {
    const result = readLibraryText('{"firm": }');
    expect(result.ok ? [] : result.faults.map(({ path }) => path)).toEqual(['line 1, column 10']);
  });
});
