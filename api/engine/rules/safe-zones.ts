import { cornerDistances } from '../plan/corners.ts';
import type { Plan } from '../plan/plan.ts';
import { positionOfPlace } from '../plan/position-of-place.ts';
import { wallFace } from '../plan/wall-face.ts';
import { wallWords } from '../plan/wall-words.ts';
import { DEEP_IN_WALL_MM, THROUGH_WALL_MM, ZONE_MM } from '../ways/concealed-cable.ts';
import { HALF_PLATE_HEIGHT_MM, halfPlateWidthMm } from './clearance.ts';
import type { Facts } from './facts.ts';
import { foundAccessories, newAccessories } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';
import { stretchesInWalls, type WallStretch } from './wall-stretch.ts';

/** A consumer unit's half width and height, mm. Common practice, no source. */
const HALF_BOARD_MM = 150;

type Message = 'inZone' | 'deep' | 'armoured' | 'sloping' | 'outside' | 'pathAssumed';

/** New cable hidden in a wall runs where the next person with a drill expects it. */
export const safeZones = rule<Message>({
  id: 'RT6',
  title: 'Cable zones in walls',
  source: 'BS 7671 522.6.202',
  messages: {
    inZone:
      'Every stretch in a wall is in line with an accessory, or within {limit} mm of the top or a corner.',
    deep: 'Every stretch in a wall is in a zone or {limit} mm from both faces.',
    armoured: 'The cable’s earthed armour stands for the zones.',
    sloping: 'A stretch slopes in {wall} and is not shown to be 50 mm from both faces.',
    outside:
      'A stretch in {wall} at {height} mm is in no zone: no accessory in line, {limit} mm from neither top nor corner.',
    pathAssumed: 'By the assumed path a stretch in {wall} is in no zone; the path is not known.',
  },
  remedies: {
    sloping: 'Run level or upright, in line with the accessory.',
    outside:
      'Bring the run in line with an accessory, or within 150 mm of the top of the wall or a corner; a blank plate on a box makes a zone.',
    pathAssumed: 'Settle where the run goes.',
  },
  couldFail: true,
  check: (facts) => {
    const plates = platesOnWalls(facts);
    const stretches = stretchesInWalls(facts);
    return facts.runs.flatMap<CheckResult<Message>>((run) => {
      const own = stretches.filter((stretch) => stretch.run.id === run.id);
      if (own.length === 0) return [];
      const subject = { subjectId: run.id, origin: 'scheme', unit: 'mm' } as const;
      if (run.cable.type === 'steel-wire-armoured')
        return [{ ...subject, outcome: 'passes', messageId: 'armoured' }];
      const stray = own.find((stretch) => !isDeep(stretch) && !isInZone(facts, plates, stretch));
      if (stray) return [{ ...subject, ...judgedStray(facts, stray) }];
      return own.some(isDeep)
        ? [{ ...subject, outcome: 'passes', messageId: 'deep', limit: DEEP_IN_WALL_MM }]
        : [{ ...subject, outcome: 'passes', messageId: 'inZone', limit: ZONE_MM }];
    });
  },
});

function judgedStray(
  facts: Facts,
  { segment, wall, heightLowMm }: WallStretch,
): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const values = { wall: wallWords(facts.plan, wall.wall.id), height: Math.round(heightLowMm) };
  if (segment.certainty === 'assumed') return { outcome: 'not-proven', messageId: 'pathAssumed', values };
  return segment.direction === 'sloping'
    ? { outcome: 'fails', messageId: 'sloping', limit: DEEP_IN_WALL_MM, values }
    : { outcome: 'fails', messageId: 'outside', limit: ZONE_MM, values };
}

function isDeep({ segment, wall }: WallStretch): boolean {
  const depthMm = segment.depthMm ?? 0;
  return depthMm >= DEEP_IN_WALL_MM && wall.wall.thicknessMm - depthMm >= DEEP_IN_WALL_MM;
}

function isInZone(facts: Facts, plates: readonly WallPlate[], stretch: WallStretch): boolean {
  const { segment, wall } = stretch;
  const heightMm = facts.plan.storeyById.get(wall.storeyId)?.storey.heightMm;
  if (heightMm !== undefined && stretch.heightLowMm >= heightMm - ZONE_MM) return true;
  if (isAtCorner(facts, stretch)) return true;
  if (segment.direction === 'sloping') return false;
  return plates.some((plate) => reachesInLine(facts.plan, plate, stretch));
}

function isAtCorner({ plan }: Facts, { segment, wall, alongLowMm, alongHighMm }: WallStretch): boolean {
  const side = segment.side ?? 'left';
  const reach = [alongLowMm, alongHighMm].map((alongMm) =>
    cornerDistances(plan, { wallId: wall.wall.id, side, alongMm }),
  );
  return (['leftMm', 'rightMm'] as const).some((hand) =>
    reach.every((corner) => corner[hand] !== null && corner[hand] <= ZONE_MM),
  );
}

/**
 * Whether a stretch is in line with an accessory on its face, which goes on over all walls that stand in one line; or on the other
 * face of a thin wall.
 */
function reachesInLine(plan: Plan, plate: WallPlate, stretch: WallStretch): boolean {
  const { segment, wall } = stretch;
  if (segment.direction !== 'vertical' && !isLevelWith(plate, stretch)) return false;
  const isThin =
    (plan.wallById.get(plate.wallId)?.wall.thicknessMm ?? Number.POSITIVE_INFINITY) <= THROUGH_WALL_MM;
  return sides
    .filter((side) => isThin || side === plate.side)
    .some((side) => {
      const there = wallFace(plan, plate.wallId, side)?.pieces.find(
        (piece) => piece.wallId === wall.wall.id && (segment.side ?? piece.side) === piece.side,
      );
      if (there === undefined) return false;
      if (segment.direction !== 'vertical') return true;
      // Along the face the plate stands where it does along its own wall.
      return [stretch.alongLowMm, stretch.alongHighMm].every(
        (mm) => Math.abs(there.startMm + there.sense * mm - plate.alongMm) <= plate.halfWidthMm,
      );
    });
}

const sides = ['left', 'right'] as const;

const isLevelWith = ({ heightMm, halfHeightMm }: WallPlate, reach: WallStretch): boolean =>
  reach.heightLowMm >= heightMm - halfHeightMm && reach.heightHighMm <= heightMm + halfHeightMm;

/** An accessory or a board seen on the face of its wall. */
interface WallPlate {
  readonly wallId: string;
  readonly side: 'left' | 'right';
  readonly alongMm: number;
  readonly heightMm: number;
  readonly halfWidthMm: number;
  readonly halfHeightMm: number;
}

function platesOnWalls(facts: Facts): readonly WallPlate[] {
  const accessories = [...foundAccessories(facts), ...newAccessories(facts)].map(({ position, kind }) => ({
    position,
    halfWidthMm: halfPlateWidthMm(kind),
    halfHeightMm: HALF_PLATE_HEIGHT_MM,
  }));
  const boards = facts.job.boards.map(({ place }) => ({
    position: place ? positionOfPlace(facts.plan, place) : null,
    halfWidthMm: HALF_BOARD_MM,
    halfHeightMm: HALF_BOARD_MM,
  }));
  return [...accessories, ...boards].flatMap(({ position, halfWidthMm, halfHeightMm }) =>
    position?.onWall ? [{ ...position.onWall, heightMm: position.heightMm, halfWidthMm, halfHeightMm }] : [],
  );
}
