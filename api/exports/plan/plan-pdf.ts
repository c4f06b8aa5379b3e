import PDFDocument from 'pdfkit';
import type { Scene } from '#drawing/scene.ts';
import { MAKER } from '#engine/engine-version.ts';
import { addScenePage } from './scene-pdf.ts';

/** What a set of sheets says of itself as a file. */
export interface SheetSet {
  readonly title: string;
  /** Of the paper and not of the moment, ISO: equal sheets are equal files. */
  readonly date: string;
  /** In order, at least one. */
  readonly sheets: readonly Scene[];
}

/** Sheets as one PDF, each on a page of its own size, named in the outline. Equal sets give equal bytes. */
export function sheetsPdf({ title, date, sheets }: SheetSet): Promise<Uint8Array> {
  const pdf = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en-GB',
    displayTitle: true,
    info: { Title: title, Creator: MAKER, CreationDate: new Date(`${date}T00:00:00Z`) },
  });
  const written = new Promise<Uint8Array>((resolve, reject) => {
    const parts: Buffer[] = [];
    pdf.on('data', (part: Buffer) => parts.push(part));
    pdf.on('end', () => resolve(new Uint8Array(Buffer.concat(parts))));
    pdf.on('error', reject);
  });
  for (const sheet of sheets) {
    addScenePage(pdf, sheet);
    pdf.outline.addItem(sheet.title);
  }
  pdf.end();
  return written;
}
