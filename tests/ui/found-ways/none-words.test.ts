import { describe, expect, it } from 'vitest';
import { noneWords } from '../../../ui/found-ways/none-words.ts';

const none = { schemeId: null, reason: 'RCD: It has none.', examined: 0, boundPence: null };

describe('why there is no way of a kind', () => {
  it('is what bars it where it is impossible, and nothing where there is one', () => {
    expect(noneWords({ ...none, why: 'impossible' })).toBe('RCD: It has none.');
    expect(noneWords({ ...none, schemeId: 'found/1', why: null, reason: null })).toBeNull();
  });

  it('is that it was given up, with what any other would cost at least', () => {
    expect(noneWords({ ...none, why: 'given-up', examined: 200, boundPence: 12_345 })).toBe(
      'Given up after 200 ways that failed; any other costs at least £123.45 to do. It may be possible. The first failed by: RCD: It has none.',
    );
  });

  it('is that not all of it was searched', () => {
    const reason = 'With 14 points wanted, no more than 4 are joined at one place.';
    expect(noneWords({ ...none, why: 'not-searched', reason })).toBe(
      `Not searched in full, so it may be possible. ${reason}`,
    );
  });
});
