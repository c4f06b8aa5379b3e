import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Outcome } from '#engine/rules/finding.ts';
import { type Ink, line, type Shape, words } from './scene.ts';

/** The words for outcomes, in the order in which they are shown. */
export const outcomeWords: Readonly<Record<Outcome, string>> = {
  fails: 'Fails',
  decide: 'To decide',
  'not-proven': 'Not proven',
  advice: 'Advice',
  passes: 'Passes',
};

/** Outcomes from the gravest to the mildest. */
export const outcomeOrder: readonly Outcome[] = ['fails', 'decide', 'not-proven', 'advice', 'passes'];

const inks: Readonly<Record<Exclude<Outcome, 'passes'>, { readonly mark: Ink; readonly text: Ink }>> = {
  fails: { mark: 'mark-fails', text: 'fails' },
  decide: { mark: 'mark-decide', text: 'decide' },
  'not-proven': { mark: 'mark-not-proven', text: 'not-proven' },
  advice: { mark: 'mark-advice', text: 'advice' },
};

const outlines: Readonly<Record<Exclude<Outcome, 'passes'>, readonly (readonly [number, number])[]>> = {
  // An octagon, a diamond, a square and an upright strip: told apart without colour.
  fails: [
    [-0.9, -2.1],
    [0.9, -2.1],
    [2.1, -0.9],
    [2.1, 0.9],
    [0.9, 2.1],
    [-0.9, 2.1],
    [-2.1, 0.9],
    [-2.1, -0.9],
  ],
  decide: [
    [0, -2.6],
    [2.6, 0],
    [0, 2.6],
    [-2.6, 0],
  ],
  'not-proven': [
    [-1.9, -1.9],
    [1.9, -1.9],
    [1.9, 1.9],
    [-1.9, 1.9],
  ],
  advice: [
    [-1.4, -1.9],
    [1.4, -1.9],
    [1.4, 1.9],
    [-1.4, 1.9],
  ],
};

/** Lettering of marks on screen; on paper the series of letters has no such size. */
const MARK_LETTERS_MM = 2.1;

/** A numbered mark: its outline says the outcome, its number the line in the list of findings. */
export function findingMark(
  outcome: Exclude<Outcome, 'passes'>,
  at: SheetPoint,
  label: string,
  sizeMm: number = MARK_LETTERS_MM,
): readonly Shape[] {
  const outline = outlines[outcome].map(([x, y]) => sheetPoint(at[0] + x, at[1] + y));
  return [
    line(inks[outcome].mark, outline, true),
    words(inks[outcome].text, sheetPoint(at[0], at[1] + (sizeMm * 0.75) / MARK_LETTERS_MM), label, {
      sizeMm,
      anchor: 'middle',
      strong: true,
    }),
  ];
}

/** The ink of an outcome's words. */
export const outcomeInk = (outcome: Exclude<Outcome, 'passes'>): Ink => inks[outcome].text;
