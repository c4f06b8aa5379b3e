import { leavesBox } from '../circuit/moved-away.ts';
import { droppedCables } from '../connections/dropped-cables.ts';
import type { BackBox } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import { roomOfPosition } from '../plan/surroundings.ts';
import { counted } from '../rules/counted.ts';
import { type FloorOpening, floorOpening } from '../ways/floor-opening.ts';
import { openedFloors } from '../ways/opened-floors.ts';
import type { Segment } from '../ways/run.ts';
import type { FeltInRoom } from './document.ts';
import { type ThingsSaid, thingsSaid } from './thing-said.ts';

/** What is done in a room: counts and metres, before they are words. */
interface RoomWork {
  readonly opened: Map<FloorOpening, number>;
  rolled: boolean;
  chasedMm: number;
  channelMm: number;
  clippedMm: number;
  holes: number;
  trenchMm: number;
  readonly boxes: string[];
}

const noWork = (): RoomWork => ({
  opened: new Map(),
  rolled: false,
  chasedMm: 0,
  channelMm: 0,
  clippedMm: 0,
  holes: 0,
  trenchMm: 0,
  boxes: [],
});

/** A room by its name, a storey where a place is in no room, or what is left. */
type WorkByRoom = (key: string | null) => RoomWork;

const ELSEWHERE = 'Elsewhere';

/** Metres as a customer measures them, to half a metre, and never nothing. */
const metresSaid = (lengthMm: number): string => {
  const halves = Math.max(1, Math.round(lengthMm / 500));
  return halves === 1 ? 'about half a metre' : `about ${halves / 2} m`;
};

const openedSaid: Readonly<Record<FloorOpening, (places: string) => string>> = {
  'lift-board': (places) => `floorboards lifted in ${places} and put back`,
  'chipboard-trap': (places) => `a hatch cut in the floor in ${places} and closed again`,
  'open-fixed-floor': (places) =>
    `the floor opened in ${places}: its covering may not go back as it was, see what is not included`,
};

const rolledCoverings: readonly string[] = ['carpet', 'vinyl', 'laminate'];

function addFloors({ runs, plan }: Worked, work: WorkByRoom): void {
  for (const { floor, placeId } of openedFloors(runs, plan)) {
    const here = work(placeId);
    const how = floor === null ? 'lift-board' : floorOpening(floor);
    here.opened.set(how, (here.opened.get(how) ?? 0) + 1);
    if (floor !== null && rolledCoverings.includes(floor.covering)) here.rolled = true;
  }
}

/** The room that a stretch is seen in; of one through a wall the first of those that the wall belongs to. */
function roomOfStretch(plan: Worked['plan'], { from, to, wallId }: Segment): string | null {
  const spot = [from, to].find(({ onWall }) => onWall !== undefined) ?? from;
  const room = roomOfPosition(plan, spot) ?? roomOfPosition(plan, to);
  if (room !== null) return room.room.id;
  const beside = [...plan.roomById.values()].filter((one) =>
    one.room.walls.some(({ wall }) => wall === wallId),
  );
  return beside[0]?.room.id ?? null;
}

function addStretches({ runs, plan }: Worked, work: WorkByRoom): void {
  for (const segment of runs.flatMap(({ segments }) => segments)) {
    const here = (): RoomWork => work(roomOfStretch(plan, segment));
    switch (segment.medium) {
      case 'wall-chase':
        here().chasedMm += segment.lengthMm;
        break;
      case 'surface-channel':
        if (segment.inChannelOf === undefined) here().channelMm += segment.lengthMm;
        break;
      case 'surface-clipped':
        here().clippedMm += segment.lengthMm;
        break;
      case 'through-wall':
        here().holes++;
        break;
      case 'buried':
        here().trenchMm += segment.lengthMm;
        break;
    }
  }
}

function boxSaid({ action, build, pointId, finish, frameMm }: BackBox, { label }: ThingsSaid): string | null {
  const name = pointId === null ? 'The new fuse' : label(pointId);
  if (action === 're-box') return `${name}: taken off, and a deeper box let in behind it`;
  if (action === 'frame')
    return `${name}: a frame put under its plate, which then stands ${frameMm} mm further out from the wall`;
  if (action !== 'fit') return null;
  if (build === 'surface') return `${name}: on a box that stands out from the wall`;
  return `${name}: a hole cut into the wall for its box${finish === 'tile' ? ', through tiles' : ''}`;
}

function addBoxes({ things, plan, job }: Worked, work: WorkByRoom): void {
  const said = thingsSaid({ job, plan });
  for (const box of things.boxes) {
    const words = boxSaid(box, said);
    if (words === null) continue;
    const unit = things.fusedUnits.find(({ id }) => id === box.id);
    const position = box.pointId === null ? unit?.position : plan.positionOfPoint.get(box.pointId);
    work(roomOfPosition(plan, position)?.room.id ?? null).boxes.push(words);
  }
}

/** Points that are taken out, and those that a cable to one of them is taken off. */
function addTakenOut(worked: Worked, work: WorkByRoom): void {
  const { job, plan, proposed } = worked;
  const { label } = thingsSaid({ job, plan });
  const dropped = droppedCables(worked);
  const roomOf = (pointId: string): string | null =>
    roomOfPosition(plan, plan.positionOfPoint.get(pointId))?.room.id ?? null;
  for (const point of job.points) {
    if (!leavesBox(point, job.points)) continue;
    const joined = proposed.nodes.some(({ kind, pointId }) => kind === 'joint' && pointId === point.id);
    const how = joined ? ', its cables joined in its box' : '';
    work(roomOf(point.id)).boxes.push(`${point.label}: taken out${how}, and a blank plate put over its box`);
  }
  for (const { at, goneIds } of dropped) {
    if (at?.pointId == null) continue;
    const others = goneIds.map(label).join(' and ');
    work(roomOf(at.pointId)).boxes.push(
      `${label(at.pointId)}: opened, the cable to ${others} taken off, and closed again`,
    );
  }
}

function wordsOf(work: RoomWork): readonly string[] {
  const { opened, rolled, chasedMm, channelMm, clippedMm, holes, trenchMm, boxes } = work;
  return [
    ...boxes,
    ...(chasedMm > 0
      ? [`${metresSaid(chasedMm)} of channel cut into the plaster or wall for cable, and filled (dust)`]
      : []),
    ...(channelMm > 0
      ? [`${metresSaid(channelMm)} of plastic cover strip for cable, which stays in sight`]
      : []),
    ...(clippedMm > 0
      ? [`${metresSaid(clippedMm)} of cable clipped to the surface, which stays in sight`]
      : []),
    ...(holes > 0 ? [`${counted(holes, 'hole')} drilled through a wall`] : []),
    ...(rolled ? ['the floor covering rolled back and laid again'] : []),
    ...[...opened].map(([how, count]) => openedSaid[how](counted(count, 'place'))),
    ...(trenchMm > 0 ? [`${metresSaid(trenchMm)} of trench dug and filled`] : []),
  ];
}

/**
 * Where the work of a scheme is felt: rooms in the job's order, then storeys where a place is in no room that is drawn, then
 * what is in neither. Rooms in which nothing is opened, cut or fixed are left out.
 */
export function feltInRooms(worked: Worked): readonly FeltInRoom[] {
  const byKey = new Map<string, RoomWork>();
  const work: WorkByRoom = (key) => {
    const found = byKey.get(key ?? ELSEWHERE) ?? noWork();
    byKey.set(key ?? ELSEWHERE, found);
    return found;
  };
  addFloors(worked, work);
  addStretches(worked, work);
  addBoxes(worked, work);
  addTakenOut(worked, work);
  const { storeys } = worked.job;
  const names = [
    ...storeys.flatMap(({ rooms }) => rooms.map(({ id, name }) => [id, name] as const)),
    ...storeys.map(({ id, name }) => [id, `${name}, between rooms`] as const),
    [ELSEWHERE, ELSEWHERE] as const,
  ];
  return names.flatMap(([key, room]) => {
    const found = byKey.get(key);
    const words = found === undefined ? [] : wordsOf(found);
    return words.length === 0 ? [] : [{ room, words }];
  });
}
