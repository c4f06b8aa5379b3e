import type { Wall } from '#model/building.ts';
import type { Worked } from '../connections/worked.ts';
import { alongWallMm, offWallMm } from '../plan/along-wall.ts';
import { cornerDistances } from '../plan/corners.ts';
import type { CornerDistances, Plan, PlanWall } from '../plan/plan.ts';
import type { WallSpot } from '../plan/plane.ts';
import { remembered } from '../plan/remembered.ts';
import { roomOfWallFace } from '../plan/surroundings.ts';
import { type HoledStretch, ownHoles } from '../takeoff/own-holes.ts';
import { flatCableSize } from '../ways/flat-cable-size.ts';
import { joistHoleMm } from '../ways/joist-window.ts';
import type { Run } from '../ways/run.ts';
import { freeMarks, referencesOf } from './references.ts';

/** One face of a wall where a hole comes out. */
export interface HoleFace {
  /** Null where no room looks at it: outside, or nobody drew what is there. */
  readonly roomName: string | null;
  /** As one faces the wall from that side, mm; null where the face ends without a corner. */
  readonly corners: CornerDistances;
  /** The nearest door, or opening, of that wall: how far off its nearer edge is, mm, and on which hand; null: none. */
  readonly door: { readonly mm: number; readonly hand: 'left' | 'right' } | null;
}

/** A wall that is drilled right through for new cable, at one place. */
export interface DrilledWall {
  /** `D1`, `D2` … in the order of the work: cable by cable, along it. */
  readonly mark: string;
  readonly storeyId: string;
  readonly wallId: string;
  readonly core: Wall['core'];
  readonly thicknessMm: number;
  readonly isParty: boolean;
  readonly isExternal: boolean;
  /** Of the hole's middle above the finished floor, mm; less than nought under it. */
  readonly heightMm: number;
  /** Marks of the cables that go through it. */
  readonly cables: readonly string[];
  /** What is drilled, mm across. */
  readonly bitMm: number;
  /** The face that the cable comes from, then the other. */
  readonly faces: readonly [HoleFace, HoleFace];
}

/**
 * Every hole through a wall that a scheme drills, each once, as labour counts it, with where a tape finds it on both faces. A hole that cables
 * share is one; a stretch whose wall is not on the plan has no place to be told, and is left out.
 */
export const drilledWalls = remembered((worked: Worked): readonly DrilledWall[] => {
  const references = referencesOf(worked);
  const { job, plan, runs } = worked;
  const holes = ownHoles(runs).flatMap((hole) => {
    const wall = plan.wallById.get(hole.segment.wallId ?? '');
    return hole.segment.medium === 'through-wall' && wall !== undefined ? [{ hole, wall }] : [];
  });
  const marks = freeMarks('D', holes.length, job);
  return holes.map(({ hole, wall }, i) => ({
    mark: marks[i] ?? '',
    storeyId: wall.storeyId,
    wallId: wall.wall.id,
    core: wall.wall.core,
    thicknessMm: wall.wall.thicknessMm,
    isParty: wall.wall.party === true,
    isExternal: wall.wall.external,
    heightMm: hole.segment.from.heightMm,
    cables: hole.sharedBy.map(references.cable),
    bitMm: bitMm(cablesOf(runs, hole)),
    faces: facesOf(plan, wall, hole),
  }));
});

const cablesOf = (runs: readonly Run[], { sharedBy }: HoledStretch): readonly Run['cable'][] =>
  runs.filter(({ id }) => sharedBy.includes(id)).map(({ cable }) => cable);

/** Bits for masonry as they are sold, mm. From memory. */
const BITS_MM = [12, 16, 20, 25, 32, 40, 52] as const;
/** What a cable wants of play in a hole, mm. Common practice, no source. */
const PLAY_MM = 2;

/**
 * The bit for so many flat cables one upon the other, mm: for one as in a joist, for more the next that takes them with a little play.
 * Common practice, no source.
 */
export function bitMm(cables: readonly Pick<Run['cable'], 'lineMm2'>[]): number {
  const sizes = cables.map(({ lineMm2 }) => flatCableSize(lineMm2));
  const wideMm = Math.max(0, ...sizes.map(({ widthMm }) => widthMm));
  const highMm = sizes.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0);
  const leastMm = Math.max(
    ...cables.map(({ lineMm2 }) => joistHoleMm(lineMm2)),
    cables.length > 1 ? Math.hypot(wideMm, highMm) + PLAY_MM : 0,
  );
  return BITS_MM.find((each) => each >= leastMm) ?? Math.ceil(leastMm);
}

function facesOf(plan: Plan, wall: PlanWall, { segment }: HoledStretch): DrilledWall['faces'] {
  const comesFrom = offWallMm(wall, segment.from.at) >= offWallMm(wall, segment.to.at) ? 'left' : 'right';
  const alongMm = alongWallMm(wall, segment.from.at);
  const faceOn = (side: WallSpot['side']): HoleFace => {
    const spot: WallSpot = { wallId: wall.wall.id, side, alongMm };
    return {
      roomName: roomOfWallFace(plan, spot)?.room.name ?? null,
      corners: cornerDistances(plan, spot),
      door: nearestDoor(wall, spot),
    };
  };
  return [faceOn(comesFrom), faceOn(comesFrom === 'left' ? 'right' : 'left')];
}

const isPassage = ({ kind }: Wall['openings'][number]): boolean => kind === 'door' || kind === 'opening';

function nearestDoor({ wall }: PlanWall, { alongMm: at, side }: WallSpot): HoleFace['door'] {
  const edges = wall.openings
    .filter(isPassage)
    .map(({ alongMm, widthMm }) =>
      alongMm > at ? { mm: alongMm - at, isOn: true } : { mm: at - alongMm - widthMm, isOn: false },
    )
    .toSorted((a, b) => a.mm - b.mm);
  const [nearest] = edges;
  if (nearest === undefined) return null;
  // On the left face someone looking at the wall has its `to` end on the left hand.
  return { mm: Math.max(0, nearest.mm), hand: nearest.isOn === (side === 'left') ? 'left' : 'right' };
}
