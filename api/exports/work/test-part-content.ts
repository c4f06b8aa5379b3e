import type { Content, TableCell } from 'pdfmake/interfaces.js';
import {
  bandSaid,
  expectedSaid,
  limitSaid,
  limitsFrom,
  readSaid,
  testGroupWords,
  testName,
  verdictWord,
} from '#drawing/work/test-sheet-words.ts';
import type { SheetTest, TestPart } from '#engine/work/tests/sheet-test.ts';
import {
  headOfTable,
  isWhole,
  ruledTable,
  subheading,
  TEXT_WIDTH_MM,
  together,
} from '../quotation/pdf-parts.ts';

const HELD_MM = { room: 26, expected: 26, band: 27, limit: 28, read: 27 } as const;
const heads = ['Test', 'Where', 'Expected', 'Band, ours', 'Limit', 'Read'] as const;
const widthsMm = [
  TEXT_WIDTH_MM - Object.values(HELD_MM).reduce((sum, widthMm) => sum + widthMm, 0),
  ...Object.values(HELD_MM),
];

/** One group of tests of one circuit or board: how to connect, then a row a test with what was read, or room to write it. */
export function testPartContent({
  circuitName,
  group,
  isLive,
  connect,
  tests,
}: TestPart): readonly Content[] {
  const title = `${testGroupWords[group].title}, ${isLive ? 'LIVE' : 'dead'}: ${circuitName}`;
  const steps: Content = { ol: [...connect], margin: [0, 0, 0, 4] };
  const sources = limitsFrom(tests).map((words): Content => ({ text: words, style: 'label' }));
  const over = [subheading(title), steps, ...sources];
  const table = { heads, rows: tests.map(testCells), widthsMm };
  if (tests.length === 0) return [together(over)];
  // What is over it is a few sentences: with half a page of table it is surely shorter than a page.
  return isWhole(table) ? [together([...over, ruledTable(table)])] : [headOfTable(over), ruledTable(table)];
}

/** A blank of a row's height to write in. */
const ROOM = ' ';

const testCells = (test: SheetTest): readonly TableCell[] => [
  { text: testName(test), bold: true },
  test.room ?? '',
  { text: expectedSaid(test), style: 'figures' },
  { text: bandSaid(test), style: 'figures' },
  { text: limitSaid(test), style: 'figures' },
  readCell(test),
];

function readCell(test: SheetTest): TableCell {
  const read = readSaid(test);
  if (read === '') return { text: ROOM, margin: [0, 3, 0, 3] };
  const { verdict } = test;
  return {
    stack: [
      { text: read, bold: true, style: 'figures' },
      { text: verdictWord[verdict], style: 'label', bold: verdict === 'look' || verdict === 'fails' },
    ],
  };
}
