import type { Position } from '../../plan/plane.ts';
import type { Lay, SegmentDetails } from '../segment.ts';
import { noWork, type WorkCost } from '../way-tariff.ts';

/** Which of a sheet's two directions a line runs in. Faces: 0 level, 1 plumb. Voids: 0 along the joists, 1 across. */
export type Axis = 0 | 1;

/** A flat part of the building that cable runs in: a wall's face, the space under a floor, a loft. */
export interface Sheet {
  readonly key: string;
  /** Where a spot of the sheet is in the building. */
  readonly positionAt: (a: number, b: number) => Position;
}

/** A stretch of a line in which one metre is like another. Costs are by the metre and by each thing crossed. */
export interface LinePart {
  readonly fromMm: number;
  readonly toMm: number;
  readonly lay: Lay;
  readonly details: SegmentDetails;
  readonly perM: WorkCost;
  /** For passing the part as a whole: the hole through a wall. */
  readonly once?: WorkCost;
  /** Joists or studs before a place on the line, one exactly there counting half; absent: none. */
  readonly crossedBefore?: (tMm: number) => number;
  readonly perCrossing?: WorkCost;
  /** Whether each crossing is where a joist may not be cut. */
  readonly unfit?: boolean;
  /** For opening the floor over a place on it; absent where nothing has to be opened. */
  readonly opening?: WorkCost;
  /** An electrician would avoid it. */
  readonly poor?: boolean;
  /** In insulation, or maybe: too warm for the 20 A of a ring and its spurs. */
  readonly warm?: boolean;
  /** A chase in a party wall: avoided where it costs little to. */
  readonly party?: boolean;
  /** On the surface of a wall that could be chased: poor unless an end of the cable is on the surface too. */
  readonly onSurface?: boolean;
}

/** A straight line that cable may run along from its first part's start to its last part's end. */
export interface WayLine {
  readonly sheet: Sheet;
  readonly axis: Axis;
  /** The coordinate that stays the same along it. */
  readonly fixedMm: number;
  readonly parts: readonly LinePart[];
  /** Where on it a cable comes into the void, for lines that are there for that cable's sake. */
  readonly dropMm?: number;
}

/** What a line comes to from its start to a place on it. */
export interface Measure {
  readonly millipence: number;
  readonly minutes: number;
  readonly mess: number;
  readonly lengthMm: number;
  readonly poorMm: number;
  readonly surfaceMm: number;
  readonly partyMm: number;
  readonly warmMm: number;
  /** Joists crossed where they may not be cut. */
  readonly unfit: number;
}

/** Places nearer than this are one place, mm. */
export const SAME_MM = 0.05;

export const startOf = ({ parts }: WayLine): number => parts[0]?.fromMm ?? 0;
export const endOf = ({ parts }: WayLine): number => parts.at(-1)?.toMm ?? 0;

export const positionOn = ({ sheet, axis, fixedMm }: WayLine, tMm: number): Position =>
  axis === 0 ? sheet.positionAt(tMm, fixedMm) : sheet.positionAt(fixedMm, tMm);

/** What a line comes to up to a place, from its start. Never falls along the line, so differences are costs. */
export function measureTo({ parts }: WayLine, tMm: number, cableMillipencePerM: number): Measure {
  let [millipence, minutes, mess, lengthMm] = [0, 0, 0, 0];
  let [poorMm, surfaceMm, partyMm, warmMm, unfit] = [0, 0, 0, 0, 0];
  for (const part of parts) {
    if (part.fromMm >= tMm) break;
    const toMm = Math.min(part.toMm, tMm);
    const runMm = toMm - part.fromMm;
    const crossed = part.crossedBefore ? part.crossedBefore(toMm) - part.crossedBefore(part.fromMm) : 0;
    const each = part.perCrossing ?? noWork;
    const once = part.once !== undefined && toMm >= part.toMm - SAME_MM ? part.once : noWork;
    const metres = runMm / 1000;
    millipence +=
      (part.perM.millipence + cableMillipencePerM) * metres + each.millipence * crossed + once.millipence;
    minutes += part.perM.minutes * metres + each.minutes * crossed + once.minutes;
    mess += part.perM.mess * metres + each.mess * crossed + once.mess;
    lengthMm += runMm;
    if (part.poor === true) poorMm += runMm;
    if (part.onSurface === true) surfaceMm += runMm;
    if (part.party === true) partyMm += runMm;
    if (part.warm === true) warmMm += runMm;
    if (part.unfit === true) unfit += crossed;
  }
  return { millipence, minutes, mess, lengthMm, poorMm, surfaceMm, partyMm, warmMm, unfit };
}

/** Whether cable may turn, begin or end at a place on a line: on it, and not within the thickness of a wall. */
export function isStop({ parts }: WayLine, tMm: number): boolean {
  return parts.some(
    (part) =>
      (part.once === undefined && tMm >= part.fromMm - SAME_MM && tMm <= part.toMm + SAME_MM) ||
      Math.abs(tMm - part.fromMm) <= SAME_MM ||
      Math.abs(tMm - part.toMm) <= SAME_MM,
  );
}

/** What opening the floor takes over a place on a line; nothing where there is none to open. */
export function openingAt({ parts }: WayLine, tMm: number): WorkCost {
  const [dearest] = parts
    .filter(({ fromMm, toMm }) => fromMm <= tMm + SAME_MM && tMm <= toMm + SAME_MM)
    .flatMap(({ opening }) => opening ?? [])
    .toSorted((a, b) => b.millipence - a.millipence);
  return dearest ?? noWork;
}

/** What of a line lies within a stretch; null where nothing does. */
export function clipped(line: WayLine, [lowMm, highMm]: readonly [number, number]): WayLine | null {
  const parts = line.parts
    .map((part) => ({
      ...part,
      fromMm: Math.max(part.fromMm, lowMm),
      toMm: Math.min(part.toMm, highMm),
    }))
    .filter(({ fromMm, toMm }) => toMm - fromMm > SAME_MM);
  return parts.length === 0 ? null : { ...line, parts };
}
