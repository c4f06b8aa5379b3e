import type { Axis, WayLine } from './line.ts';

/** A line with its number. */
export interface NumberedLine {
  readonly number: number;
  readonly line: WayLine;
}

/** Lines by sheet and direction, each list by the coordinate that its lines keep. */
export type LineIndex = ReadonlyMap<string, Readonly<Record<Axis, readonly NumberedLine[]>>>;

/** @param first the number of the first line. */
export function lineIndex(lines: readonly WayLine[], first: number): LineIndex {
  const index = new Map<string, Record<Axis, NumberedLine[]>>();
  lines.forEach((line, at) => {
    const sheet = index.get(line.sheet.key) ?? { 0: [], 1: [] };
    sheet[line.axis].push({ number: first + at, line });
    index.set(line.sheet.key, sheet);
  });
  for (const sheet of index.values())
    for (const axis of [0, 1] as const)
      sheet[axis].sort((a, b) => a.line.fixedMm - b.line.fixedMm || a.number - b.number);
  return index;
}

/** The lines of a list that keep a coordinate from low to high. */
export function linesBetween(
  sorted: readonly NumberedLine[],
  lowMm: number,
  highMm: number,
): readonly NumberedLine[] {
  const from = firstAtLeast(sorted, lowMm);
  let to = from;
  while (to < sorted.length && (sorted[to]?.line.fixedMm ?? 0) <= highMm) to += 1;
  return sorted.slice(from, to);
}

function firstAtLeast(sorted: readonly NumberedLine[], mm: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle]?.line.fixedMm ?? 0) < mm) low = middle + 1;
    else high = middle;
  }
  return low;
}
