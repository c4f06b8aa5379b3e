import pdfmake from 'pdfmake';
import type { TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { tokens } from '#drawing/ink.ts';
import { fontFiles, pdfFonts } from './pdf-fonts.ts';
import { mm } from './pdf-parts.ts';
import { styles } from './pdf-styles.ts';

pdfmake.setFonts(pdfFonts);
// Nothing is fetched, and of this machine only the fonts are read.
pdfmake.setUrlAccessPolicy(() => false);
pdfmake.setLocalAccessPolicy((path: string) => fontFiles.has(path));

/** Around what is printed on a page. */
export const MARGIN_MM = 18;

/** What a document is besides its page and its look. */
export interface PageContent
  extends Omit<TDocumentDefinitions, 'pageSize' | 'pageMargins' | 'defaultStyle' | 'styles'> {
  /** So many pages are drawn of those that are laid out; absent: all. The writer's own, which its types do not tell of. */
  readonly maxPagesNumber?: number;
}

/** Lays a document out on A4, in the look of all papers. */
export const layOut = (document: PageContent) =>
  pdfmake.createPdf({
    pageSize: 'A4',
    pageMargins: [mm(MARGIN_MM), mm(MARGIN_MM), mm(MARGIN_MM), mm(MARGIN_MM)],
    defaultStyle: { font: 'Barlow', fontSize: 10, lineHeight: 1.15, color: tokens.ink },
    styles,
    ...document,
  });
