import type { Wall } from '#model/building.ts';
import type { Worked } from '../connections/worked.ts';
import type { Plan } from '../plan/plan.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import { roomOfWallFace } from '../plan/surroundings.ts';
import { chaseCut } from '../ways/chase-cut.ts';
import type { Run, Segment } from '../ways/run.ts';
import type { Filling } from '../ways/way-tariff.ts';
import { type Amount, certain } from './amount.ts';
import { fillingTasks } from './filling-tasks.ts';
import type { TaskId } from './known-tasks.ts';
import { pathMetres } from './stretch-metres.ts';

/** The chasing that each build of wall asks for. */
export const chaseTask: Readonly<Record<Wall['core'], TaskId>> = {
  brick: 'chase-block',
  block: 'chase-block',
  'aerated-block': 'chase-block',
  'hard-brick': 'chase-hard-brick',
  concrete: 'chase-concrete',
  'timber-stud': 'chase-plaster',
  'metal-stud': 'chase-plaster',
  open: 'chase-unknown-wall',
};
/** The same where cable lies in the gap behind a board. */
export const boardTask: TaskId = 'chase-board';
const chaseTasks: readonly TaskId[] = [...new Set([...Object.values(chaseTask), boardTask])];

const isChase = ({ medium }: Segment): boolean => medium === 'wall-chase';

function taskOf(plan: Plan, segment: Segment): TaskId {
  const wall = plan.wallById.get(segment.wallId ?? '');
  if (wall === undefined) return 'chase-unknown-wall';
  return chaseCut(wall, segment)?.isBehindBoard === true ? boardTask : chaseTask[wall.wall.core];
}

/** The room that a chase looks into; else the wall itself stands for a place to set up in. */
function roomOf(plan: Plan, { from, to, wallId }: Segment): string {
  const spot = from.onWall ?? to.onWall;
  const room = spot === undefined ? null : roomOfWallFace(plan, spot);
  return room?.room.id ?? wallId ?? 'unknown';
}

/** Setting up to chase, once a room. */
function setUps(runs: readonly Run[], plan: Plan): readonly Amount[] {
  const runByRoom = new Map<string, string>();
  for (const run of runs)
    for (const segment of run.segments.filter(isChase)) {
      const room = roomOf(plan, segment);
      if (!runByRoom.has(room)) runByRoom.set(room, run.id);
    }
  return [...runByRoom.values()].map((runId) => certain('chase-set-up', runId));
}

/** Chases by the wall's core, or by the board that is cut before a gap, what protects the cable in them, filling by its coats, and setting up once a room. */
export function chaseWork({ runs, plan, tariff }: Worked): readonly Amount[] {
  return [...cutting(runs, plan), ...fillings[tariff.filling](runs, plan)];
}

const isContained = ({ containment }: Segment): boolean =>
  containment === 'capping' || containment === 'oval';

/** Remedies leave the cables where they are: their chases are counted once. */
const cutting = rememberedOfTwo((runs: readonly Run[], plan: Plan): readonly Amount[] => {
  const worked = { runs, plan };
  return [
    ...setUps(runs, plan),
    ...chaseTasks.flatMap((task) =>
      pathMetres(worked, task, (segment) => isChase(segment) && taskOf(plan, segment) === task),
    ),
    ...pathMetres(worked, 'contain-chase', (segment) => isChase(segment) && isContained(segment)),
  ];
});

const filledBy = (filling: Filling) =>
  rememberedOfTwo((runs: readonly Run[], plan: Plan) =>
    pathMetres({ runs, plan }, fillingTasks[filling].chase, isChase),
  );
const fillings = {
  'one-coat': filledBy('one-coat'),
  'bonding-and-finish': filledBy('bonding-and-finish'),
} as const satisfies Readonly<Record<Filling, unknown>>;
