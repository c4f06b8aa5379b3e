import { beforeAll, describe, expect, it } from 'vitest';
import { type VariationPaperRequest, variationPaper } from '#engine/quotation/variation-paper.ts';
import { variationPdf } from '#exports/variation-pdf.ts';
import { tinyPng, tinyWebp } from '#tests/http/photos.ts';
import { offering, quoted } from '../engine/quotation/quoted.ts';
import { type ReadPdf, readPdf } from './pdf-reader.ts';

const plain = (text: string): string => text.replace(/\s+/g, ' ');
const textOf = ({ pages }: ReadPdf): string => plain(pages.join(' '));

const request: VariationPaperRequest = {
  paper: quoted(offering('saltglass-row', { schemes: ['spurs-rcbo'] })).paper,
  acceptance: { schemeId: 'spurs-rcbo', on: '2026-11-27' },
  variation: {
    number: 2,
    date: '2026-12-01',
    reason: 'The wall is concrete.\n\nIt has to be chased with another machine.',
    beforePence: 92_677,
    afterPence: 98_677,
    work: null,
    parts: [
      { words: 'Wall of the living room', pence: 6600 },
      { words: 'Lifting of boards', pence: -600 },
    ],
  },
  status: 'offered',
  decision: null,
};
/** Poppler counts the mask of a picture that has one as a picture of its own. */
const IMAGES_A_PHOTO = 2;
const png = { mediaType: 'image/png', content: tinyPng };

describe('the PDF of a variation', () => {
  let read: ReadPdf;
  beforeAll(async () => {
    read = await readPdf(await variationPdf(variationPaper(request), [png, png]));
  });

  it('says what is done otherwise between what was found and what it costs', async () => {
    const work = {
      before: ['Living room: 1.2 m of wall are cut.'],
      now: ['Living room: 1.2 m of concrete are cut', 'Dust sheets are laid.'],
    };
    const varied = (one: typeof work) =>
      variationPaper({ ...request, variation: { ...request.variation, work: one } });
    const text = textOf(await readPdf(await variationPdf(varied(work), [])));
    const places = [
      'The wall is concrete.',
      'As agreed before: Living room: 1.2 m of wall are cut.',
      'Now: Living room: 1.2 m of concrete are cut. Dust sheets are laid.',
      'What it does to the price',
      'Signature',
    ].map((words) => text.indexOf(words));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(varied({ before: [], now: work.now }).work?.paragraphs).toHaveLength(1);
    expect(varied({ before: [], now: [] }).work).toBeNull();
  });

  it('says what was found, why it costs what it does, the VAT in it, and what the work comes to', () => {
    const text = textOf(read);
    for (const words of [
      'Variation 2',
      'RW-0001, 1 December 2026',
      'Changes the work of quotation RW-0001, revision 1, 25 November 2026, accepted on 27 November 2026: branch cables.',
      'It waits for your answer.',
      'The wall is concrete.',
      'It has to be chased with another machine.',
      'Wall of the living room +£66.00',
      'Lifting of boards −£6.00',
      'This change, VAT included +£60.00',
      'The work as agreed before it £926.77',
      'The work with it, VAT included £986.77',
      'at 20 %: in this change +£10.00',
    ])
      expect(text).toContain(words);
    for (const line of [...request.paper.firm.lines, ...request.paper.place]) expect(text).toContain(line);
  });

  it('has room for the customer’s yes, and the cautions', () => {
    const text = textOf(read);
    for (const words of ['If you agree', 'Name', 'Signature', 'Date', 'a message will do'])
      expect(text).toContain(words);
    for (const caution of request.paper.cautions) expect(text.replace(/- /g, '-')).toContain(caution);
  });

  it('shows its photos small, after the line to sign on, in the look of the quotation', () => {
    expect(read.images).toBe(2 * IMAGES_A_PHOTO);
    const [first = ''] = read.pages;
    expect(first).toContain('Signature');
    expect(textOf(read).indexOf('Photo 2')).toBeGreaterThan(textOf(read).indexOf('Signature'));
    expect(read.info['Page size']).toContain('A4');
    expect(read.info.Tagged).toBe('yes');
    expect(read.fonts.every(({ embedded, unicode }) => embedded && unicode)).toBe(true);
  });

  it('says the answer that was recorded', async () => {
    const by = { variationId: 'v1', by: 'A. Customer', how: 'message', on: '2026-12-02' } as const;
    const agreed = variationPaper({
      ...request,
      status: 'agreed',
      decision: { kind: 'variation-agreed', ...by },
    });
    const text = textOf(await readPdf(await variationPdf(agreed, [])));
    for (const words of [
      'Your answer: yes',
      'In writing: e-mail or message.',
      'A. Customer',
      '2 December 2026',
    ])
      expect(text).toContain(words);
    expect(text).not.toContain('Photo');
    const refused = variationPaper({
      ...request,
      status: 'refused',
      decision: { kind: 'variation-refused', ...by },
    });
    expect([refused.acceptance.heading, refused.statusWords]).toEqual([
      'Your answer: no',
      'You have not agreed to it: the work stays as it was agreed before.',
    ]);
  });

  it('names a photo that cannot be printed, of a kind that it does not know or broken within', async () => {
    const broken = { mediaType: 'image/png', content: tinyPng.slice(0, 20) };
    for (const photo of [{ mediaType: 'image/webp', content: tinyWebp }, broken]) {
      const other = await readPdf(await variationPdf(variationPaper(request), [photo]));
      expect([other.images, textOf(other).includes('Photo 1 Not shown here: we keep it')]).toEqual([0, true]);
    }
  });

  it('is the same file twice', async () => {
    const [one, two] = await Promise.all(
      [0, 1].map(async () => Buffer.from(await variationPdf(variationPaper(request), [png]))),
    );
    expect(one?.equals(two ?? Buffer.alloc(0))).toBe(true);
  });

  it('goes on over pages where much was found', async () => {
    const reason = Array.from(
      { length: 80 },
      (_, i) => `Line ${i + 1} of what was found behind the plaster.`,
    );
    const parts = Array.from({ length: 60 }, (_, i) => ({ words: `Change ${i + 1}`, pence: 100 }));
    const long = { ...request.variation, reason: reason.join('\n'), parts, afterPence: 98_677 };
    const photos = Array.from({ length: 12 }, () => png);
    const much = await readPdf(await variationPdf(variationPaper({ ...request, variation: long }), photos));
    const text = textOf(much);
    for (const words of [...reason, 'Change 60 +£1.00', 'Photo 12', 'Signature'])
      expect(text).toContain(words);
    expect(much.images).toBe(12 * IMAGES_A_PHOTO);
    expect(much.pages.length).toBeGreaterThan(2);
  });
});
