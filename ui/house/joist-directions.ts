import type { RoomSide } from './room-sides.ts';
import { minus } from './vector.ts';

/** A way in which joists may run: degrees anticlockwise from across the plan, and its words. */
export interface JoistDirection {
  readonly deg: number;
  readonly words: string;
}

/** Of a whole storey: as the plan lies. */
export const planDirections: readonly JoistDirection[] = [
  { deg: 0, words: 'Side to side, across the plan' },
  { deg: 90, words: 'Front to back, up the plan' },
];

/** Joists lie alike whichever end is called the first. */
export const isSameDirection = (a: number, b: number): boolean => {
  const off = (((a - b) % 180) + 180) % 180;
  return Math.min(off, 180 - off) < 0.5;
};

/** Of one room: along its longest side, and square to that; as the plan lies where it does not close. */
export function roomDirections(sides: readonly RoomSide[]): readonly JoistDirection[] {
  const [first, ...others] = sides;
  if (first === undefined) return planDirections;
  const long = others.reduce((best, side) => (side.lengthMm > best.lengthMm + 1 ? side : best), first);
  const [x, y] = minus(long.to, long.from);
  const longDeg = turnedDeg((Math.atan2(y, x) * 180) / Math.PI);
  const shortDeg = turnedDeg(longDeg + 90);
  return [
    { deg: longDeg, words: `Long side${onPlan(longDeg)}` },
    { deg: shortDeg, words: `Short side${onPlan(shortDeg)}` },
  ];
}

/** From nought to less than 180, to the tenth. */
const turnedDeg = (deg: number): number => (Math.round((((deg % 180) + 180) % 180) * 10) / 10) % 180;

const onPlan = (deg: number): string =>
  isSameDirection(deg, 0) ? ', across the plan' : isSameDirection(deg, 90) ? ', up the plan' : '';
