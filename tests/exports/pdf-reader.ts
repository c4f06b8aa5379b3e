import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { findProgram, pdfReader } from '../../scripts/product/find-program.ts';

const run = promisify(execFile);

/** A word on a page and the box that it takes, in points from the top left corner. */
export interface PdfWord {
  readonly text: string;
  readonly xMin: number;
  readonly xMax: number;
  readonly yMin: number;
  readonly yMax: number;
}

/** A PDF as a reader that is not ours sees it. */
export interface ReadPdf {
  /** The text of each page. */
  readonly pages: readonly string[];
  readonly words: readonly (readonly PdfWord[])[];
  readonly info: Readonly<Record<string, string>>;
  /** Name, whether it is embedded, and whether it can be read back as Unicode. */
  readonly fonts: readonly { readonly name: string; readonly embedded: boolean; readonly unicode: boolean }[];
  /** How many pictures of dots are in it. */
  readonly images: number;
}

const unescaped = (text: string): string =>
  text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&amp;/g, '&');

function wordsOf(page: string): readonly PdfWord[] {
  const found = page.matchAll(
    /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)<\/word>/g,
  );
  return [...found].map(([, xMin, yMin, xMax, yMax, text]) => ({
    text: unescaped(text ?? ''),
    xMin: Number(xMin),
    yMin: Number(yMin),
    xMax: Number(xMax),
    yMax: Number(yMax),
  }));
}

/** Reads a PDF with Poppler: text, places of words, fonts, pictures. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const tool = findProgram(pdfReader);
  if (tool === null) throw new Error('Poppler is missing: npm run -s pretest says how to get it.');
  const folder = await mkdtemp(join(tmpdir(), 'pdf-'));
  const path = join(folder, 'paper.pdf');
  const beside = (name: string): string => join(dirname(tool), name);
  const said = async (command: string, ...words: string[]): Promise<string> =>
    (await run(command, words, { maxBuffer: 64e6 })).stdout;
  try {
    await writeFile(path, bytes);
    const [text, boxes, info, fonts, images] = await Promise.all([
      said(tool, '-layout', path, '-'),
      said(tool, '-bbox', path, '-'),
      said(beside('pdfinfo'), path),
      said(beside('pdffonts'), path),
      said(beside('pdfimages'), '-list', path),
    ]);
    return {
      pages: text.split('\f').slice(0, -1),
      words: boxes.split('<page ').slice(1).map(wordsOf),
      info: Object.fromEntries(
        info.split('\n').map((line) => [line.split(':')[0] ?? '', line.slice(line.indexOf(':') + 1).trim()]),
      ),
      fonts: fonts
        .split('\n')
        .slice(2)
        .filter((line) => line !== '')
        .map((line) => {
          const [embedded, , unicode] = line.trim().split(/\s+/).slice(-5);
          return {
            name: line.split(/\s+/)[0] ?? '',
            embedded: embedded === 'yes',
            unicode: unicode === 'yes',
          };
        }),
      images: images
        .split('\n')
        .slice(2)
        .filter((line) => line !== '').length,
    };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
