import type { Ink } from '../../scene.ts';
import { type Block, gap, type Section, textBlocks } from './column.ts';

/** One entry of a list. */
export interface Entry {
  readonly head: string;
  /** What is told of it; rows that are empty are left out. */
  readonly rows: readonly string[];
}

const INSET_MM = 4;

/** An entry: its head in strong letters, what is told of it below. */
const entryBlocks = ({ head, rows }: Entry, widthMm: number, ink: Ink): readonly Block[] => [
  ...textBlocks(head, widthMm, { ink, strong: true }),
  ...rows
    .filter((row) => row !== '')
    .flatMap((row) => textBlocks(row, widthMm, { ink: 'text', insetMm: INSET_MM })),
  gap(0.6),
];

/**
 * A list of entries under its title; null where there is none.
 *
 * @param ink of the heads: copper for what is new or worked on.
 */
export const listed = (title: string, entries: readonly Entry[], ink: Ink = 'text-new'): Section | null =>
  entries.length === 0
    ? null
    : { title, blocks: (widthMm) => entries.flatMap((entry) => entryBlocks(entry, widthMm, ink)) };
