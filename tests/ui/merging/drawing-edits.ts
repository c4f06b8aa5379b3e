import fc from 'fast-check';
import { current, type Draft, produce } from 'immer';
import type { Job } from '#model/job.ts';
import { pick } from '../edits/random-edits.ts';

type Numbers = readonly [which: number, a: number, b: number];
type Change = (storey: Draft<Job>['storeys'][number], numbers: Numbers, id: string, job: Draft<Job>) => void;

/** A wall is moved at one end. */
const moveEnd: Change = ({ walls }, [, a, b]) => {
  const wall = pick(walls, a);
  if (wall !== undefined) wall[b % 2 === 0 ? 'from' : 'to'] = [b * 10, a * 10];
};

/** A wall is split in the middle; what stood on its second half stands on the new wall. */
const split: Change = ({ walls, rooms }, [, a], id, job) => {
  const wall = pick(walls, a);
  if (wall === undefined) return;
  const [x1, y1] = wall.from;
  const [x2, y2] = wall.to;
  const middle: [number, number] = [(x1 + x2) / 2, (y1 + y2) / 2];
  const halfMm = Math.round(Math.hypot(x2 - x1, y2 - y1) / 2);
  const { faces, ...facts } = current(wall);
  walls.push({ ...facts, faces: { ...faces }, openings: [], id, from: middle });
  wall.to = middle;
  for (const room of rooms) {
    const at = room.walls.findIndex((each) => each.wall === wall.id);
    const found = room.walls[at];
    if (found !== undefined) room.walls.splice(at + 1, 0, { ...found, wall: id });
  }
  for (const { place } of job.points)
    if (place !== undefined && 'wall' in place && place.wall === wall.id && place.alongMm > halfMm) {
      place.wall = id;
      place.alongMm -= halfMm;
    }
};

/** A wall goes, with all that stands on it; points go off the plan. */
const removeWall: Change = (storey, [, a], _, job) => {
  const wall = pick(storey.walls, a);
  if (wall === undefined) return;
  const used = JSON.stringify({ ...job, storeys: [] });
  storey.walls = storey.walls.filter(({ id }) => id !== wall.id);
  for (const room of storey.rooms) room.walls = room.walls.filter((each) => each.wall !== wall.id);
  for (const point of job.points)
    if (point.place !== undefined && 'wall' in point.place && point.place.wall === wall.id)
      delete point.place;
  // What else names the wall keeps it there.
  const names = JSON.stringify({ ...job, storeys: [] });
  if (names.includes(`"${wall.id}"`) && used.includes(`"${wall.id}"`)) {
    storey.walls.push(wall);
  }
};

const renameRoom: Change = ({ rooms }, [, a, b]) => {
  const room = pick(rooms, a);
  if (room !== undefined) room.name = `Room ${b}`;
};

const addRoom: Change = ({ rooms, walls }, [, a], id) => {
  const bounds = walls.slice(a % 3, 3 + (a % 3)).map((wall) => ({ wall: wall.id, side: 'left' as const }));
  rooms.push({ id, name: `Room ${id}`, use: 'store', block: 'main', walls: bounds });
};

const removeRoom: Change = (storey, [, a]) => {
  storey.rooms = storey.rooms.filter((_, index) => index !== a % (storey.rooms.length + 1));
};

const addOpening: Change = ({ walls }, [, a, b], id) => {
  const sizes = { alongMm: b, widthMm: 800, sillMm: 0, headMm: 2040 };
  pick(walls, a)?.openings.push({ id, kind: 'door', ...sizes });
};

const moveOpening: Change = ({ walls }, [, a, b]) => {
  const opening = pick(
    walls.flatMap(({ openings }) => openings),
    a,
  );
  if (opening !== undefined) opening.alongMm = b * 7;
};

const changes = [moveEnd, split, removeWall, renameRoom, addRoom, removeRoom, addOpening, moveOpening];

/** Any sequence of changes to how a house is drawn, by numbers. */
export const drawingSequence = fc.array(fc.tuple(fc.nat(changes.length - 1), fc.nat(200), fc.nat(200)), {
  maxLength: 6,
});

/** A job after such a sequence; what it makes has ids that begin with a word. */
export const afterDrawing = (start: Job, list: readonly Numbers[], idsBegin: string): Job =>
  list.reduce(
    (job, numbers, step) =>
      produce(job, (draft) => {
        const storey = pick(draft.storeys, numbers[1] >> 3);
        if (storey !== undefined) pick(changes, numbers[0])?.(storey, numbers, `${idsBegin}${step}`, draft);
      }),
    start,
  );
