import { describe, expect, it } from 'vitest';
import { countWords } from '#drawing/count-words.ts';
import { nextReference } from '../../ui/next-reference.ts';
import { whenWords } from '../../ui/when-words.ts';
import { unbroken } from '../../ui/written.ts';

describe('when something happened, in words', () => {
  const now = new Date(2026, 10, 25, 11, 48);
  type Moment = readonly [year: number, month: number, day: number, hour: number, minute: number];
  const at = ([year, month, day, hour, minute]: Moment): string =>
    whenWords(new Date(year, month, day, hour, minute).toISOString(), now);

  it.each([
    [[2026, 10, 25, 11, 48], 'just now'],
    [[2026, 10, 25, 11, 50], 'just now'],
    [[2026, 10, 25, 11, 47], 'a minute ago'],
    [[2026, 10, 25, 11, 36], '12 minutes ago'],
    [[2026, 10, 25, 10, 49], '59 minutes ago'],
    [[2026, 10, 25, 10, 48], 'today, 10:48'],
    [[2026, 10, 25, 0, 0], 'today, 00:00'],
    [[2026, 10, 24, 23, 59], 'yesterday, 23:59'],
    [[2026, 10, 24, 0, 1], 'yesterday, 00:01'],
    [[2026, 10, 23, 23, 59], '23 November'],
    [[2026, 0, 3, 8, 0], '3 January'],
    [[2025, 11, 31, 8, 0], '31 December 2025'],
  ] as const)('%j is "%s"', (parts, words) => {
    expect(at(parts)).toBe(words);
  });

  it('comes back as it is when it is no date', () => {
    expect(whenWords('some time', now)).toBe('some time');
  });
});

describe('how many checks come out so', () => {
  it.each([
    ['fails', 1, '1 fail'],
    ['fails', 7, '7 fails'],
    ['passes', 1, '1 pass'],
    ['passes', 93, '93 passes'],
    ['decide', 1, '1 to decide'],
    ['not-proven', 4, '4 not proven'],
  ] as const)('%s, %i: "%s"', (outcome, count, words) => {
    expect(countWords(outcome, count)).toBe(words);
  });
});

describe('the next reference', () => {
  it.each([
    [[], 'J-0001'],
    [['no number here', ''], 'J-0001'],
    [['RW-0001', 'RW-0001Q', 'RW-0002'], 'RW-0003'],
    [['J-0099'], 'J-0100'],
    [['J-9999'], 'J-10000'],
    [['A7', 'B3', 'B1'], 'B4'],
    [['2026/014', '2026/013'], '2026/015'],
  ])('after %j is %s', (references, next) => {
    expect(nextReference(references)).toBe(next);
  });
});

describe('words with figures in them', () => {
  it('part no figure from its unit at the end of a line', () => {
    expect(unbroken('kettle 3.0 kW draws 13.0 A, 5.2 m of plaster round 4 boxes')).toBe(
      'kettle 3.0\u00a0kW draws 13.0\u00a0A, 5.2\u00a0m of plaster round 4 boxes',
    );
    expect(unbroken('2 Amber Row, 3 metres')).toBe('2 Amber Row, 3 metres');
  });
});
