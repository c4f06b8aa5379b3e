import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { warnOfDanger } from '#engine/warn-of-danger.ts';
import { dangerLetterPdf } from '#exports/danger-letter-pdf.ts';
import { dangerousJobs } from '#tests/engine/quotation/danger/dangerous-jobs.ts';
import { readPdf } from './pdf-reader.ts';

const library = demoLibrary();
const flat = (text: string): string => text.replaceAll(/[\s\u00a0]+/g, ' ');

describe('the letter on a dangerous condition, on paper', () => {
  it.each(Object.entries(dangerousJobs))(
    'has every word of it, and is the same twice: %s',
    async (_, job) => {
      const result = estimate(
        job,
        library,
        { date: '2026-11-27', revision: 1 },
        { schemeIds: [], depth: 'live' },
      );
      const letter = warnOfDanger(job, library, result);
      if (letter === null) throw new Error('no letter');
      const bytes = await dangerLetterPdf(letter);
      const pdf = await readPdf(bytes);
      const text = flat(pdf.pages.join(' '));
      expect(text).toContain('Dangerous condition');
      for (const { heading, found, harm, mustNot, toDo } of letter.dangers)
        for (const words of [heading, found, harm, ...mustNot, toDo]) expect(text).toContain(flat(words));
      for (const { label } of [...letter.done.lines, ...letter.receipt.lines])
        for (const word of label.split(' ')) expect(text).toContain(word);
      expect(text).toContain('27 November 2026');
      expect(text).not.toMatch(/\bsafe/i);
      expect(pdf.fonts.every(({ embedded, unicode }) => embedded && unicode)).toBe(true);
      expect(pdf.images).toBe(0);
      for (const word of pdf.words.flat()) expect(word.xMax, word.text).toBeLessThan(595.28 - 40);
      expect(Buffer.from(await dangerLetterPdf(letter)).equals(Buffer.from(bytes))).toBe(true);
    },
  );
});
