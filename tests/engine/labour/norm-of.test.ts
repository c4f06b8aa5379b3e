import { describe, expect, it } from 'vitest';
import { fillingTasks } from '#engine/labour/filling-tasks.ts';
import { knownTasks } from '#engine/labour/known-tasks.ts';
import { normOf, standInFor } from '#engine/labour/norm-of.ts';
import { taskMinutes } from '#engine/labour/task-minutes.ts';
import { library } from './labour-material.ts';

const two = fillingTasks['bonding-and-finish'];
const one = fillingTasks['one-coat'];
/** The norms of a firm from before there was a task for two coats. */
const older = {
  ...library.norms,
  tasks: library.norms.tasks.filter(({ task }) => task !== two.chase && task !== two.box),
};

describe('the norm of a task', () => {
  it('is the firm’s own for that task, where there is one', () => {
    for (const { id } of knownTasks) expect(normOf(id, library.norms)?.task).toBe(id);
  });

  it('for two coats is that for one where the firm has no other, minutes and disturbance', () => {
    expect(normOf(two.chase, older)).toBe(normOf(one.chase, older));
    expect(normOf(two.box, older)).toBe(normOf(one.box, older));
    expect(taskMinutes(two.chase, 3, older)).toEqual(taskMinutes(one.chase, 3, older));
  });

  it('is null where neither is there, and stands in one way only', () => {
    expect(normOf(two.chase, { tasks: [] })).toBeNull();
    const only = library.norms.tasks.filter(({ task }) => task === two.chase);
    expect(normOf(one.chase, { tasks: only })).toBeNull();
    expect(knownTasks.flatMap(({ id }) => standInFor(id) ?? [])).toEqual([
      'drill-joist',
      'chase-plaster',
      one.chase,
      one.box,
    ]);
  });
});
