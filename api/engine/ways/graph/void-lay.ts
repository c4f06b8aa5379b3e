import type { Floor } from '#model/building.ts';
import { isGuess } from '../../plan/is-guess.ts';
import type { PlanRoom, PlanStorey } from '../../plan/plan.ts';
import type { SegmentCertainty } from '../run.ts';
import { type Lay, openLay } from '../segment.ts';

/** How cable lies under a floor, along its joists or across them. */
export function floorLay(floor: Floor, isAlong: boolean): Lay {
  const medium = floor.build === 'concrete' ? 'void-open' : isAlong ? 'void-along' : 'void-across';
  const insulation = floor.insulationMm === undefined ? null : floor.insulationMm > 0 ? 'touching' : 'none';
  return { ...openLay(medium, floorCertainty(floor)), insulation };
}

/** A void is only assumed where its build, its joists' direction or whether it can be opened is not known. */
function floorCertainty(floor: Floor): SegmentCertainty {
  if (floor.build === 'concrete') return 'derived';
  const fields = ['build', 'joistsRunDeg', 'liftable'] as const;
  const known = fields.every((field) => floor[field] !== undefined && !isGuess(floor.certainty?.[field]));
  return known && floor.liftable === true ? 'derived' : 'assumed';
}

/** How cable lies in a loft, over a room or anywhere else over the storey. */
export function loftLay({ storey }: PlanStorey, room: PlanRoom | null): Lay {
  const insulationMm = (room?.room.ceiling ?? storey.ceiling).insulationMm;
  const insulation = insulationMm === undefined ? null : insulationMm > 0 ? 'touching' : 'none';
  return { ...openLay('loft', 'derived'), insulation };
}

/** Insulation in a void up to which flat cable keeps 20 A, mm. Source: BS 7671 Table 4D5, method 100 (21 A) against 101 (17 A). */
const COOL_UP_TO_MM = 100;

/** Whether cable in a void lies so warm that 2.5 mm² cable does not carry the 20 A that a ring and its spurs ask for. */
export const isWarm = (insulationMm: number | undefined): boolean => (insulationMm ?? 0) > COOL_UP_TO_MM;
