import { describe, expect, it } from 'vitest';
import { madeWords } from '../../../ui/elements/ways/made-words.ts';

const said = (...lengths: readonly (number | null)[]): string =>
  madeWords(lengths.map((lengthMm) => ({ lengthMm })));

describe('what is said of a scheme just made', () => {
  it('is that the plan shows it only where its cables can be drawn', () => {
    expect(said(2000)).toBe(', and shown on the plan and in the price.');
    expect(said(null)).toMatch(/^, and shown in the price; its cables can be drawn once/);
    expect(said(2000, null)).toMatch(/in part on the plan; the rest of its cables/);
  });

  it('promises nothing of one that joins nothing, or is not worked out yet', () => {
    expect(said()).toBe(', and joins nothing yet.');
    expect(madeWords(null)).toBe('.');
  });
});
