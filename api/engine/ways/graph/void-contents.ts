import { placeByWall } from '../../plan/along-wall.ts';
import { type BreastBand, breastsOf } from '../../plan/breast.ts';
import type { Plan, PlanRoom, PlanWall } from '../../plan/plan.ts';
import { remembered } from '../../plan/remembered.ts';
import { roomsOfStorey, wallsOfStorey } from '../../plan/surroundings.ts';
import { inAxes } from '../joist-axes.ts';
import type { WallBand } from '../path-cuts.ts';
import type { Axis } from './line.ts';
import { obstaclesOf } from './obstacles.ts';
import { Strips } from './strips.ts';
import type { VoidFrame } from './void-frame.ts';

/** An outline in a void's frame. */
export type FrameOutline = readonly (readonly [number, number])[];

/** What a straight line in a void may meet: more than it does meet, never less. */
export interface VoidContents {
  readonly rooms: readonly { readonly room: PlanRoom; readonly outline: FrameOutline }[];
  readonly walls: readonly PlanWall[];
  readonly breasts: readonly { readonly wall: PlanWall; readonly band: BreastBand }[];
  readonly wells: readonly FrameOutline[];
  readonly obstacles: readonly FrameOutline[];
}

/** Things are kept by strips so wide, mm. */
const STRIP_MM = 1000;
/** Lines are looked at no further to the side than this, mm. */
const ASIDE_MM = 10;

/** Kept for as long as the plan: every line in a void asks. */
const contentsByVoid = remembered((_: Plan) => new Map<string, ContentsByAxis>());

/** What may be met along a coordinate of a void, or up to 10 mm to the side of it. */
export function contentsAlong(
  plan: Plan,
  { frame, axis, fixedMm }: { readonly frame: VoidFrame; readonly axis: Axis; readonly fixedMm: number },
): VoidContents {
  const known = contentsByVoid(plan);
  const key = `${frame.key} ${frame.space.levelMm}`;
  const contents = known.get(key) ?? contentsOf(plan, frame);
  known.set(key, contents);
  const { rooms, walls, breasts, wells, obstacles } = contents[axis];
  return {
    rooms: rooms.at(fixedMm),
    walls: walls.at(fixedMm),
    breasts: breasts.at(fixedMm),
    wells: wells.at(fixedMm),
    obstacles: obstacles.at(fixedMm),
  };
}

type Kept = { readonly [K in keyof VoidContents]: Strips<VoidContents[K][number]> };
type ContentsByAxis = Readonly<Record<Axis, Kept>>;

const nothingKept = (): Kept => ({
  rooms: new Strips(STRIP_MM),
  walls: new Strips(STRIP_MM),
  breasts: new Strips(STRIP_MM),
  wells: new Strips(STRIP_MM),
  obstacles: new Strips(STRIP_MM),
});

function contentsOf(plan: Plan, frame: VoidFrame): ContentsByAxis {
  const contents = { 0: nothingKept(), 1: nothingKept() };
  const { storeyId } = frame.space;
  const keep = <K extends keyof Kept>(
    kind: K,
    outline: FrameOutline,
    thing: VoidContents[K][number],
  ): void => {
    for (const axis of [0, 1] as const) {
      const fixed = outline.map((at) => at[axis === 0 ? 1 : 0]);
      const strips = contents[axis][kind] as Strips<VoidContents[K][number]>;
      strips.add(Math.min(...fixed) - ASIDE_MM, Math.max(...fixed) + ASIDE_MM, thing);
    }
  };
  for (const room of roomsOfStorey(plan, storeyId)) {
    const outline = room.outline.map((at) => inAxes(frame, at));
    if (outline.length > 0) keep('rooms', outline, { room, outline });
  }
  for (const wall of wallsOfStorey(plan, storeyId)) {
    const halfMm = wall.wall.thicknessMm / 2;
    keep('walls', bandIn(frame, wall, { along: [0, wall.lengthMm], off: [-halfMm, halfMm] }), wall);
    for (const band of breastsOf(wall)) keep('breasts', bandIn(frame, wall, band), { wall, band });
  }
  if (frame.space.kind !== 'loft') {
    for (const outline of shutOutlines(plan, frame)) keep('wells', outline, outline);
    for (const outline of obstaclesIn(plan, frame)) keep('obstacles', outline, outline);
  }
  return contents;
}

const bandIn = (frame: VoidFrame, wall: PlanWall, { along, off }: WallBand): FrameOutline =>
  along.flatMap((alongMm) => off.map((offMm) => inAxes(frame, placeByWall(wall, alongMm, offMm))));

/** The stairwells of a storey. */
const shutOutlines = (plan: Plan, frame: VoidFrame): readonly FrameOutline[] =>
  (plan.storeyById.get(frame.space.storeyId)?.storey.stairwells ?? []).map((outline) =>
    outline.map((at) => inAxes(frame, at)),
  );

/** The gas pipes and meters that reach to the level of a void. */
function obstaclesIn(plan: Plan, frame: VoidFrame): readonly FrameOutline[] {
  const { storeyId, levelMm } = frame.space;
  const heightMm = levelMm - (plan.storeyById.get(storeyId)?.storey.floorLevelMm ?? 0);
  return obstaclesOf(plan, storeyId)
    .filter(({ roomId, fromMm, toMm }) => roomId === null && heightMm >= fromMm && heightMm <= toMm)
    .map(({ lowX, lowY, highX, highY }) =>
      (
        [
          [lowX, lowY],
          [highX, lowY],
          [highX, highY],
          [lowX, highY],
        ] as const
      ).map((at) => inAxes(frame, at)),
    );
}
