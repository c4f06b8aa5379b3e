import type { Vector } from './vector.ts';

/** Four corners of what is a rectangle in truth, as a picture shows them, px: upper left, upper right, lower right, lower left. */
export type Corners = readonly [Vector, Vector, Vector, Vector];

/** Where a place of the unit square lies in a picture that shows the square from anywhere; y goes down in both. */
export type Projection = (u: number, v: number) => Vector;

/** Less than this much of a picture's area is no picture of anything, of the square of its longest side. */
const LEAST_AREA = 1e-3;

const crossOf = (a: Vector, b: Vector, c: Vector): number =>
  (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);

/** Whether four corners go once round, without crossing and without a dent, and are more than a line: only so a rectangle can be seen. */
export function isSeenRectangle([a, b, c, d]: Corners): boolean {
  const longest = Math.max(...[a, b, c, d].map((from, i, all) => distance(from, all[(i + 1) % 4] ?? from)));
  const turns = [crossOf(a, b, c), crossOf(b, c, d), crossOf(c, d, a), crossOf(d, a, b)];
  return turns.every((turn) => turn > LEAST_AREA * longest ** 2);
}

const distance = (a: Vector, b: Vector): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/**
 * The projection that brings the unit square's corners (0,0), (1,0), (1,1), (0,1) to four corners; null where they cannot be
 * those of a rectangle that is seen.
 *
 * Source: P. Heckbert, Fundamentals of Texture Mapping and Image Warping (1989), 2.2.3, square to quadrilateral (from memory).
 */
export function squareTo(corners: Corners): Projection | null {
  if (!isSeenRectangle(corners)) return null;
  const [[x0, y0], [x1, y1], [x2, y2], [x3, y3]] = corners;
  const [dx1, dx2, sx] = [x1 - x2, x3 - x2, x0 - x1 + x2 - x3];
  const [dy1, dy2, sy] = [y1 - y2, y3 - y2, y0 - y1 + y2 - y3];
  const whole = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - dx2 * sy) / whole;
  const h = (dx1 * sy - sx * dy1) / whole;
  const [a, b] = [x1 - x0 + g * x1, x3 - x0 + h * x3];
  const [d, e] = [y1 - y0 + g * y1, y3 - y0 + h * y3];
  return (u, v) => {
    const w = g * u + h * v + 1;
    return [(a * u + b * v + x0) / w, (d * u + e * v + y0) / w];
  };
}

type Triple = readonly [number, number, number];
const cross3 = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot3 = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Sides that meet further off than so many widths of a picture run side by side: then nothing tells the lens from them. */
const SIDE_BY_SIDE = 0.02;

/**
 * How wide a rectangle is to its height, told from how a camera sees it: a lens without distortion, its middle in the middle of
 * the picture, px as high as wide. Where its sides run side by side in the picture the ratio is that of the picture.
 *
 * Source: Z. Zhang, L.-W. He, Whiteboard scanning and image enhancement (2007), section 3 (from memory).
 *
 * @param size of the whole picture, px.
 */
export function seenRatio(corners: Corners, [width, height]: Vector): number {
  // In widths of the picture, so that nothing hangs on how large it is.
  const unitPx = Math.max(width, height);
  const [m1, m2, m4, m3] = corners.map(
    ([x, y]): Triple => [(x - width / 2) / unitPx, (y - height / 2) / unitPx, 1],
  ) as unknown as readonly [Triple, Triple, Triple, Triple];
  const across = cross3(m1, m4);
  const k2 = dot3(across, m3) / dot3(cross3(m2, m4), m3);
  const k3 = dot3(across, m2) / dot3(cross3(m3, m4), m2);
  const n2: Triple = [k2 * m2[0] - m1[0], k2 * m2[1] - m1[1], k2 - 1];
  const n3: Triple = [k3 * m3[0] - m1[0], k3 * m3[1] - m1[1], k3 - 1];
  const lens2 = -(n2[0] * n3[0] + n2[1] * n3[1]) / (n2[2] * n3[2]);
  const isTold = Math.min(Math.abs(n2[2]), Math.abs(n3[2])) > SIDE_BY_SIDE && lens2 > 0.04 && lens2 < 100;
  const long2 = (n: Triple): number => n[0] ** 2 + n[1] ** 2 + (isTold ? n[2] ** 2 * lens2 : 0);
  if (isTold) return Math.sqrt(long2(n2) / long2(n3));
  const [a, b, c, d] = corners;
  return (distance(a, b) + distance(d, c)) / (distance(a, d) + distance(b, c));
}

/** Pixels of a picture, four bytes each, row by row. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** How much of the picture round the rectangle is kept, of its width and height. */
export const MARGIN = 0.12;

const WHITE = 255;

/**
 * Fills some rows of a straightened picture: the rectangle, and a margin round it of what the picture has there; white where it
 * has nothing. Between pixels it is linear in both directions.
 */
export function straightenRows(
  from: Pixels,
  to: Pixels,
  project: Projection,
  rows: readonly [first: number, end: number],
): void {
  const whole = 1 + 2 * MARGIN;
  for (let y = rows[0]; y < rows[1]; y++)
    for (let x = 0; x < to.width; x++) {
      const u = ((x + 0.5) / to.width) * whole - MARGIN;
      const v = ((y + 0.5) / to.height) * whole - MARGIN;
      put(from, project(u, v), to.data, 4 * (y * to.width + x));
    }
}

function put(from: Pixels, [px, py]: Vector, data: Uint8ClampedArray, at: number): void {
  const [x, y] = [px - 0.5, py - 0.5];
  const isIn = x > -1 && y > -1 && x < from.width && y < from.height;
  for (let channel = 0; channel < 3; channel++)
    data[at + channel] = isIn ? between(from, x, y, channel) : WHITE;
  data[at + 3] = WHITE;
}

function between({ width, height, data }: Pixels, x: number, y: number, channel: number): number {
  const [left, upper] = [Math.floor(x), Math.floor(y)];
  const [right, lower] = [x - left, y - upper];
  const at = (column: number, row: number): number => {
    const [inX, inY] = [Math.min(Math.max(column, 0), width - 1), Math.min(Math.max(row, 0), height - 1)];
    return data[4 * (inY * width + inX) + channel] ?? WHITE;
  };
  const above = at(left, upper) * (1 - right) + at(left + 1, upper) * right;
  const below = at(left, upper + 1) * (1 - right) + at(left + 1, upper + 1) * right;
  return above * (1 - lower) + below * lower;
}

/**
 * How large a straightened picture is made, px: the rectangle as large as its longer side is seen, with its margin, and no
 * longer than `mostPx`.
 *
 * @param ratio how wide the rectangle is to its height.
 */
export function straightSize([a, b, c, d]: Corners, ratio: number, mostPx: number): Vector {
  const seen = Math.max(distance(a, b), distance(d, c), distance(b, c), distance(a, d));
  const longest = Math.min(seen * (1 + 2 * MARGIN), mostPx);
  const size = ratio >= 1 ? [longest, longest / ratio] : [longest * ratio, longest];
  return [Math.max(1, Math.round(size[0] ?? 1)), Math.max(1, Math.round(size[1] ?? 1))];
}
