import { cross, lengthOf, minus, plus, times, type Vector } from './vector.ts';

/** A side of a room as it is measured along the wall, and how the next one turns off it. */
export interface WalkedSide {
  readonly lengthMm: number;
  /** The turn at its end, degrees to the left; 90 at an inside corner of a room that is walked with the walls on the right. */
  readonly turnDeg: number;
}

/** A room that was walked round: where its corners come to lie, and by how much the end misses the beginning. */
export interface Walk {
  /** From the first corner on, one more than there are sides. */
  readonly corners: readonly Vector[];
  /** From the end to the beginning, mm. */
  readonly missing: Vector;
  readonly missingMm: number;
  /** The walls' length all round, mm. */
  readonly roundMm: number;
}

const RIGHT_ANGLES: Readonly<Record<number, Vector>> = { 0: [1, 0], 90: [0, 1], 180: [-1, 0], 270: [0, -1] };

/** The way that is so many degrees to the left of x; right angles are exact. */
export function heading(deg: number): Vector {
  const turned = ((deg % 360) + 360) % 360;
  const radians = (turned * Math.PI) / 180;
  return RIGHT_ANGLES[turned] ?? [Math.cos(radians), Math.sin(radians)];
}

/** Lays sides one after the other, the first from the origin along x. */
export function walked(sides: readonly WalkedSide[]): Walk {
  const corners: Vector[] = [[0, 0]];
  let deg = 0;
  let at: Vector = [0, 0];
  for (const { lengthMm, turnDeg } of sides) {
    at = plus(at, times(heading(deg), lengthMm));
    corners.push(at);
    deg += turnDeg;
  }
  const missing = minus([0, 0], at);
  const roundMm = sides.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  return { corners, missing, missingMm: lengthOf(missing), roundMm };
}

/** The side that closes what was walked so far, straight back to the beginning; null where it is closed, or has no side. */
export function closingSide(sides: readonly WalkedSide[]): WalkedSide | null {
  const { missingMm } = walked(sides);
  if (missingMm < 1 || sides.length < 2) return null;
  return { lengthMm: Math.round(missingMm), turnDeg: 90 };
}

/**
 * Shares the error of closing out over the sides: what is missing along x over the sides in proportion to how far each goes
 * along x, and along y alike, so that right angles stay right (the transit rule of traverse surveying; see its test).
 *
 * @returns the corners, closed: as many as there are sides. Where no side goes along an axis the last corner takes it all.
 */
export function sharedOut(sides: readonly WalkedSide[]): readonly Vector[] {
  const { corners, missing } = walked(sides);
  const steps = sides.map((_, i) => minus(corners[i + 1] ?? [0, 0], corners[i] ?? [0, 0]));
  const share = (axis: 0 | 1): readonly number[] => {
    const total = steps.reduce((sum, step) => sum + Math.abs(step[axis]), 0);
    return steps.map((step, i) =>
      total === 0
        ? i === steps.length - 1
          ? missing[axis]
          : 0
        : (missing[axis] * Math.abs(step[axis])) / total,
    );
  };
  const [alongX, alongY] = [share(0), share(1)];
  let at: Vector = [0, 0];
  return steps.map((step, i) => {
    const corner = at;
    at = plus(at, [step[0] + (alongX[i] ?? 0), step[1] + (alongY[i] ?? 0)]);
    return corner;
  });
}

/** A closed outline, anticlockwise whichever way round it was walked. */
export function anticlockwise(outline: readonly Vector[]): readonly Vector[] {
  const doubled = outline.reduce((sum, a, i) => sum + cross(a, outline[(i + 1) % outline.length] ?? a), 0);
  return doubled >= 0 ? outline : outline.toReversed();
}
