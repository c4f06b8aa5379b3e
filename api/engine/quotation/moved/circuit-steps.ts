import type { Board, Circuit, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { isSameData } from '../../plan/same-data.ts';
import { counted } from '../../rules/counted.ts';
import { listed } from '../said.ts';
import type { ComeAndGo } from './house-steps.ts';
import { idOf, listDifference, type MoveStep, withoutThing, withThing } from './move-step.ts';
import { withJob, withScheme } from './priced-state.ts';

const step = (
  cause: MoveStep['cause'],
  words: string,
  subjects: readonly string[],
  apply: MoveStep['apply'],
): MoveStep => ({ cause, words, detail: '', subjects, apply });

function boardSteps(before: Job, after: Job): ComeAndGo {
  const { added, changed, removed } = listDifference(before.boards, after.boards, idOf);
  const put = (board: Board, how: string): MoveStep =>
    step('survey', `${board.label}: ${how}`, [board.id], (state) =>
      withJob(state, { boards: withThing(state.job.boards, board, idOf) }),
    );
  // Circuits may still name an RCD that is gone: it goes once they have changed.
  const withOldRcds = ({ before: was, after: is }: { before: Board; after: Board }): Board => ({
    ...is,
    rcds: [...is.rcds, ...listDifference(was.rcds, is.rcds, idOf).removed],
  });
  const losing = changed.filter((one) => withOldRcds(one).rcds.length > one.after.rcds.length);
  return {
    come: [
      ...added.map((board) => put(board, 'added')),
      ...changed.map((one) => put(withOldRcds(one), 'changed')),
    ],
    go: [
      ...losing.map((one) => put(one.after, 'an RCD removed')),
      ...removed.map((board) =>
        step('survey', `${board.label}: removed`, [board.id], (state) =>
          withJob(state, { boards: withoutThing(state.job.boards, board.id, idOf) }),
        ),
      ),
    ],
  };
}

function ofCircuits(before: Job, after: Job): ComeAndGo {
  const { added, changed, removed } = listDifference(before.circuits, after.circuits, idOf);
  const put = (circuit: Circuit, how: string): MoveStep =>
    step('survey', `${circuit.name}: ${how}`, [circuit.id], (state) =>
      withJob(state, { circuits: withThing(state.job.circuits, circuit, idOf) }),
    );
  return {
    come: [...added.map((one) => put(one, 'added')), ...changed.map((one) => put(one.after, 'changed'))],
    go: removed.map((circuit) =>
      step('survey', `${circuit.name}: removed`, [circuit.id], (state) =>
        withJob(state, { circuits: withoutThing(state.job.circuits, circuit.id, idOf) }),
      ),
    ),
  };
}

/** What was done to a point, in a word or two. */
function pointChange(before: Point, after: Point): string {
  if (isSameData({ ...before, place: after.place }, after)) return 'moved';
  if (before.kind !== after.kind) return 'another kind of accessory';
  if (isSameData({ ...before, certainty: after.certainty }, after)) return 'looked at by now';
  return after.status === 'existing' ? 'found otherwise than thought' : 'wanted otherwise';
}

function pointSteps(before: Job, after: Job): ComeAndGo {
  const { added, changed, removed } = listDifference(before.points, after.points, idOf);
  const causeOf = ({ status }: Point): MoveStep['cause'] => (status === 'existing' ? 'survey' : 'point');
  const put = (point: Point, how: string): MoveStep =>
    step(causeOf(point), `${point.label}: ${how}`, [point.id], (state) =>
      withJob(state, { points: withThing(state.job.points, point, idOf) }),
    );
  // One that takes another's place comes after it.
  const inOrder = added.toSorted((a, b) => Number('replaces' in a) - Number('replaces' in b));
  return {
    come: [
      ...inOrder.map((point) => put(point, 'added')),
      ...changed.map((one) => put(one.after, pointChange(one.before, one.after))),
    ],
    go: removed.map((point) =>
      step(causeOf(point), `${point.label}: removed`, [point.id], (state) =>
        withJob(state, { points: withoutThing(state.job.points, point.id, idOf) }),
      ),
    ),
  };
}

const namesLeg = (thing: unknown, legIds: ReadonlySet<string>): boolean =>
  typeof thing === 'object' &&
  thing !== null &&
  Object.entries(thing).some(([key, value]) =>
    key === 'leg' && typeof value === 'string' ? legIds.has(value) : namesLeg(value, legIds),
  );

/**
 * The cables as found, all at once: one in the place of another would for a moment lie beside it. Connections of the scheme
 * that name a cable that goes change with them.
 */
function legSteps(before: Job, after: Job): readonly MoveStep[] {
  const { added, changed, removed } = listDifference(before.legs, after.legs, idOf);
  const ids = [...added, ...changed.map((one) => one.after), ...removed].map(idOf);
  if (ids.length === 0) return [];
  const gone = new Set(removed.map(idOf));
  const [was] = before.schemes;
  const [is] = after.schemes;
  const touched = (was?.connections ?? []).filter((one) => namesLeg(one, gone)).map(idOf);
  const words = listed([
    ...(added.length > 0 ? [`${counted(added.length, 'more cable')} found`] : []),
    ...(changed.length > 0 ? [`${counted(changed.length, 'cable')} found otherwise`] : []),
    ...(removed.length > 0 ? [`${counted(removed.length, 'cable')} not there`] : []),
  ]);
  return [
    step('survey', `Cables in the house: ${words}`, ids, (state) => {
      const connections = state.scheme.connections.flatMap((one) => {
        if (!touched.includes(one.id)) return [one];
        const then = is?.connections.find(({ id }) => id === one.id);
        return then === undefined ? [] : [then];
      });
      return withScheme(withJob(state, { legs: after.legs }), { ...state.scheme, connections });
    }),
  ];
}

function readingSteps(before: Job, after: Job): readonly MoveStep[] {
  if (isSameData(before.readings, after.readings)) return [];
  const { added, changed, removed } = listDifference(before.readings, after.readings, idOf);
  const ids = [...added, ...changed.map((one) => one.after), ...removed].map(idOf);
  return [step('survey', 'Readings taken', ids, (state) => withJob(state, { readings: after.readings }))];
}

/** The changes of boards, circuits, points, the cables as found and the readings, in that order; what goes goes last, points first. */
export function circuitSteps(before: Job, after: Job): ComeAndGo {
  const [boards, circuits, points] = [
    boardSteps(before, after),
    ofCircuits(before, after),
    pointSteps(before, after),
  ];
  return {
    come: [
      ...boards.come,
      ...circuits.come,
      ...points.come,
      ...legSteps(before, after),
      ...readingSteps(before, after),
    ],
    go: [...points.go, ...circuits.go, ...boards.go],
  };
}
