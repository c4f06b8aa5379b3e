import { type CutPiece, piecesToCut } from '#engine/price/buying/pieces-of.ts';
import type { PurchaseLine } from '#engine/price/buying/purchase.ts';
import { cableItem } from '#engine/takeoff/cable-lines.ts';
import type { TakeoffLine } from '#engine/takeoff/line.ts';
import { cableLengthM } from '#engine/takeoff/run-length.ts';
import { twelveDigits } from '#engine/takeoff/twelve-digits.ts';
import type { Run } from '#engine/ways/run.ts';
import type { Cable } from '#model/cable.ts';
import { cableTypeWords, cableWords } from './cable-words.ts';
import { FIRST_ROW } from './table-sheet.ts';
import { sheetNames, type WorkbookContext } from './workbook-context.ts';

/** The name of the cell that holds the waste on cable, as a share. */
export const CABLE_WASTE = 'CableWaste';

/** A kind of cable under the schedule: its words, what its runs come to before waste, and its row there. */
export interface CableKind {
  readonly words: string;
  readonly cable: Cable;
  readonly lengthM: number;
  readonly row: number;
}

/** The last row of the schedule itself; the first where there is no run. */
export const lastRunRow = (runs: readonly Run[]): number => FIRST_ROW + Math.max(runs.length, 1) - 1;

/** Kinds in the order of their names, in each the thinnest first. */
const bySize = (a: Cable, b: Cable): number =>
  cableTypeWords[a.type].localeCompare(cableTypeWords[b.type], 'en-GB') ||
  a.lineMm2 - b.lineMm2 ||
  a.cpcMm2 - b.cpcMm2;

/** What each kind of cable comes to, under its heading, two rows below the schedule. */
export function cableKinds(runs: readonly Run[]): readonly CableKind[] {
  const sums = new Map<string, Omit<CableKind, 'row'>>();
  for (const run of runs) {
    const words = cableWords(run.cable);
    const lengthM = (sums.get(words)?.lengthM ?? 0) + cableLengthM(run).measuredM;
    sums.set(words, { words, cable: run.cable, lengthM });
  }
  return [...sums.values()]
    .toSorted((a, b) => bySize(a.cable, b.cable))
    .map((kind, index) => ({ ...kind, row: lastRunRow(runs) + 4 + index }));
}

const onSchedule = (row: number): string => `'${sheetNames.cable}'!H${row}`;

/** A line's waste as a factor of a formula; null where it is not the waste on the schedule. */
function wasteFactor({ wastePercent }: TakeoffLine, { library }: WorkbookContext): string | null {
  if (wastePercent === 0) return '';
  return wastePercent === library.norms.waste.cable ? `*(1+${CABLE_WASTE})` : null;
}

/**
 * What a line of the bill comes to by the cable schedule: its runs, what else is cut of the same thing, waste, up to a tenth
 * of a metre as the take-off rounds. Null where no run is of that thing.
 */
export function billedCable(line: TakeoffLine, context: WorkbookContext): string | null {
  const kinds = cableKinds(context.scheme.runs).filter(({ cable }) => cableItem(cable) === line.item);
  const factor = wasteFactor(line, context);
  if (kinds.length === 0 || factor === null) return null;
  const laidM = kinds.reduce((sum, { lengthM }) => sum + lengthM, 0);
  const otherM = twelveDigits(line.measured - laidM);
  const sum = [...kinds.map(({ row }) => onSchedule(row)), ...(otherM === 0 ? [] : [otherM])].join('+');
  return `ROUNDUP(ROUND((${sum})${factor}*10,6),0)/10`;
}

/**
 * How long a piece of cable is cut by the cable schedule: its run with waste, up to a centimetre. Null for what is no run's, and
 * where the cut list has a run at another length, as what is bought in case may.
 */
export function scheduledCut(
  piece: CutPiece,
  { item, unit }: PurchaseLine,
  context: WorkbookContext,
): string | null {
  const { runs, takeoff } = context.scheme;
  const index = runs.findIndex(({ id, cable }) => id === piece.cause && cableItem(cable) === item);
  const line = takeoff.find((one) => one.item === item && one.unit === unit);
  const factor = line === undefined ? null : wasteFactor(line, context);
  if (index < 0 || line === undefined || factor === null) return null;
  const asCut = piecesToCut(line, Number.POSITIVE_INFINITY);
  if (!asCut.some(({ cause, lengthMm }) => cause === piece.cause && lengthMm === piece.lengthMm)) return null;
  return `ROUNDUP(ROUND(${onSchedule(FIRST_ROW + index)}${factor}*100,6),0)/100`;
}
