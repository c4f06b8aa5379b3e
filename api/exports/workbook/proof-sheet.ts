import type { Worksheet } from 'exceljs';
import { circuitPicture } from '#drawing/proof/circuit-picture.ts';
import { limitWords, scenarioWords } from '#drawing/proof/proof-words.ts';
import { shapeWords } from '#drawing/proof/shape-words.ts';
import { temperatureWords, testLimitWords } from '#drawing/proof/test-words.ts';
import type { CircuitProof } from '#engine/proof/circuit-proof.ts';
import { type CellContent, writeCell } from './cell-value.ts';
import { addDataBars, BAR_COLUMN, narrowBarColumns, writeBar } from './proof-bars.ts';
import { comparedRows, expectedRows, legRows, type ProofRow, pointRows, scenarioRows } from './proof-rows.ts';
import { type FormatName, restyle } from './sheet-style.ts';
import { addSheet, fitHeight } from './table-sheet.ts';
import { sheetNames, type WorkbookContext } from './workbook-context.ts';

const widths: readonly number[] = [22, 18, 11, 12, 12, 11, 11, 11, 18];
/** The text columns together, for sentences. */
const SENTENCE_CHARS = widths.reduce((sum, width) => sum + width, 0);

/** A table of the sheet: its headers, each with how its figures are written; text where nothing is said. */
interface Table {
  readonly heading: string;
  readonly headers: readonly (readonly [header: string, format?: FormatName])[];
  readonly barHeader: string | null;
}

const legTable: Table = {
  heading: 'Cables',
  headers: [
    ['From'],
    ['To'],
    ['Cable'],
    ['Length', 'metres'],
    ['Known by'],
    ['Current', 'amps'],
    ['Iz', 'amps'],
    ['Share of Iz', 'wholePercent'],
    ['Note'],
  ],
  barHeader: 'Share of Iz; the red line is Iz',
};

const pointTable: Table = {
  heading: 'Points',
  headers: [
    ['Point'],
    ['State'],
    ['Volt drop', 'volts'],
    ['R1 + R2, 20 °C', 'ohms'],
    ['R1 + R2, 70 °C', 'ohms'],
    ['Zs, 20 °C', 'ohms'],
    ['Zs, 70 °C', 'ohms'],
    ['Zs limit', 'ohms'],
    ['Note'],
  ],
  barHeader: 'Volt drop; the red line is the limit',
};

const expectedTable: Table = {
  heading: 'What a tester should read',
  headers: [
    ['At'],
    [''],
    ['Step 2', 'ohms'],
    ['Step 3', 'ohms'],
    ['R1 + R2', 'ohms'],
    ['Zs read', 'ohms'],
    ['Zs reckoned', 'ohms'],
  ],
  barHeader: null,
};

const comparedTable = (when: string): Table => ({
  heading: `Expected against measured, ${when}; the band is ours: 0.05 Ω or 5 %`,
  headers: [
    ['At'],
    ['What'],
    ['Expected', 'ohms'],
    ['up to', 'ohms'],
    ['Band ±', 'ohms'],
    ['Measured', 'ohms'],
    [''],
    [''],
    ['Note'],
  ],
  barHeader: 'Measured; the red line is what is expected',
});

const scenarioTable: Table = {
  heading: 'The same circuit under other loads',
  headers: [
    ['Loads'],
    ['Most loaded'],
    ['Furthest'],
    ['Volt drop', 'volts'],
    [''],
    ['Current', 'amps'],
    [''],
    ['Share of Iz', 'wholePercent'],
  ],
  barHeader: null,
};

/** Writes on from row to row. */
interface Pen {
  readonly sheet: Worksheet;
  row: number;
  bars: number;
}

function sentence(pen: Pen, text: string): void {
  pen.sheet.mergeCells(pen.row, 1, pen.row, widths.length);
  writeCell(pen.sheet.getCell(pen.row, 1), text, 'note');
  restyle(pen.sheet.getCell(pen.row, 1), { alignment: { vertical: 'top', wrapText: true } });
  fitHeight(pen.sheet, pen.row, [{ text, widthChars: SENTENCE_CHARS }]);
  pen.row++;
}

function heading(pen: Pen, text: string): void {
  pen.row++;
  writeCell(pen.sheet.getCell(pen.row, 1), text, 'heading');
  pen.sheet.getRow(pen.row).height = 20;
  pen.row++;
}

/** Writes a table; gives its first and last row of figures. */
function writeTable(
  pen: Pen,
  table: Table,
  rows: readonly (readonly CellContent[])[],
): readonly [number, number] {
  heading(pen, table.heading);
  table.headers.forEach(([header, format], i) => {
    writeCell(pen.sheet.getCell(pen.row, i + 1), header, format === undefined ? 'header' : 'number-header');
  });
  if (table.barHeader !== null) writeCell(pen.sheet.getCell(pen.row, BAR_COLUMN), table.barHeader, 'note');
  fitHeight(
    pen.sheet,
    pen.row,
    table.headers.map(([text], i) => ({ text, widthChars: widths[i] ?? 11 })),
  );
  const first = ++pen.row;
  for (const contents of rows) {
    table.headers.forEach(([, format], i) => {
      const content = contents[i] ?? null;
      const isFigure = format !== undefined && typeof content === 'number';
      const cell = pen.sheet.getCell(pen.row, i + 1);
      writeCell(cell, content, isFigure ? 'number' : 'text', isFigure ? format : undefined);
    });
    fitHeight(
      pen.sheet,
      pen.row,
      contents.map((text, i) => ({ text, widthChars: widths[i] ?? 11 })),
    );
    pen.row++;
  }
  return [first, pen.row - 1];
}

function writeBarTable(
  pen: Pen,
  table: Table,
  rows: readonly ProofRow[],
  bars: { column: string; limit: number },
): void {
  const [first, last] = writeTable(
    pen,
    table,
    rows.map(({ contents }) => contents),
  );
  rows.forEach(({ share, isNew }, i) => {
    writeBar(pen.sheet, { row: first + i, share, isNew });
  });
  if (last >= first)
    addDataBars(pen.sheet, `${bars.column}${first}:${bars.column}${last}`, bars.limit, ++pen.bars);
}

function writeCircuit(context: WorkbookContext, pen: Pen, proof: CircuitProof): void {
  const name = context.scheme.worked.proposed.circuits.find(({ id }) => id === proof.circuit)?.name;
  heading(pen, `${name ?? proof.circuit}: ${shapeWords(context.scheme.worked, proof)}`);
  sentence(
    pen,
    `Loads: ${scenarioWords[proof.scenario]}. Limits of volt drop: ${limitWords(proof.dropLimitV)}, lighting ${limitWords(proof.lightingDropLimitV)}. Zs: ${proof.limit.words}.`,
  );
  for (const text of proof.assumptions) sentence(pen, `Taken for granted: ${text}`);
  const picture = circuitPicture(context.scheme.worked, proof);
  if (picture === null) return;
  writeBarTable(pen, legTable, legRows(picture), { column: 'H', limit: 1 });
  writeBarTable(pen, pointTable, pointRows(context, proof, picture), {
    column: 'C',
    limit: proof.dropLimitV,
  });
  const loads = proof.otherScenarios.length > 0 ? scenarioRows(context, proof) : [];
  if (loads.length > 0) writeTable(pen, scenarioTable, loads);
  writeTable(pen, expectedTable, expectedRows(context, proof));
  sentence(pen, temperatureWords(proof));
  for (const text of testLimitWords(proof)) sentence(pen, text);
  writeCompared(context, pen, proof);
}

/** Readings before the work against the circuit as found, those after it against the scheme. */
function writeCompared(context: WorkbookContext, pen: Pen, proof: CircuitProof): void {
  const found = context.estimate.asFound.proof.find(({ circuit }) => circuit === proof.circuit);
  const before = found === undefined ? [] : comparedRows(context, found, 'before');
  const after = comparedRows(context, proof, 'after');
  for (const [when, rows] of [
    ['before the work', before],
    ['after the work', after],
  ] as const) {
    if (rows.length === 0) continue;
    const most = Math.max(...rows.map(({ contents }) => Number(contents[5])));
    writeBarTable(pen, comparedTable(when), rows, { column: 'F', limit: most });
  }
}

/**
 * The proof of every circuit that the scheme touches: currents, volt drops, fault loops and expected readings, with bars
 * along the ring in the order of its cable from end A to end B. A circuit begins on a new page.
 */
export function addProofSheet(context: WorkbookContext): void {
  const sheet = addSheet(context, sheetNames.proof, '1:1');
  sheet.views = [{ state: 'frozen', xSplit: 0, ySplit: 1, showGridLines: false }];
  widths.forEach((width, i) => {
    sheet.getColumn(i + 1).width = width;
  });
  narrowBarColumns(sheet);
  writeCell(
    sheet.getCell(1, 1),
    `${sheetNames.proof}: ${context.estimate.title}, ${context.scheme.name}`,
    'title',
  );
  const pen: Pen = { sheet, row: 2, bars: 0 };
  sentence(pen, context.estimate.editionNote);
  sentence(pen, 'Worked out from the survey, not measured: test the finished work, and decide on site.');
  context.scheme.proof.forEach((proof, i) => {
    if (i > 0) sheet.getRow(pen.row).addPageBreak();
    writeCircuit(context, pen, proof);
  });
  if (context.scheme.proof.length === 0) sentence(pen, 'This scheme touches no circuit.');
}
