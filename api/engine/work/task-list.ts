import type { Worked } from '../connections/worked.ts';
import type { LabourTask } from '../labour/task.ts';
import { drilledWalls } from './drilled-walls.ts';
import { referencesOf } from './references.ts';
import { type SiteRequest, siteSteps } from './site-steps.ts';
import { groupOf, type TaskGroup, taskGroups } from './task-groups.ts';
import type { TestStep } from './test-step.ts';
import { testSteps } from './test-steps.ts';

/** Something to do, in its place in the order of the work. */
export interface WorkTask {
  /** The norm's id for priced work, the step's for tests. */
  readonly id: string;
  readonly words: string;
  /** How much of priced work; null for tests and looks, whose time is in the priced tests. */
  readonly amount: {
    readonly quantity: number;
    readonly highQuantity: number;
    readonly unit: LabourTask['unit'];
    readonly typicalMin: number | null;
  } | null;
  /** What it is done to, as all papers name it; in the order of its causes, each once. */
  readonly marks: readonly string[];
  /** What has to be so before the work goes on; null: nothing is held. */
  readonly hold: string | null;
}

/** A part of the job with its tasks in order. */
export interface TaskPart {
  readonly group: TaskGroup;
  readonly tasks: readonly WorkTask[];
  /** Priced work that the tasks of this part are the steps of: it is ticked by them, and here for its minutes. */
  readonly reckoned: readonly WorkTask[];
}

/** What is priced as a whole and told step by step. */
const toldByStep: ReadonlySet<string> = new Set([
  'verify-supply',
  'isolate',
  'verify-circuit',
  'test-circuit',
  'barred-joist',
]);

/**
 * A scheme as a list to work by: priced work, looks and tests in working order, with the holds at which the work stops if
 * something is not as it has to be. Work that may turn out not to be needed is there with a quantity of nought. Parts in
 * which nothing is to be done are left out.
 */
export function taskList({
  worked,
  labour,
  findings,
}: {
  readonly worked: Worked;
  readonly labour: readonly LabourTask[];
  readonly findings: SiteRequest['findings'];
}): readonly TaskPart[] {
  const markOf = marksIn(worked);
  const steps = allSteps({ worked, findings });
  const holes = drilledWalls(worked).map(({ mark }) => mark);
  const work = labour.filter(({ highQuantity }) => highQuantity > 0);
  return taskGroups.flatMap((group): readonly TaskPart[] => {
    const own = work.filter((each) => groupOf(each) === group);
    const ofGroup = (isFirst: boolean) =>
      steps
        .filter((each) => each.group === group && each.isFirst === isFirst)
        .map((each) => looked(each, markOf));
    const of = (isReckoned: boolean) =>
      own
        .filter(({ task }) => toldByStep.has(task) === isReckoned)
        .map((each) => placed(priced(each, markOf), holes));
    const tasks = [...ofGroup(true), ...of(false), ...ofGroup(false)];
    const reckoned = of(true);
    return tasks.length + reckoned.length === 0 ? [] : [{ group, tasks, reckoned }];
  });
}

/** What is settled and inspected on site, and what is tested, in their order within a part. */
export const allSteps = (request: SiteRequest): readonly TestStep[] => [
  ...testSteps(request.worked),
  ...siteSteps(request),
];

const looked = ({ id, words, hold, subjects }: TestStep, markOf: (id: string) => string): WorkTask => ({
  id,
  words,
  amount: null,
  marks: named(subjects, markOf),
  hold,
});

/** Each name once; what has none is left out. */
const named = (ids: readonly string[], markOf: (id: string) => string): readonly string[] => [
  ...new Set(ids.map(markOf).filter((mark) => mark !== '')),
];

const priced = (
  { task, description, quantity, highQuantity, unit, typicalMin, causes }: LabourTask,
  markOf: (id: string) => string,
): WorkTask => ({
  id: task,
  words: description,
  amount: { quantity, highQuantity, unit, typicalMin },
  marks: named(causes, markOf),
  hold: null,
});

/** A task that drills walls names its holes before its cables: the list of them has where each is. */
const placed = (task: WorkTask, holes: readonly string[]): WorkTask =>
  task.id === 'drill-wall' ? { ...task, marks: [...holes, ...task.marks] } : task;

/** What causes and subjects are called: cables, places, circuits, boards, rooms; the scheme itself has no mark and is empty. */
function marksIn(worked: Worked): (id: string) => string {
  const { job, proposed, found } = worked;
  const references = referencesOf(worked);
  const known = new Map<string, string>();
  for (const { id, label } of [...job.boards, ...job.points]) known.set(id, label);
  for (const { rooms } of job.storeys) for (const { id, name } of rooms) known.set(id, name);
  for (const { id, name } of [...found.circuits, ...proposed.circuits]) known.set(id, name);
  for (const { id } of proposed.nodes) if (!known.has(id)) known.set(id, references.place(id));
  for (const { id, mark } of references.cables) known.set(id, mark);
  return (id) => known.get(id) ?? known.get(id.split('/').at(-1) ?? '') ?? '';
}
