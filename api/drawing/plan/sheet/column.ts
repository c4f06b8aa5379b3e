import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { type Ink, line, type Shape, words } from '../../scene.ts';
import { wrapped } from '../text-rows.ts';
import { LETTERS_MM, ROW_MM } from './lettering.ts';

/** One row of a list, or a picture in it: as tall as it is, drawn from its top left corner. */
export interface Block {
  readonly heightMm: number;
  readonly shapesAt: (corner: SheetPoint) => readonly Shape[];
}

/** A list under a heading; its rows are laid out for a width. */
export interface Section {
  readonly title: string;
  readonly blocks: (widthMm: number) => readonly Block[];
}

/** A column that lists are written into, mm on paper. */
export interface Column {
  readonly leftMm: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly bottomMm: number;
}

const HEAD_MM = 6.6;

/** Rows of words are on average narrower than the widest face that labels are placed for, by a tenth at least. */
const NARROW = 1.1;

const heading = (title: string, widthMm: number): Block => ({
  heightMm: HEAD_MM,
  shapesAt: ([x, y]) => [
    words('text-soft', sheetPoint(x, y + 4.8), title, { sizeMm: LETTERS_MM.notes, strong: true }),
    line('rule', [sheetPoint(x, y + 6), sheetPoint(x + widthMm, y + 6)]),
  ],
});

/** Rows of text, a block each, so that no text is too long for a column. */
export const textBlocks = (
  text: string,
  widthMm: number,
  { ink = 'text', insetMm = 0, strong = false }: { ink?: Ink; insetMm?: number; strong?: boolean } = {},
): readonly Block[] =>
  wrapped(text, (widthMm - insetMm) * NARROW, LETTERS_MM.notes).map((row) => ({
    heightMm: ROW_MM,
    shapesAt: ([x, y]) => [
      words(ink, sheetPoint(x + insetMm, y + 2.6), row, { sizeMm: LETTERS_MM.notes, strong }),
    ],
  }));

/** The same block with something of its own drawn at its left. */
export const withSign = (block: Block, sign: (corner: SheetPoint) => readonly Shape[]): Block => ({
  ...block,
  shapesAt: (corner) => [...sign(corner), ...block.shapesAt(corner)],
});

/** Room between two entries of a list. */
export const gap = (heightMm: number): Block => ({ heightMm, shapesAt: () => [] });

/** How tall a section is in a column of a width, heading and all. */
export const sectionMm = (section: Section, widthMm: number): number =>
  section.blocks(widthMm).reduce((sum, { heightMm }) => sum + heightMm, HEAD_MM);

/** A column as filled. */
export interface Filled {
  readonly shapes: readonly Shape[];
  readonly topMm: number;
}

const drawn = (blocks: readonly Block[], { leftMm, topMm }: Column): Filled => {
  let y = topMm;
  const shapes = blocks.flatMap((block) => {
    const at = sheetPoint(leftMm, y);
    y += block.heightMm;
    return block.shapesAt(at);
  });
  return { shapes, topMm: y };
};

/** Sections under one another, from the column's top; they are known to fit. */
export const sectionsIn = (sections: readonly Section[], column: Column): Filled =>
  drawn(
    sections.flatMap((section) => [
      heading(section.title, column.widthMm),
      ...section.blocks(column.widthMm),
    ]),
    column,
  );

/**
 * Sections through columns, page by page, as far as they go: a heading stands with the first of its rows, and again over those that go on in
 * the next column.
 *
 * @returns the shapes of each page, in order.
 */
export function flowed(
  sections: readonly Section[],
  columns: readonly [Column, ...Column[]],
): readonly (readonly Shape[])[] {
  const pages: Shape[][] = [[]];
  let [index, y] = [0, columns[0].topMm];
  const column = (): Column => columns[index % columns.length] ?? columns[0];
  const put = (block: Block): void => {
    const page = Math.floor(index / columns.length);
    while (pages.length <= page) pages.push([]);
    pages[page]?.push(...block.shapesAt(sheetPoint(column().leftMm, y)));
    y += block.heightMm;
  };
  const next = (): void => {
    index += 1;
    y = column().topMm;
  };
  for (const { title, blocks } of sections) {
    if (y > column().topMm && y + HEAD_MM + 2 * ROW_MM > column().bottomMm) next();
    put(heading(title, column().widthMm));
    // Rows are laid out for the narrowest column, since a list may go on in another.
    for (const block of blocks(Math.min(...columns.map(({ widthMm }) => widthMm)))) {
      if (y + block.heightMm > column().bottomMm) {
        next();
        put(heading(`${title}, continued`, column().widthMm));
      }
      put(block);
    }
  }
  return pages;
}
