import JSZip from 'jszip';
import { imageKind } from '#archive/image-kind.ts';
import { readArchive } from '#archive/read-archive.ts';
import { writeArchive } from '#archive/write-archive.ts';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findList } from '#engine/price/list/find-columns.ts';
import { importPlan } from '#engine/price/list/import-plan.ts';
import { readingOf } from '#engine/price/list/list-reading.ts';
import { priceListCsv } from '#engine/price/list/own-list.ts';
import { priceListBook } from '#exports/price-list-book.ts';
import { readSheets } from '#imports/read-sheets.ts';
import { readJobText } from '#model/read-job.ts';
import { readLibraryText } from '#model/read-library.ts';
import { newJob } from '../../ui/edits/new-job.ts';
import { tinyPng, tinyWebp } from '../http/photos.ts';
import { demoText } from '../http/test-app.ts';
import type { Chance } from './chance.ts';
import { mutatedBytes } from './mutate-bytes.ts';
import { mutatedText, oddTexts } from './mutate-json.ts';
import { routeTarget } from './route-target.ts';

/** Takes an input. Whatever it throws is a breach; so is a text that it gives, in words. */
export interface FuzzCase {
  (): Promise<string | null> | string | null;
  /** The longest that it may take, ms of this process's own time; absent: as any. */
  readonly mostMs?: number;
}

/** Something that takes what anybody sends. */
export interface FuzzTarget {
  readonly name: string;
  /** How many of a thousand cases are its own. */
  readonly share: number;
  /** Makes the input of one case, which takes as long as it takes. */
  readonly make: (chance: Chance) => Promise<FuzzCase> | FuzzCase;
}

const library = demoLibrary();
const libraryText = JSON.stringify(library);
const emptyJob = JSON.stringify(
  newJob({ reference: 'F', title: 'Fuzz', terms: { labour: library.terms.labour, vat: library.terms.vat } }),
);
const demoNames = ['saltglass-row', 'saltglass-row-quoting', 'fernlow-close', 'quarrel-court'] as const;
const demoJobs = demoNames.map(demoText);

/** A job, mostly a small one: as much can go wrong in it, and many more can be tried. */
export const jobBase = (chance: Chance): string => (chance.isSo(0.94) ? emptyJob : chance.one(demoJobs));

const told = (read: { readonly ok: boolean; readonly faults?: readonly unknown[] }): string | null =>
  read.ok || (read.faults?.length ?? 0) > 0 ? null : 'refused without a fault';

const jobs: FuzzTarget = {
  name: 'job file',
  share: 400,
  make: (chance) => {
    const text = mutatedText(chance, jobBase(chance));
    return () => told(readJobText(text));
  },
};

const libraries: FuzzTarget = {
  name: 'library file',
  share: 10,
  make: (chance) => {
    const text = mutatedText(chance, libraryText);
    return () => told(readLibraryText(text));
  },
};

/** Reads a merchant's list to its end: its rows, its headings, what it would make of the price list. */
async function readList(bytes: Uint8Array): Promise<string | null> {
  const read = await readSheets(bytes);
  if (!read.ok) return read.fault.message === '' ? 'refused without words' : null;
  const list = findList(read.sheets, []);
  if (list === null) return null;
  const answers = { date: '2026-11-27', leftOut: new Set<number>() };
  const plan = importPlan(list.rows, library.prices, readingOf(list.map), answers);
  const isFaulty = plan.items.some(({ pricePence }) => !Number.isSafeInteger(pricePence) || pricePence < 0);
  return isFaulty ? 'a price that is none' : null;
}

const utf8 = new TextEncoder();
const csvLines = priceListCsv(library.prices).split('\n');

/** Some lines of a price list, with odd cells in them. */
function oddCsv(chance: Chance): Uint8Array {
  const [headings = '', ...rows] = csvLines;
  const lines = Array.from({ length: 1 + chance.below(12) }, () => {
    const cells = chance.one(rows).split(',');
    if (chance.isSo(0.6)) cells[chance.below(cells.length)] = chance.one(oddTexts);
    return cells.join(chance.one([',', ',', ',', ';', '\t']));
  });
  const text = [headings, ...lines].join(chance.one(['\n', '\r\n', '\r']));
  return chance.isSo(0.3) ? mutatedBytes(chance, utf8.encode(text)) : utf8.encode(text);
}

const lists: FuzzTarget = {
  name: 'price list, text',
  share: 270,
  make: (chance) => {
    const bytes = oddCsv(chance);
    return () => readList(bytes);
  },
};

const bookParts = [
  'xl/worksheets/sheet1.xml',
  'xl/workbook.xml',
  'xl/sharedStrings.xml',
  '[Content_Types].xml',
];

/** A small book with its inner files changed, its archive changed, or one that swells beyond all bounds. */
async function oddBook(chance: Chance, book: Uint8Array): Promise<Uint8Array> {
  if (chance.isSo(0.5)) return mutatedBytes(chance, book);
  const archive = await JSZip.loadAsync(book);
  const name = chance.one(bookParts);
  const inner = (await archive.file(name)?.async('uint8array')) ?? new Uint8Array();
  archive.file(name, chance.isSo(0.02) ? new Uint8Array(50_000_000) : mutatedBytes(chance, inner));
  return archive.generateAsync({ type: 'uint8array', compression: 'DEFLATE' });
}

const smallBook = priceListBook({ ...library.prices, items: library.prices.items.slice(0, 6) });

const books: FuzzTarget = {
  name: 'price list, workbook',
  share: 8,
  make: async (chance) => {
    const bytes = await oddBook(chance, await smallBook);
    return () => readList(bytes);
  },
};

const jpeg = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xda, 7, 7, 7, 0xff, 0xd9]);

const pictures: FuzzTarget = {
  name: 'picture',
  share: 250,
  make: (chance) => {
    const bytes = mutatedBytes(chance, chance.one([tinyPng, tinyWebp, jpeg]));
    return () => {
      const kind = imageKind(bytes);
      return kind === null || kind.startsWith('image/') ? null : `a kind of its own: ${kind}`;
    };
  },
};

const smallArchive = writeArchive(emptyJob, [tinyPng, tinyWebp], 'Fuzz');

const archives: FuzzTarget = {
  name: 'job with pictures',
  share: 22,
  make: async (chance) => {
    const bytes = mutatedBytes(chance, await smallArchive);
    return async () => {
      await readArchive(bytes);
      return null;
    };
  },
};

/** Everything that takes what anybody sends. */
export const fuzzTargets = (): readonly FuzzTarget[] => [
  jobs,
  libraries,
  lists,
  books,
  pictures,
  archives,
  routeTarget({ name: 'route', share: 25, bodies: [emptyJob, ...demoJobs], libraryText }),
];
