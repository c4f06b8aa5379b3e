import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import ExcelJS from 'exceljs';
import { findProgram, spreadsheet } from '../../scripts/product/find-program.ts';
import { openBook } from './spreadsheet.ts';

const run = promisify(execFile);

/**
 * Has LibreOffice Calc, a spreadsheet that is not ours, open files and save them as workbooks.
 *
 * @param separator the code of the sign that the spreadsheet takes for the end of a cell: 44 comma, 59 semicolon, 9 tab.
 */
export async function savedBySpreadsheet(
  files: Readonly<Record<string, Uint8Array | string>>,
  separator = 44,
) {
  const program = findProgram(spreadsheet);
  if (program === null)
    throw new Error('LibreOffice Calc is missing: npm run -s pretest says how to get it.');
  const folder = await mkdtemp(join(tmpdir(), 'saved-'));
  try {
    const paths = Object.keys(files).map((name) => join(folder, name));
    for (const [name, bytes] of Object.entries(files)) await writeFile(join(folder, name), bytes);
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`;
    const isText = paths.every((path) => path.endsWith('.csv'));
    // Cells are read as they would be when a person opens the file: UTF-8 (76), figures and formulas looked for.
    const reading = isText
      ? [`--infilter=Text - txt - csv (StarCalc):${separator},34,76,1,,0,false,true,false,false,false`]
      : [];
    const out = join(folder, 'out');
    await run(
      program,
      [
        profile,
        '--headless',
        ...reading,
        '--convert-to',
        'xlsx:Calc MS Excel 2007 XML',
        '--outdir',
        out,
        ...paths,
      ],
      {
        timeout: 110_000,
      },
    );
    const saved: Uint8Array[] = [];
    for (const name of Object.keys(files))
      saved.push(new Uint8Array(await readFile(join(out, name.replace(/\.\w+$/, '.xlsx')))));
    return saved;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Where a workbook has formulas or links. */
export const formulasIn = async (bytes: Uint8Array): Promise<readonly string[]> => {
  const found: string[] = [];
  (await openBook(bytes)).eachSheet((sheet) =>
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        if (cell.type === ExcelJS.ValueType.Formula || cell.type === ExcelJS.ValueType.Hyperlink)
          found.push(cell.address);
      }),
    ),
  );
  return found;
};

/** Texts that some spreadsheet takes for a formula, at the start of a cell or after what ends one elsewhere. */
export const nasty = [
  '=1+1',
  '+1+1',
  '-1+1',
  '@SUM(A1:A2)',
  '=HYPERLINK("https://nowhere.invalid/","tap")',
  '=cmd|x!A0',
  'a;=1+1;b',
  '"; =2+2',
  "'=3+3",
  '\t=4+4',
  'x\ty\n=5+5',
];
