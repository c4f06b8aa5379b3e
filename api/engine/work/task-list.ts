import type { Worked } from '../connections/worked.ts';
import type { LabourTask } from '../labour/task.ts';
import { referencesOf } from './references.ts';
import { groupOf, type TaskGroup, taskGroups } from './task-groups.ts';
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
}

/**
 * A scheme as a list to work by: priced work, looks and tests in working order, with the holds at which the work stops if
 * something is not as it has to be. Work that may turn out not to be needed is there with a quantity of nought. Parts in
 * which nothing is to be done are left out.
 */
export function taskList({
  worked,
  labour,
}: {
  readonly worked: Worked;
  readonly labour: readonly LabourTask[];
}): readonly TaskPart[] {
  const markOf = marksIn(worked);
  const steps = testSteps(worked).map(({ group, id, words, hold, subjects }) => ({
    group,
    task: { id, words, amount: null, marks: named(subjects, markOf), hold } satisfies WorkTask,
  }));
  const work = labour
    .filter(({ highQuantity }) => highQuantity > 0)
    .map((each) => ({ group: groupOf(each), task: priced(each, markOf) }));
  return taskGroups.flatMap((group) => {
    const own = <T extends { readonly group: TaskGroup }>(all: readonly T[]) =>
      all.filter((each) => each.group === group);
    // Isolation and tests are told step by step below what is priced for them; joints are photographed before closing.
    const tasks =
      group === 'close'
        ? [...own(steps), ...own(work)].map(({ task }) => task)
        : [...own(work), ...own(steps)].map(({ task }) => task);
    return tasks.length === 0 ? [] : [{ group, tasks }];
  });
}

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
