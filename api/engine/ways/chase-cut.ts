import { chaseDepths } from '#data/standards/chase-depths.ts';
import type { PlanWall } from '../plan/plan.ts';
import type { Segment } from './run.ts';

/** How deep a chase goes into the masonry of a wall, and how deep it may. */
export interface ChaseCut {
  /** The leaf that is cut, without its plaster, mm. */
  readonly leafMm: number;
  /** Deepest that the guidance allows in it this way, mm. */
  readonly limitMm: number;
  /** Into the leaf, behind plaster or board, mm; null where nobody told the cable's depth. */
  readonly intoMm: number | null;
  /** Whether it lies in the gap between a board and the masonry: the board is cut along it, the masonry is not. */
  readonly isBehindBoard: boolean;
}

/** Plaster on brick or block, mm: 13 is the usual two coats. Common practice, no source. */
const PLASTER_MM = 13;
/** What a flat 2.5 mm² cable takes of the chase behind its face, mm. Common practice, no source. */
const CABLE_MM = 6;
/** A leaf of brick or block, mm, where a wall is thick enough to be two of them. */
const LEAF_MM = 100;
const TWO_LEAVES_MM = 220;

/**
 * Deepest chase in a leaf of masonry, mm: a third of its thickness upright, a sixth level.
 * Source: Approved Document A, section 2C.
 */
export function deepestChaseMm(leafMm: number, direction: Segment['direction']): number {
  const [upright, level] = chaseDepths.rows;
  // A slope weakens the wall as a level chase does at worst.
  return leafMm / (direction === 'vertical' ? upright : level).leafParts;
}

/** The chase that a stretch lies in; null for one that is not chased, and in studwork. */
export function chaseCut(wall: PlanWall | undefined, segment: Segment): ChaseCut | null {
  if (wall === undefined || segment.medium !== 'wall-chase') return null;
  if (wall.wall.core.endsWith('stud') || wall.wall.core === 'open') return null;
  const leafMm = leafOf(wall);
  const { depthMm, oneChase, side } = segment;
  const isBehindBoard = depthMm !== null && fitsBehindBoard(wall, side, depthMm);
  // Behind a board cables lie side by side; in a slot they ask for a deeper one.
  const deeperMm = isBehindBoard ? 0 : (oneChase?.deeperMm ?? 0);
  return {
    leafMm,
    limitMm: deepestChaseMm(leafMm, segment.direction),
    intoMm: depthMm === null ? null : Math.max(0, depthMm + deeperMm + CABLE_MM - coatMm(wall, side)),
    isBehindBoard,
  };
}

/**
 * Whether cable at a depth below a lined face lies in the gap behind its board: a board on dabs or battens whose gap takes it. Where
 * nobody told the gap none is counted on. Common practice, no source.
 */
export function fitsBehindBoard(wall: PlanWall, side: Segment['side'], depthMm: number): boolean {
  const isLined = wall.wall.faces[side ?? 'left'].lining !== 'none';
  return isLined && depthMm + CABLE_MM <= coatMm(wall, side);
}

/** What stands before the masonry on the side that is cut: plaster, or board and gap. */
function coatMm({ wall }: PlanWall, side: 'left' | 'right' | null): number {
  const face = wall.faces[side ?? 'left'];
  if (face.lining !== 'none') return PLASTER_MM + (face.gapMm ?? 0);
  return face.finish === 'bare' ? 0 : PLASTER_MM;
}

function leafOf(plan: PlanWall): number {
  const { thicknessMm, core, faces } = plan.wall;
  if (core !== 'concrete' && thicknessMm >= TWO_LEAVES_MM) return LEAF_MM;
  const coats = [faces.left, faces.right].filter((face) => face.finish !== 'bare').length;
  return Math.max(0, thicknessMm - coats * PLASTER_MM);
}
