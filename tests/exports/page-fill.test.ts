import type { Content } from 'pdfmake/interfaces.js';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { testGroupWords } from '#drawing/work/test-sheet-words.ts';
import { packPdf } from '#exports/pack/pack-pdf.ts';
import { papersOf } from '#exports/papers.ts';
import { planScenes } from '#exports/plan-files.ts';
import { fitParts } from '#exports/quotation/fit-parts.ts';
import { paperPdf } from '#exports/quotation/pdf-paper.ts';
import { headOfTable, ruledTable, subheading } from '#exports/quotation/pdf-parts.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { type PdfWord, readPdf } from './pdf-reader.ts';

const library = demoLibrary();
/** A4 with 18 mm around what is printed, in points. */
const TOP_PT = 51;
const FOOT_PT = 841.89 - 51;

const printed = (words: readonly PdfWord[]): readonly PdfWord[] => words.filter(({ yMin }) => yMin < FOOT_PT);

/** How much of the height of a page is taken by what is printed on it. */
const share = (words: readonly PdfWord[]): number =>
  (Math.max(...printed(words).map(({ yMax }) => yMax)) - TOP_PT) / (FOOT_PT - TOP_PT);

async function wordsOfPack(name: Parameters<typeof demoJob>[0], schemeId: string) {
  const job = demoJob(name);
  const papers = papersOf(job, library, { date: '2026-11-27', revision: 1, schemeId });
  if (papers === null) throw new Error(`no scheme ${schemeId}`);
  const { words } = await readPdf(await packPdf({ job, library, papers, moved: null }));
  return words.slice(0, -planScenes(papers).length);
}

const linesOf = (words: readonly PdfWord[]): readonly string[] => {
  const lines = new Map<number, string[]>();
  for (const { yMin, text } of printed(words).toSorted((a, b) => a.yMin - b.yMin || a.xMin - b.xMin)) {
    const at = [...lines.keys()].find((y) => Math.abs(y - yMin) < 3) ?? yMin;
    lines.set(at, [...(lines.get(at) ?? []), text]);
  }
  return [...lines.values()].map((line) => line.join(' '));
};

describe.each([
  ['saltglass-row', 'spurs-rcbo'],
  ['saltglass-row-quoting', 'spurs-rcbo'],
  ['saltglass-row-quoting', 'new-radial'],
  ['fernlow-close', 'ring-to-b3'],
  ['quarrel-court', 'heater-w2b'],
] as const)('the pages of the pack of %s, %s', async (name, schemeId) => {
  const pages = await wordsOfPack(name, schemeId);

  // Cards are never parted: one that has no room goes to the next page, whatever it leaves behind.
  it('are each more than a quarter full', () => {
    expect(pages.length).toBeGreaterThan(8);
    for (const [i, words] of pages.entries())
      expect(share(words), `page ${i + 1}: ${linesOf(words)[0]}`).toBeGreaterThan(1 / 4);
  });

  it('leave no group of tests behind without its first row', () => {
    const titles = Object.values(testGroupWords).map(({ title }) => title);
    const isTitle = (line: string): boolean =>
      titles.some((title) => line.startsWith(`${title}, `) && /, (dead|LIVE):/.test(line));
    const withTests = pages.map(linesOf).filter((lines) => lines.some(isTitle));
    expect(withTests.length).toBeGreaterThan(0);
    for (const lines of withTests) {
      const heads = lines.findLastIndex((line) => line.startsWith('Test Where Expected'));
      expect(heads, lines.join('\n')).toBeGreaterThan(lines.findLastIndex(isTitle));
      expect(lines.length, 'a row under the heads').toBeGreaterThan(heads + 1);
    }
  });
});

const pdfOf = async (parts: readonly (readonly Content[])[]) =>
  readPdf(
    await paperPdf({
      title: 'A paper',
      author: 'A firm',
      date: '2026-11-27',
      footer: 'A paper',
      content: await fitParts(parts),
    }),
  );

/** Paragraphs of a line each. */
const lines = (count: number): readonly Content[] =>
  Array.from({ length: count }, (_, i) => ({ text: `Line ${i + 1}`, style: 'paragraph' }));

describe('parts that are fitted to pages', () => {
  it('are set closer where a page is saved so, letter for letter as large', async () => {
    const [loose, close] = await Promise.all([pdfOf([lines(30)]), pdfOf([lines(45)])]);
    expect([loose.pages.length, close.pages.length]).toEqual([1, 1]);
    const height = ({ words }: typeof loose): number => {
      const word = words[0]?.find(({ text }) => text === 'Line');
      return (word?.yMax ?? 0) - (word?.yMin ?? 0);
    };
    expect(height(close)).toBeCloseTo(height(loose), 1);
  });

  it('stay as they are where no page is saved', async () => {
    const long = await pdfOf([lines(60)]);
    expect(long.pages).toHaveLength(2);
    const [first = [], second = []] =
      (await pdfOf([lines(20)])).words[0]?.filter(({ text }) => text === 'Line').map(({ yMin }) => [yMin]) ??
      [];
    const own = long.words[0]?.filter(({ text }) => text === 'Line').map(({ yMin }) => yMin) ?? [];
    expect((own[1] ?? 0) - (own[0] ?? 0)).toBeCloseTo(Number(second) - Number(first), 1);
  });

  it.each([31, 32, 33, 34, 35, 36, 37, 38])(
    'put a head of a table on the page on which the table begins, after %i lines',
    async (count) => {
      const rows = Array.from({ length: 40 }, (_, i) => [`Row ${i + 1}`]);
      const { pages } = await pdfOf([
        [
          ...lines(count),
          headOfTable([subheading('The head')]),
          ruledTable({ heads: ['What'], rows, widthsMm: [60] }),
        ],
      ]);
      const page = pages.find((text) => text.includes('The head')) ?? '';
      expect(page).toMatch(/\bRow 1\b/);
    },
  );
});
