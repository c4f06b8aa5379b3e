import { joistCuts } from '#data/standards/joist-cuts.ts';
import { joistLimits } from '#data/standards/joist-limits.ts';
import type { Floor } from '#model/building.ts';
import { USUAL_CABLE } from '../circuit/usual-cable.ts';
import { JOIST_COVER_MM } from './concealed-cable.ts';

const [hole, notch] = joistCuts.rows;
const [deepest, holeToNotch] = joistLimits.rows;

/** A place is in a window that it misses by less, mm: shares of a span do not come out whole. */
const HAIR_MM = 1e-6;

/** Deeper joists than this are an engineer's, mm. Source: NHBC Standards 6.4.18. */
export const DEEPEST_JOIST_MM = deepest.mm;
/** How far apart holes are, from centre to centre, in diameters. Source: Approved Document A; BS 5268-2. */
export const HOLES_APART_DIAMETERS = hole.apartDiameters;
/** How far a hole is from any notch, mm along the joist. Source: NHBC Standards 6.4.18. */
export const HOLE_TO_NOTCH_MM = holeToNotch.mm;

/** The two supports of a joist, as distances along it, in either order. */
export interface JoistSpan {
  readonly fromMm: number;
  readonly toMm: number;
}

/** A stretch of a joist, the lower end first. */
export type JoistWindow = readonly [fromMm: number, toMm: number];

/** What may be cut into a joist at a place; `unknown` where its depth or span is not known, or beyond the guidance. */
export type JoistCut = 'hole' | 'notch' | 'neither' | 'unknown';

/** Largest hole on a joist's centre line, mm. Source: Approved Document A; BS 5268-2. */
export function largestJoistHoleMm(joistDepthMm: number): number {
  return joistDepthMm * hole.depthRatio;
}

/**
 * The hole that one flat cable is drilled for, mm: its width and a little play, to the bit that is sold.
 * Common practice, no source.
 */
export function joistHoleMm(lineMm2: number): number {
  if (lineMm2 <= 1.5) return 12;
  if (lineMm2 <= 4) return 16;
  return lineMm2 <= 6 ? 20 : 25;
}

/** The hole for the cable that ways are sought for, mm. */
const USUAL_HOLE_MM = joistHoleMm(USUAL_CABLE.lineMm2);

/** Deepest notch in a joist's edge, mm. Source: Approved Document A; BS 5268-2. */
export function deepestNotchMm(joistDepthMm: number): number {
  return joistDepthMm * notch.depthRatio;
}

/** Where along a joist a hole may be: a stretch from either support. Source: Approved Document A; BS 5268-2. */
export function drillableMm(span: JoistSpan): readonly [JoistWindow, JoistWindow] {
  return windowsOf(span, hole);
}

/** Where along a joist a notch may be: a stretch from either support. Source: Approved Document A; BS 5268-2. */
export function notchableMm(span: JoistSpan): readonly [JoistWindow, JoistWindow] {
  return windowsOf(span, notch);
}

function windowsOf(
  { fromMm, toMm }: JoistSpan,
  { fromRatio, toRatio }: (typeof joistCuts.rows)[number],
): readonly [JoistWindow, JoistWindow] {
  const [lowMm, highMm] = [Math.min(fromMm, toMm), Math.max(fromMm, toMm)];
  const spanMm = highMm - lowMm;
  return [
    [lowMm + spanMm * fromRatio, lowMm + spanMm * toRatio],
    [highMm - spanMm * toRatio, highMm - spanMm * fromRatio],
  ];
}

/**
 * Whether a joist may be drilled at all: the hole is no more than a quarter of its depth, and 50 mm are left over it and
 * under it. Source: Approved Document A; BS 7671 522.6.201.
 */
export function isDeepEnoughToDrill(joistDepthMm: number, holeMm: number): boolean {
  return holeMm <= largestJoistHoleMm(joistDepthMm) && joistDepthMm >= coveredDepthMm(holeMm);
}

/** The least depth of a joist that keeps 50 mm over and under a hole in its middle, mm. Source: BS 7671 522.6.201. */
export const coveredDepthMm = (holeMm: number): number => 2 * JOIST_COVER_MM + holeMm;

/**
 * What may be cut into a joist where a cable of usual size crosses it. Where the windows meet it is a hole, which keeps the
 * cable from nails; a joist that is too shallow for a covered hole may be notched alone, under a steel plate.
 *
 * @param span null where it is not known.
 */
export function judgeCrossing(floor: Floor, span: JoistSpan | null, atMm: number): JoistCut {
  const { build, joistDepthMm } = floor;
  if (span === null || build !== 'suspended-timber') return 'unknown';
  if (joistDepthMm === undefined || joistDepthMm > DEEPEST_JOIST_MM) return 'unknown';
  const isIn = ([fromMm, toMm]: JoistWindow): boolean => atMm >= fromMm - HAIR_MM && atMm <= toMm + HAIR_MM;
  const mayDrill = isDeepEnoughToDrill(joistDepthMm, USUAL_HOLE_MM);
  if (mayDrill && drillableMm(span).some(isIn)) return 'hole';
  return notchableMm(span).some(isIn) ? 'notch' : 'neither';
}
