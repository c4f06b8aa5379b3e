import { beforeAll, describe, expect, it } from 'vitest';
import { quotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import { quotationOfJob } from '#exports/quotation-paper.ts';
import { quotationPdf } from '#exports/quotation-pdf.ts';
import type { Job } from '#model/job.ts';
import { ownLibrary } from '../engine/own-library.ts';
import { offering, quoted } from '../engine/quotation/quoted.ts';
import { type ReadPdf, readPdf } from './pdf-reader.ts';

const A4_PT = { width: 595.28, height: 841.89 };
/** 18 mm to the sides. */
const MARGIN_PT = 51;

async function pdfOf(job: Job): Promise<{ readonly read: ReadPdf; readonly bytes: Uint8Array }> {
  const { paper, result } = quoted(job);
  const bytes = await quotationPdf(paper, quotationDrawings(paper, result));
  return { bytes, read: await readPdf(bytes) };
}

const plain = (text: string): string => text.replace(/\s+/g, ' ');

/** Words that stand outside what is printed of a page. */
const outside = ({ words }: ReadPdf): readonly string[] =>
  words
    .flat()
    .flatMap(({ text, xMin, xMax, yMin, yMax }) =>
      xMin < MARGIN_PT - 1 || xMax > A4_PT.width - MARGIN_PT + 1 || yMin < 0 || yMax > A4_PT.height
        ? [text]
        : [],
    );

const three = offering('saltglass-row', { schemes: ['spurs-rcbo', 'fused-beds', 'ring-to-w2'] });

describe('the PDF of a quotation', () => {
  let made: Awaited<ReturnType<typeof pdfOf>>;
  beforeAll(async () => {
    made = await pdfOf(three);
  });

  it('is A4, tagged, titled, of the paper’s own day', () => {
    const { info } = made.read;
    expect(info['Page size']).toContain('A4');
    expect([info.Tagged, info.Title]).toEqual([
      'yes',
      'Quotation RW-0001: 3 Saltglass Row: three outlets and a boiler supply',
    ]);
    expect(info.Author).toContain('Tin Kettle');
    expect(info.CreationDate).toContain('2026');
  });

  it('embeds both faces so that all text can be read back, and has drawings as lines, not as dots', () => {
    const { fonts, images } = made.read;
    expect(fonts.map(({ name }) => name.replace(/^[A-Z]+\+/, '')).sort()).toEqual([
      'Barlow-Regular',
      'Barlow-SemiBold',
      'BarlowSemiCondensed-Regular',
      'BarlowSemiCondensed-SemiBold',
    ]);
    expect(fonts.every(({ embedded, unicode }) => embedded && unicode)).toBe(true);
    expect(images).toBe(0);
  });

  it('carries reference, revision, day and page on every page, and that it is a draft', () => {
    const { pages } = made.read;
    expect(pages.length).toBeGreaterThan(4);
    pages.forEach((page, i) => {
      expect(plain(page)).toContain(
        'Quotation RW-0001, revision 1, 25 November 2026 · Draft · Demonstration',
      );
      expect(plain(page)).toContain(`Page ${i + 1} of ${pages.length}`);
    });
  });

  it('tells on every page a paper that may go out and has not from the one that went out', async () => {
    const { job, library, result, paper } = quoted(three, ownLibrary());
    const working = await readPdf(await quotationOfJob({ job, library, estimate: result }));
    const { notIssued: _, ...issued } = paper;
    const gone = await readPdf(await quotationPdf(issued, quotationDrawings(paper, result)));
    for (const page of working.pages) expect(plain(page)).toContain(' · Not issued');
    for (const page of gone.pages) expect(plain(page)).not.toContain('issued: for reading');
    for (const page of gone.pages) expect(plain(page)).not.toContain('· Not issued');
  });

  it('has every word and every sum of the paper as text', () => {
    const { paper } = quoted(three);
    const text = plain(made.read.pages.join(' ')).replace(/- /g, '-');
    const words = new Set(made.read.words.flat().map(({ text: word }) => word));
    for (const sum of ['£977.99', '£1,133.70', '£1,028.71', '£163.00', '£814.99'])
      expect(text).toContain(sum);
    const lines = [
      paper.kindWords,
      ...paper.asked,
      ...paper.schemes.flatMap(({ how, time, felt }) => [
        ...how,
        ...time,
        ...felt.flatMap((one) => one.words),
      ]),
      ...paper.assumed.flatMap((one) => [one.words, one.otherwise]),
      ...paper.cautions,
      ...(paper.cancellation?.notice.paragraphs ?? []),
    ];
    const missing = lines.flatMap((line) => line.split(/\s+/)).filter((word) => !words.has(word));
    expect(missing).toEqual([]);
  });

  it('names the new points in the drawing', () => {
    const drawn = made.read.words.flat().filter(({ text }) => text === 'W4');
    expect(drawn.length).toBeGreaterThanOrEqual(3);
    expect(plain(made.read.pages.join(' '))).toContain('the floor is opened here');
  });

  it('keeps within the margins of its pages', () => {
    expect(outside(made.read)).toEqual([]);
  });

  it('is the same file twice', async () => {
    expect(Buffer.from((await pdfOf(three)).bytes).equals(Buffer.from(made.bytes))).toBe(true);
  });
});

/** How far down a page its words reach, but for the foot of the page, pt. */
const reach = (page: ReadPdf['words'][number]): number =>
  Math.max(0, ...page.map(({ yMax }) => yMax).filter((yMax) => yMax < A4_PT.height - MARGIN_PT));

describe('a page of a quotation', () => {
  it.each([
    ['saltglass-row', ['spurs-rcbo', 'fused-beds', 'ring-to-w2']],
    ['saltglass-row', ['spurs-rcbo', 'ring-to-w2']],
    ['saltglass-row', ['fused-beds']],
    ['fernlow-close', ['fused-unit', 'ring-to-b3', 'new-radial']],
    ['fernlow-close', ['new-radial']],
    ['saltglass-row-quoting', ['new-radial']],
  ] as const)(
    'is no more than half empty before the next, but where the notice begins anew: %s, %j',
    async (name, schemes) => {
      const job = offering(name, { schemes: [...schemes] });
      const { paper } = quoted(job);
      const { pages, words } = (await pdfOf(job)).read;
      const notice = paper.cancellation?.notice.heading ?? 'no notice';
      const short = words.flatMap((page, i) => {
        const isEnd =
          i === words.length - 1 ||
          plain(pages[i + 1] ?? '')
            .trim()
            .startsWith(notice);
        return !isEnd && reach(page) < A4_PT.height / 2
          ? [`page ${i + 1}: ${Math.round(reach(page))} pt`]
          : [];
      });
      expect(short).toEqual([]);
      // What the signs mean stands once, on the page of the first drawing.
      const holding = (words: string): readonly number[] =>
        pages.flatMap((page, i) =>
          plain(page)
            .split(words)
            .slice(1)
            .map(() => i),
        );
      expect(holding('new, by its name')).toEqual(holding('The drawing').slice(0, 1));
      // A table that goes on over the page has its head there again.
      expect(holding('Where you will notice it').length).toBe(paper.schemes.length);
      expect(holding('The options side by side').length).toBe(paper.compared.length > 0 ? 1 : 0);
    },
  );
});

/**
 * How many sentences of a list stand on each page that has any; a sentence is told by its first words, which no line breaks.
 * Those that other parts of the paper say as well are left out.
 */
function sentencesByPage(pages: readonly string[], list: readonly string[]): readonly number[] {
  const isOn = (page: string, words: string): boolean => plain(page).includes(words.slice(0, 40));
  const once = list.filter((words) => pages.filter((page) => isOn(page, words)).length === 1);
  expect(once.length).toBeGreaterThan(3);
  return pages.map((page) => once.filter((words) => isOn(page, words)).length).filter((count) => count > 0);
}

describe('a list that goes on over the page', () => {
  it.each([
    ['saltglass-row', ['spurs-rcbo', 'fused-beds', 'ring-to-w2']],
    ['fernlow-close', ['fused-unit', 'ring-to-b3', 'new-radial']],
    ['saltglass-row-quoting', ['new-radial']],
  ] as const)('leaves no sentence of it alone in %s', async (name, schemes) => {
    const job = offering(name, { schemes: [...schemes] });
    const { paper } = quoted(job);
    const { pages } = (await pdfOf(job)).read;
    const lists = [
      paper.included.map(({ words }) => words),
      paper.excluded.map(({ words }) => words),
      paper.cautions,
      paper.glossary.map(({ word, meaning }) => `${word}: ${meaning}`),
    ];
    const counts = lists.map((list) => sentencesByPage(pages, list));
    expect(Math.min(...counts.flat())).toBeGreaterThan(1);
  });
});

describe('a PDF with the trade’s signs', () => {
  it('has £, ², Ω, ×, dashes and accents as text', async () => {
    const signs = '£ ² Ω × – − ’ “ ½ ° ŵ ŷ é';
    const { read } = await pdfOf({ ...three, title: signs, quoting: { remarks: signs } });
    for (const sign of signs.split(' ')) expect(plain(read.pages.join(' '))).toContain(sign);
  });
});

describe('a PDF of much', () => {
  it('holds long names, sixty points and three schemes within its pages', async () => {
    const long =
      'Wohnungseigentümergemeinschaft-von-der-Unterhaching-und-Freunde-mit-sehr-langem-Namen-ohne-Lücke';
    const base = offering('saltglass-row', {
      schemes: ['spurs-rcbo', 'fused-beds', 'ring-to-w2'],
      remarks: long.repeat(3),
    });
    const [wanted] = base.points.filter(({ id }) => id === 'w1-living1');
    const more = Array.from({ length: 56 }, (_, i) => ({
      ...structuredClone(wanted),
      id: `more-${i}`,
      label: `W${i + 5}`,
      place: { wall: 'none', side: 'left', alongMm: 0, heightMm: 450 },
    })).map(({ place: _, ...point }) => point) as Job['points'];
    const joined = base.schemes.map((scheme) => ({
      ...scheme,
      connections: [
        ...scheme.connections,
        ...more.map(({ id }) => ({
          id: `c-${id}`,
          kind: 'fused-spur' as const,
          from: { point: 'r1-hallway' },
          unit: { fuseA: 13 },
          feeds: [{ from: 'unit', to: id }],
        })),
      ],
    }));
    const { read } = await pdfOf({
      ...base,
      schemes: joined,
      title: `${long} ${long}`,
      site: { ...base.site, customer: long, address: [long, long] },
      points: [...base.points, ...more],
    });
    expect(outside(read)).toEqual([]);
    expect(read.pages.length).toBeLessThan(60);
    const text = plain(read.pages.join(' '));
    // Nothing is lost at the foot of a page: every point is asked for, and named in how and where each option feeds it.
    for (const { label } of more) {
      expect(text).toContain(`${label}: double socket, white plastic, place to be agreed`);
      expect(text.split(`${label} is behind one fuse`).length).toBe(4);
      expect(
        text.split(`${label}: a hole cut into the wall`).length + text.split(`${label}: on a box`).length,
      ).toBe(5);
    }
  });

  it('refuses a drawing that would be read from this machine', async () => {
    const { paper, result } = quoted(three);
    const drawings = quotationDrawings(paper, result);
    const [first] = drawings.storeys;
    if (first === undefined) throw new Error('nothing is drawn');
    const bad = {
      ...drawings,
      storeys: [{ ...first, svg: first.svg.replace('</svg>', '<image href="/etc/hostname"/></svg>') }],
    };
    await expect(quotationPdf(paper, bad)).rejects.toThrow('picture from outside');
  });
});
