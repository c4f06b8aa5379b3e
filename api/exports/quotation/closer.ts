import type { Content } from 'pdfmake/interfaces.js';
import { styles } from './pdf-styles.ts';

/** How close content is set: the shares of spaces and of lines' own height that are left. */
export interface Closeness {
  /** Of what is above and below rows, headings and paragraphs; 1: all of it. */
  readonly spaces: number;
  /** Height of a line to its letters'. */
  readonly lineHeight: number;
}

/** Of a table, what is above and below a row. */
const ROW_SPACES: ReadonlySet<string> = new Set(['paddingTop', 'paddingBottom']);

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const marginsOfStyles = new Map<unknown, readonly number[]>(
  Object.entries(styles).flatMap(([name, style]) => ('margin' in style ? [[name, style.margin]] : [])),
);

/** The margin that something has of itself or by its style; undefined: none. */
const marginOf = (node: Readonly<Record<string, unknown>>): unknown =>
  node.margin ?? marginsOfStyles.get(node.style);

/** A margin with less above and below; those at the sides stay. */
function closerMargin(margin: unknown, spaces: number): unknown {
  if (!Array.isArray(margin)) return margin;
  return margin.map((side, i) => (i % 2 === 1 && typeof side === 'number' ? side * spaces : side));
}

/** The layout of a table with less above and below its rows; named layouts stay. */
function closerLayout(layout: unknown, spaces: number): unknown {
  if (!isRecord(layout)) return layout;
  return Object.fromEntries(
    Object.entries(layout).map(([key, space]) => [
      key,
      ROW_SPACES.has(key) && typeof space === 'function'
        ? (...of: unknown[]) => Number(space(...of)) * spaces
        : space,
    ]),
  );
}

/** How a part is set: how close, and the heads before which a page ends, counted from 0 as they come in it. */
export interface Setting {
  /** Null: as it is. */
  readonly closeness: Closeness | null;
  readonly breaksBefore: ReadonlySet<number>;
}

/** What marks a head that goes along with the table after it. */
export const HEAD_OF_TABLE = 1;

/**
 * A copy of content as it is set: letters keep their size, columns their widths. The PDF writer writes into what it lays out, so each
 * lay-out needs its own.
 */
export function setAs(content: readonly Content[], { closeness, breaksBefore }: Setting): readonly Content[] {
  const spaces = closeness?.spaces ?? 1;
  let heads = 0;
  const copied = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(copied);
    if (!isRecord(value)) return value;
    const isHead = 'headlineLevel' in value && value.headlineLevel === HEAD_OF_TABLE;
    const breaks = isHead && breaksBefore.has(heads);
    if (isHead) heads += 1;
    const margin = marginOf(value);
    return Object.fromEntries([
      ...Object.entries(value).map(([key, own]) => [
        key,
        key === 'layout' ? closerLayout(own, spaces) : copied(own),
      ]),
      ...(margin === undefined ? [] : [['margin', closerMargin(margin, spaces)]]),
      ...(breaks ? [['pageBreak', 'before']] : []),
    ]);
  };
  const stack = copied(content) as Content[];
  return closeness === null ? stack : [{ stack, lineHeight: closeness.lineHeight }];
}
