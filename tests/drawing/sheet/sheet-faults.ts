import { expect } from 'vitest';
import { overlapMm2, type Rectangle } from '#drawing/label-placer.ts';
import type { Scene } from '#drawing/scene.ts';
import type { SheetPoint } from '#engine/plan/sheet-frame.ts';
import { sheetsPdf } from '#exports/plan/plan-pdf.ts';
import { type PdfWord, readPdf } from '#tests/exports/pdf-reader.ts';
import { struckWords } from './struck-words.ts';
import { signsOf, strokesOf } from './symbol-strokes.ts';

const MM = 25.4 / 72;

/**
 * The room that a word's letters take, mm: a reader's box also has the face's own room above capitals and below the base line, a quarter of it
 * and a fifth. Lettering turned by a quarter is higher than wide.
 */
function lettersOf({ text, xMin, xMax, yMin, yMax }: PdfWord): Rectangle & { readonly text: string } {
  const [leftMm, rightMm, topMm, bottomMm] = [xMin * MM, xMax * MM, yMin * MM, yMax * MM];
  const [wide, high] = [rightMm - leftMm, bottomMm - topMm];
  return wide < high && text.length > 2
    ? { text, leftMm: leftMm + wide * 0.25, rightMm: rightMm - wide * 0.2, topMm, bottomMm }
    : { text, leftMm, rightMm, topMm: topMm + high * 0.25, bottomMm: bottomMm - high * 0.2 };
}

/** Letters keep off strokes by this much less than none: half of the finest pen, mm. */
const PEN_MM = 0.09;

const holds = ({ leftMm, rightMm, topMm, bottomMm }: Rectangle, [x, y]: SheetPoint): boolean =>
  x > leftMm + PEN_MM && x < rightMm - PEN_MM && y > topMm + PEN_MM && y < bottomMm - PEN_MM;

/** Words that lie on a sign, and signs that lie on each other; a sign's own letters belong into it. */
function signFaults(scene: Scene, words: readonly ReturnType<typeof lettersOf>[]): readonly string[] {
  const signs = signsOf(scene);
  const own = signs.flatMap(({ letters }) => letters);
  const labels = words.filter((word) => !own.some((at) => isLetterAt(word, at)));
  return signs.flatMap(({ title, strokes }) =>
    labels
      .filter((word) => strokes.some((at) => holds(word, at)))
      .map(({ text }) => `${scene.title}: ${text} on ${title}`),
  );
}

/** Whether a word is lettered about a place; base lines lie below the middle. */
const isLetterAt = ({ leftMm, rightMm, topMm, bottomMm }: Rectangle, [x, y]: SheetPoint): boolean =>
  Math.abs((leftMm + rightMm) / 2 - x) < 0.6 && y > topMm && y < bottomMm + 0.6;

/** Strokes past the edge of the paper. */
const offPaper = ({ title, widthMm, heightMm, layers }: Scene): readonly string[] =>
  layers.flatMap(({ name, shapes }) =>
    shapes.flatMap(strokesOf).some(([x, y]) => x < 0 || y < 0 || x > widthMm || y > heightMm)
      ? [`${title}: ${name} past the edge of the paper`]
      : [],
  );

const faults = (scene: Scene, words: readonly PdfWord[]): readonly string[] => {
  const boxes = words.map(lettersOf);
  const out = boxes.filter(
    ({ leftMm, rightMm, topMm, bottomMm }) =>
      leftMm < 20 || rightMm > scene.widthMm - 10 || topMm < 10 || bottomMm > scene.heightMm - 10,
  );
  const over = boxes.flatMap((one, i) =>
    boxes
      .slice(i + 1)
      .filter((other) => overlapMm2(one, other) > 0.05)
      .map((other) => `${one.text} / ${other.text}`),
  );
  return [
    ...out.map(({ text }) => `${scene.title}, out of the frame: ${text}`),
    ...over,
    ...signFaults(scene, boxes),
    ...struckWords(scene),
    ...offPaper(scene),
  ];
};

/** What is wrong with sheets as a PDF reader sees them: words over words or signs, past the frame, or struck out. */
export async function faultsOnPaper(sheets: readonly Scene[]): Promise<readonly string[]> {
  const { words } = await readPdf(await sheetsPdf({ title: 'Sheets', date: '2026-11-27', sheets }));
  expect(words).toHaveLength(sheets.length);
  for (const page of words) expect(page.length).toBeGreaterThan(40);
  return sheets.flatMap((scene, i) => faults(scene, words[i] ?? []));
}
