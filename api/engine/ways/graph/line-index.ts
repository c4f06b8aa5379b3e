import { type Axis, endOf, SAME_MM, startOf, type WayLine } from './line.ts';
import { Strips } from './strips.ts';

/** A line with its number. */
export interface NumberedLine {
  readonly number: number;
  readonly line: WayLine;
}

/** Lines are kept by strips of a sheet that they pass through, so wide, mm: about a room. */
const STRIP_MM = 4000;

/** The lines of one direction in one sheet, by the coordinate that they keep; whole, and by strips of the other. */
interface Bundle {
  readonly all: NumberedLine[];
  readonly byStrip: Strips<NumberedLine>;
}

type SheetLines = Readonly<Record<Axis, Bundle>>;

const noLines = (): SheetLines => ({
  0: { all: [], byStrip: new Strips(STRIP_MM) },
  1: { all: [], byStrip: new Strips(STRIP_MM) },
});

const byPlace = (a: NumberedLine, b: NumberedLine): number =>
  a.line.fixedMm - b.line.fixedMm || a.number - b.number;

/** Lines by sheet, to find those that meet another without looking at all. */
export class LineIndex {
  readonly #sheets = new Map<string, SheetLines>();

  /** @param first the number of the first line. */
  constructor(lines: readonly WayLine[], first: number) {
    for (const [at, line] of lines.entries()) this.#add({ number: first + at, line });
    for (const sheet of this.#sheets.values())
      for (const { all, byStrip } of [sheet[0], sheet[1]]) {
        all.sort(byPlace);
        byStrip.sort(byPlace);
      }
  }

  get sheets(): Iterable<string> {
    return this.#sheets.keys();
  }

  has(sheet: string): boolean {
    return this.#sheets.has(sheet);
  }

  /** All lines in a sheet: those of its first direction, then those of its second. */
  in(sheet: string): readonly NumberedLine[] {
    const lines = this.#sheets.get(sheet);
    return lines === undefined ? [] : [...lines[0].all, ...lines[1].all];
  }

  /** Lines in a line's sheet that run as it does and keep the same coordinate. */
  inLineWith({ sheet, axis, fixedMm }: WayLine): readonly NumberedLine[] {
    const lines = this.#sheets.get(sheet.key)?.[axis].all ?? [];
    return linesBetween(lines, fixedMm - SAME_MM, fixedMm + SAME_MM);
  }

  /** Lines in a line's sheet that run the other way and cross it. */
  across(line: WayLine): readonly NumberedLine[] {
    const other: Axis = line.axis === 0 ? 1 : 0;
    const lines = this.#sheets.get(line.sheet.key)?.[other].byStrip.at(line.fixedMm) ?? [];
    const [lowMm, highMm] = [startOf(line) - SAME_MM, endOf(line) + SAME_MM];
    const crossing: NumberedLine[] = [];
    for (let at = firstAtLeast(lines, lowMm); at < lines.length; at += 1) {
      const one = lines[at] as NumberedLine;
      if (one.line.fixedMm > highMm) break;
      if (reaches(one.line, line.fixedMm)) crossing.push(one);
    }
    return crossing;
  }

  #add(own: NumberedLine): void {
    const { line } = own;
    const sheet = this.#sheets.get(line.sheet.key) ?? noLines();
    this.#sheets.set(line.sheet.key, sheet);
    const { all, byStrip } = sheet[line.axis];
    all.push(own);
    byStrip.add(startOf(line) - SAME_MM, endOf(line) + SAME_MM, own);
  }
}

const reaches = (line: WayLine, tMm: number): boolean =>
  tMm >= startOf(line) - SAME_MM && tMm <= endOf(line) + SAME_MM;

/** The lines of a list that keep a coordinate from low to high. */
function linesBetween(
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
