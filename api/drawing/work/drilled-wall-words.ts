import type { Worked } from '#engine/connections/worked.ts';
import { type DrilledWall, drilledWalls, type HoleFace } from '#engine/work/drilled-walls.ts';
import type { FloorRows } from './floor-words.ts';

/** How the lengths of this list are to be read, and what comes before the drill. */
export const DRILLED_SAID =
  'Heights are above the finished floor, to the middle of the hole; lengths go along the face as one looks at it from the room named. Before drilling both faces are looked at, and what is behind each: cables, pipes, boxes, tiles, things hung up.';

const coreWords: Readonly<Record<DrilledWall['core'], string>> = {
  brick: 'brick',
  'hard-brick': 'hard brick',
  block: 'block',
  'aerated-block': 'aerated block',
  concrete: 'concrete: find its steel first',
  'timber-stud': 'timber studwork',
  'metal-stud': 'metal studwork',
  open: 'unknown build',
};

/** Nearer than this a hole is in the corner, mm. */
const IN_CORNER_MM = 5;

/** To the millimetre, as a point is marked out. */
const wholeMm = (mm: number): string => `${Math.round(mm)} mm`;

/** The nearer corner, and the nearest door: "600 mm from the left-hand corner, 130 mm from the door to its right". */
function alongWords({ corners: { leftMm, rightMm }, door }: HoleFace): string {
  const isLeft = rightMm === null || (leftMm !== null && leftMm <= rightMm);
  const cornerMm = isLeft ? leftMm : rightMm;
  const hand = isLeft ? 'left' : 'right';
  const corner =
    cornerMm === null
      ? []
      : cornerMm < IN_CORNER_MM
        ? [`in the ${hand}-hand corner`]
        : [`${wholeMm(cornerMm)} from the ${hand}-hand corner`];
  // The door stands to that hand of the hole.
  const frame = door === null ? [] : [`${wholeMm(door.mm)} from the door to its ${door.hand}`];
  const said = [...corner, ...frame];
  return said.length === 0 ? 'no corner drawn: see the plan' : said.join(', ');
}

const heightWords = (heightMm: number): string =>
  heightMm < 0 ? `${wholeMm(-heightMm)} under the floor` : `${wholeMm(heightMm)} above the floor`;

const faceName = ({ roomName }: HoleFace): string => roomName ?? 'outside, or where no room is drawn';

function noteOf({ faces: [, other], isParty, isExternal }: DrilledWall): string {
  const settled = isParty
    ? ' PARTY WALL: not drilled before that is settled.'
    : isExternal
      ? ' Outside wall: falling outwards, sleeved.'
      : '';
  return `comes out in ${faceName(other)}, ${alongWords(other)}.${settled}`;
}

/** The walls that are drilled, storey by storey and room by room, from the side that the cable comes from. */
export function drilledWallRows(worked: Worked): readonly FloorRows[] {
  const byRoom = new Map<string, FloorRows['rows'][number][]>();
  for (const hole of drilledWalls(worked)) {
    const [face] = hole.faces;
    const storey = worked.plan.storeyById.get(hole.storeyId)?.storey.name ?? '';
    const title = [storey, faceName(face)].filter((words) => words !== '').join(', ');
    const row = {
      mark: hole.mark,
      cables: hole.cables.join(', '),
      where: `${heightWords(hole.heightMm)}, ${alongWords(face)}`,
      what: `${hole.bitMm} mm hole through ${Math.round(hole.thicknessMm)} mm of ${coreWords[hole.core]}`,
      note: noteOf(hole),
    };
    byRoom.set(title, [...(byRoom.get(title) ?? []), row]);
  }
  return [...byRoom].map(([title, rows]) => ({ title, rows }));
}
