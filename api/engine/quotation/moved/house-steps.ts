import type { Room, Storey, Wall } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { isSameData } from '../../plan/same-data.ts';
import { idOf, listDifference, type MoveStep, withoutThing, withThing } from './move-step.ts';
import { type SchemeState, withJob } from './priced-state.ts';

/** Changes of what comes or stays, and of what goes: whatever named that is changed between the two. */
export interface ComeAndGo {
  readonly come: readonly MoveStep[];
  readonly go: readonly MoveStep[];
}

const survey = (words: string, id: string, apply: MoveStep['apply']): MoveStep => ({
  cause: 'survey',
  words,
  detail: '',
  subjects: [id],
  apply,
});

function inStorey(state: SchemeState, storeyId: string, change: (storey: Storey) => Storey): SchemeState {
  return withJob(state, {
    storeys: state.job.storeys.map((one) => (one.id === storeyId ? change(one) : one)),
  });
}

/** All of a storey but its walls and rooms. */
function ownOf({ walls: _walls, rooms: _rooms, ...own }: Storey) {
  return own;
}

const wallWords = ({ core }: Wall, { name }: Storey): string =>
  `A wall (${core.replaceAll('-', ' ')}), ${name.toLowerCase()}`;

/** Walls with one put in its place. An opening that it brings from another wall, as part of a wall does, is no longer there. */
function withWall(walls: readonly Wall[], wall: Wall): Wall[] {
  const brought = new Set(wall.openings.map(idOf));
  const others = walls.map((one) =>
    one.openings.some(({ id }) => brought.has(id))
      ? { ...one, openings: one.openings.filter(({ id }) => !brought.has(id)) }
      : one,
  );
  return withThing(others, wall, idOf);
}

function wallSteps(before: Storey, after: Storey): ComeAndGo {
  const { added, changed, removed } = listDifference(before.walls, after.walls, idOf);
  const put = (wall: Wall, how: string): MoveStep =>
    survey(`${wallWords(wall, after)}: ${how}`, wall.id, (state) =>
      inStorey(state, after.id, (storey) => ({ ...storey, walls: withWall(storey.walls, wall) })),
    );
  return {
    come: [...added.map((wall) => put(wall, 'added')), ...changed.map((one) => put(one.after, 'changed'))],
    go: removed.map((wall) =>
      survey(`${wallWords(wall, after)}: removed`, wall.id, (state) =>
        inStorey(state, after.id, (storey) => ({
          ...storey,
          walls: withoutThing(storey.walls, wall.id, idOf),
        })),
      ),
    ),
  };
}

function roomSteps(before: Storey, after: Storey): ComeAndGo {
  const { added, changed, removed } = listDifference(before.rooms, after.rooms, idOf);
  const put = (room: Room, how: string): MoveStep =>
    survey(`${room.name}: ${how}`, room.id, (state) =>
      inStorey(state, after.id, (storey) => ({ ...storey, rooms: withThing(storey.rooms, room, idOf) })),
    );
  return {
    come: [...added.map((room) => put(room, 'added')), ...changed.map((one) => put(one.after, 'changed'))],
    go: removed.map((room) =>
      survey(`${room.name}: removed`, room.id, (state) =>
        inStorey(state, after.id, (storey) => ({
          ...storey,
          rooms: withoutThing(storey.rooms, room.id, idOf),
        })),
      ),
    ),
  };
}

function storeyChange(before: Storey, after: Storey): ComeAndGo {
  const own = isSameData(ownOf(before), ownOf(after))
    ? []
    : [
        survey(`${after.name}: floor, ceiling or fixtures`, after.id, (state) =>
          inStorey(state, after.id, ({ walls, rooms }) => ({ ...ownOf(after), walls, rooms })),
        ),
      ];
  const [walls, rooms] = [wallSteps(before, after), roomSteps(before, after)];
  return { come: [...own, ...walls.come, ...rooms.come], go: [...rooms.go, ...walls.go] };
}

/** The changes of a house: storey by storey, its own facts first, then walls, then rooms; a whole new storey at once. */
export function houseSteps(before: Job, after: Job): ComeAndGo {
  const { added, changed, removed } = listDifference(before.storeys, after.storeys, idOf);
  const inside = changed.map((one) => storeyChange(one.before, one.after));
  return {
    come: [
      ...added.map((storey) =>
        survey(`${storey.name}: added`, storey.id, (state) =>
          withJob(state, { storeys: withThing(state.job.storeys, storey, idOf) }),
        ),
      ),
      ...inside.flatMap(({ come }) => come),
    ],
    go: [
      ...inside.flatMap(({ go }) => go),
      ...removed.map((storey) =>
        survey(`${storey.name}: removed`, storey.id, (state) =>
          withJob(state, { storeys: withoutThing(state.job.storeys, storey.id, idOf) }),
        ),
      ),
    ],
  };
}
