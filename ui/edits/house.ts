import { produce } from 'immer';
import type { Opening, Room, Side, Storey, Wall } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { type Beside, beginningBeside, openThickness, setThickness, sideBeside } from '../house/beside.ts';
import { type Drawing, done, type Outcome, type Refused, refused } from '../house/drawing.ts';
import { fixtureWords } from '../house/fixture-kinds.ts';
import { firstCorner, type HouseCorner, inCorner } from '../house/house-corners.ts';
import { type CopiedParts, storeyAbove } from '../house/next-storey.ts';
import { placeRoom } from '../house/place-room.ts';
import { joinRooms, removeRoom } from '../house/remove-room.ts';
import { type Reshape, reshape } from '../house/reshape.ts';
import { setSideLength } from '../house/room-sides.ts';
import { type Partition, splitRoom } from '../house/split-room.ts';
import { takeToldThickness } from '../house/told-thickness.ts';
import { tracedOutline } from '../house/traced-outline.ts';
import { leftOf, minus, plus, times, unit, type Vector } from '../house/vector.ts';
import type { WallKind } from '../house/wall-kinds.ts';
import { wallLengthMm } from '../house/wall-line.ts';
import type { JobEdit } from '../job-events.ts';
import { newId } from '../new-id.ts';

/** A change of the house: an edit that can be made, or why it cannot. */
export type HouseEdit = { readonly ok: true; readonly edit: JobEdit } | Refused;

/** The same ids again each time that a change is made on a draft: it is tried first, and made once more in earnest. */
function repeatable(): () => () => string {
  const ids: string[] = [];
  return () => {
    let next = 0;
    return () => {
      const id = ids[next] ?? newId();
      ids[next] = id;
      next += 1;
      return id;
    };
  };
}

/** Tries a change on a copy; the edit then does the same to the job. */
function houseEdit(
  job: Job,
  storeyId: string,
  label: string,
  draw: (drawing: Drawing) => Outcome,
): HouseEdit {
  const ids = repeatable();
  const made = (draft: Job): Outcome => {
    const storey = draft.storeys.find(({ id }) => id === storeyId);
    return storey === undefined
      ? refused('That storey is not there any more.')
      : draw({ job: draft, storey, newId: ids() });
  };
  let outcome: Outcome = done;
  produce(job, (draft) => {
    outcome = made(draft as Job);
  });
  // Told apart here, since the compiler does not see that the recipe ran.
  const tried = outcome as Outcome;
  return tried.ok ? { ok: true, edit: { label, change: (draft) => void made(draft as Job) } } : tried;
}

/** A room as it is entered: where it goes, and its sides. */
export interface NewRoom {
  readonly name: string;
  readonly use: Room['use'];
  /** Its inner outline, anticlockwise, from the origin, its first side along x. */
  readonly outline: readonly Vector[];
  /** Null for one that stands by itself. */
  readonly beside: Beside | null;
  /** For a room within walls that are there already: in which corner of theirs; absent for the first: `firstCorner`. */
  readonly corner?: HouseCorner;
  /** How thick the wall between is to be, mm, where that is open; null leaves it. */
  readonly betweenMm: number | null;
  readonly walls: WallKind;
}

/** Draws a room by its inner sides, beside a wall of another or by itself. */
export function drawRoom(job: Job, storeyId: string, asked: NewRoom): HouseEdit {
  const id = newId();
  return houseEdit(job, storeyId, `Draw ${asked.name}`, (drawing) => {
    const { beside, betweenMm } = asked;
    if (beside !== null && betweenMm !== null && isOpenBetween(drawing.storey, beside, asked.outline)) {
      const kept = beside.side === 'left' ? 'right' : 'left';
      const thick = setThickness(drawing, { wallId: beside.wallId, kept, thicknessMm: betweenMm });
      if (!thick.ok) return thick;
    }
    const outline = placed(drawing.storey, asked);
    if (outline === null) return refused('The room beside it does not close: mend its walls first.');
    const room = { id, name: asked.name, use: asked.use, block: 'main' as const };
    return placeRoom(drawing, { room, outline, walls: asked.walls });
  });
}

/** Whether the wall between may be given another thickness with a room of that outline. */
function isOpenBetween(storey: Storey, beside: Beside, [first, second]: readonly Vector[]): boolean {
  if (first === undefined || second === undefined) return false;
  const along = sideBeside(storey, beside, Math.hypot(...minus(second, first)));
  return along !== null && openThickness(storey, beside, along) !== null;
}

/** A room as it is traced: its corners as they were tapped. */
export type TracedRoom = Pick<NewRoom, 'name' | 'use' | 'walls'> & { readonly corners: readonly Vector[] };

/** Draws a room where its inner corners were tapped, in line with what is drawn there. */
export function traceRoom(job: Job, storeyId: string, { name, use, walls, corners }: TracedRoom): HouseEdit {
  const id = newId();
  return houseEdit(job, storeyId, `Trace ${name}`, (drawing) => {
    const outline = tracedOutline(drawing.storey, corners);
    if (outline === null)
      return refused(
        'Tap three corners at least, each where the room turns: two of these sides run in one line.',
      );
    const thick = takeToldThickness(drawing, outline);
    if (!thick.ok) return thick;
    return placeRoom(drawing, { room: { id, name, use, block: 'main' }, outline, walls });
  });
}

/** A free room begins to the right of all that is drawn, a metre off; one beside a wall where that says. */
function placed(storey: Storey, { outline, beside, corner }: NewRoom): readonly Vector[] | null {
  const [first, second] = outline;
  if (first === undefined || second === undefined) return null;
  const isFirst = storey.rooms.length === 0;
  const within = corner ?? (isFirst && storey.walls.length > 0 ? firstCorner(storey) : undefined);
  if (beside === null && within !== undefined) return inCorner(outline, within);
  if (beside === null) {
    const right = storey.walls.flatMap(({ from, to, thicknessMm }) => [
      from[0] + thicknessMm,
      to[0] + thicknessMm,
    ]);
    const corner: Vector = [right.length === 0 ? 0 : Math.max(...right) + 1000, 0];
    return outline.map((at) => plus(corner, minus(at, first)));
  }
  const begin = beginningBeside(storey, beside, Math.hypot(second[0] - first[0], second[1] - first[1]));
  if (begin === null) return null;
  const along = unit(begin.along);
  return outline.map((at) => {
    const [x, y] = minus(at, first);
    return plus(begin.corner, plus(times(along, x), times(leftOf(along), y)));
  });
}

/** Gives a side of a room another length. */
export const changeSide = (
  job: Job,
  storeyId: string,
  room: Room,
  side: { readonly at: number; readonly lengthMm: number },
): HouseEdit =>
  houseEdit(job, storeyId, `Measure ${room.name}`, (drawing) =>
    setSideLength(drawing, { roomId: room.id, ...side }),
  );

/** What moving a part is called. */
function reshapeLabel(job: Job, storeyId: string, asked: Reshape): string {
  if (asked.part === 'wall') return 'Move a wall';
  if (asked.part === 'corner') return 'Move a corner';
  if (asked.part === 'stretch') return 'Move part of a wall';
  const fixtures = job.storeys.find(({ id }) => id === storeyId)?.fixtures ?? [];
  const kind = fixtures.find(({ id }) => id === asked.fixtureId)?.kind;
  return kind === undefined ? 'Move a fixture' : `Move the ${fixtureWords[kind].toLowerCase()}`;
}

/**
 * Moves a wall or a part of one, a corner, or what is fixed.
 *
 * @param group steps that follow each other under one name are one step back; absent: a step of its own.
 */
export function reshapeHouse(job: Job, storeyId: string, asked: Reshape, group?: string): HouseEdit {
  const made = houseEdit(job, storeyId, reshapeLabel(job, storeyId, asked), (drawing) =>
    reshape(drawing, asked),
  );
  return made.ok && group !== undefined ? { ok: true, edit: { ...made.edit, group } } : made;
}

/** Puts a wall across a room. */
export const partRoom = (
  job: Job,
  storeyId: string,
  room: Room,
  partition: Omit<Partition, 'roomId' | 'parted'> & { readonly name: string; readonly use: Room['use'] },
): HouseEdit => {
  const { name, use, ...rest } = partition;
  const parted = { id: newId(), name, use };
  return houseEdit(job, storeyId, `Part ${room.name}`, (drawing) =>
    splitRoom(drawing, { ...rest, roomId: room.id, parted }),
  );
};

/** Makes two rooms one. */
export const uniteRooms = (job: Job, storeyId: string, kept: Room, gone: Room): HouseEdit =>
  houseEdit(job, storeyId, `Make ${kept.name} and ${gone.name} one room`, (drawing) =>
    joinRooms(drawing, kept.id, gone.id),
  );

/** Takes a room away. */
export const takeRoom = (job: Job, storeyId: string, room: Room): HouseEdit =>
  houseEdit(job, storeyId, `Remove ${room.name}`, (drawing) => removeRoom(drawing, room.id));

/** Makes a wall, with all in its line, so thick; the face on a side stays. */
export const changeThickness = (
  job: Job,
  storeyId: string,
  wall: { readonly wallId: string; readonly kept: Side; readonly thicknessMm: number },
): HouseEdit =>
  houseEdit(job, storeyId, 'Change how thick a wall is', (drawing) => {
    const outcome = setThickness(drawing, wall);
    for (const one of drawing.storey.walls)
      if (one.id === wall.wallId && one.certainty?.thicknessMm === 'assumed')
        delete one.certainty.thicknessMm;
    return outcome;
  });

/** Sets a room's name or use. */
export const setRoomFact = <K extends 'name' | 'use' | 'block'>(
  storeyId: string,
  room: Room,
  fact: K,
  value: Room[K],
): JobEdit => ({
  label: `Change ${room.name}`,
  change: ({ storeys }) => {
    const found = storeys.find(({ id }) => id === storeyId)?.rooms.find(({ id }) => id === room.id);
    if (found === undefined) return;
    found[fact] = value;
    if (found.certainty?.[fact] === 'assumed') delete found.certainty[fact];
  },
});

/** The facts of a wall that a form sets by themselves. */
export type WallFact = 'core' | 'external' | 'party' | 'structural' | 'insulated';

/** Changes walls of a storey: what is said of them counts as seen. */
export const setWallFacts = (
  storeyId: string,
  wallIds: readonly string[],
  facts: Partial<Pick<Wall, WallFact>>,
): JobEdit => ({
  label: wallIds.length === 1 ? 'Change a wall' : `Change ${wallIds.length} walls`,
  change: ({ storeys }) => {
    for (const wall of storeys.find(({ id }) => id === storeyId)?.walls ?? []) {
      if (!wallIds.includes(wall.id)) continue;
      Object.assign(wall, facts);
      for (const fact of Object.keys(facts)) delete wall.certainty?.[fact];
    }
  },
});

/** Changes the faces of walls that look into a room. */
export const setFaceFacts = (
  storeyId: string,
  faces: readonly { readonly wallId: string; readonly side: Side }[],
  facts: Partial<Wall['faces'][Side]>,
): JobEdit => ({
  label: 'Change how a wall is lined',
  change: ({ storeys }) => {
    const walls = storeys.find(({ id }) => id === storeyId)?.walls ?? [];
    for (const { wallId, side } of faces) {
      const wall = walls.find(({ id }) => id === wallId);
      if (wall === undefined) continue;
      Object.assign(wall.faces[side], facts);
      delete wall.certainty?.faces;
    }
  },
});

/** Puts a door, a window, a gap or a chimney breast into a wall. */
export function addOpening(
  job: Job,
  storeyId: string,
  wallId: string,
  opening: Omit<Opening, 'id'>,
): HouseEdit {
  const id = newId();
  return houseEdit(job, storeyId, `Add a ${openingWords[opening.kind].toLowerCase()}`, ({ storey }) => {
    const wall = storey.walls.find((one) => one.id === wallId);
    if (wall === undefined) return refused('That wall is not there any more.');
    if (opening.alongMm < 0 || opening.alongMm + opening.widthMm > wallLengthMm(wall) + 1)
      return refused('It reaches past the end of the wall.');
    const other = wall.openings.find(
      (one) => one.alongMm < opening.alongMm + opening.widthMm && opening.alongMm < one.alongMm + one.widthMm,
    );
    if (other !== undefined) return refused(`A ${openingWords[other.kind].toLowerCase()} is there already.`);
    wall.openings.push({ ...opening, id });
    wall.openings.sort((a, b) => a.alongMm - b.alongMm);
    return done;
  });
}

/** Takes an opening out of its wall. */
export const removeOpening = (storeyId: string, { id, kind }: Pick<Opening, 'id' | 'kind'>): JobEdit => ({
  label: `Remove a ${openingWords[kind].toLowerCase()}`,
  change: ({ storeys }) => {
    for (const wall of storeys.find((one) => one.id === storeyId)?.walls ?? [])
      wall.openings = wall.openings.filter((one) => one.id !== id);
  },
});

/** What is in walls, in plain words. */
export const openingWords: Readonly<Record<Opening['kind'], string>> = {
  door: 'Door',
  window: 'Window',
  opening: 'Gap without a door',
  breast: 'Chimney breast',
};

/** Puts a storey on the highest. */
export function addStorey(
  job: Job,
  name: string,
  parts: CopiedParts,
): { readonly edit: JobEdit; readonly storeyId: string } | null {
  const top = job.storeys.toSorted((a, b) => b.floorLevelMm - a.floorLevelMm)[0];
  if (top === undefined) return null;
  const storey = storeyAbove(top, { name, parts, newId });
  return {
    storeyId: storey.id,
    edit: { label: `Add ${name}`, change: ({ storeys }) => void storeys.push(storey) },
  };
}
