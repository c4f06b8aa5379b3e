import { describe, expect, it } from 'vitest';
import { movedWords, shownPrice } from '../../../ui/elements/firm/import-words.ts';

describe('a price in words', () => {
  it.each([
    [320, 1, 'each', '£3.20 each'],
    [112, 1, 'm', '£1.12 a metre'],
    [742, 5, 'kg', '£7.42 for 5 kg'],
    [284, 100, 'each', '£2.84 for 100'],
    [500, 1, 'set', '£5.00 a set'],
  ])('%i for %d %s', (pricePence, perQuantity, unit, words) => {
    expect(shownPrice({ pricePence, perQuantity }, unit)).toBe(words);
  });
});

describe('how far it moved', () => {
  it.each([
    [null, 'new'],
    [1, 'as before'],
    [1.0001, 'hardly moved'],
    [1.04, '4 % up'],
    [0.975, '2.5 % down'],
    [0.375, '62.5 % down'],
    [2.5, '2.5 times as much'],
    [345.07, '345 times as much'],
    [0.0102, 'one 98th of it'],
    [0, 'nothing any more'],
  ])('%s', (ratio, words) => {
    expect(movedWords({ ratio })).toBe(words);
  });
});
