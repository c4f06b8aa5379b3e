import { describe, expect, it } from 'vitest';
import { standingSaid, taskProgressSaid } from '#drawing/work/task-words.ts';
import { taskList, type WorkTask } from '#engine/work/task-list.ts';
import { standingOf, taskProgress, tickOf } from '#engine/work/task-progress.ts';
import type { DoneTask } from '#model/site-work.ts';
import { demoEstimate, schemeOf } from '../demo-jobs/demo-estimates.ts';

const parts = taskList(schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo'));
const tasks = parts.flatMap((part) => part.tasks);
const task = (id: string): WorkTask => {
  const found = tasks.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no task ${id}`);
  return found;
};
const tick = (id: string, is = true): DoneTask => tickOf('one', task(id), is);
const said = (...done: readonly DoneTask[]): string => taskProgressSaid(taskProgress(parts, done, 'one'));

describe('a task', () => {
  it('is open, done once it is ticked, and to be ticked again when there is another amount of it to do', () => {
    const boxes = task('box-block-twin');
    expect(standingOf([], 'one', boxes)).toEqual({ is: 'open' });
    const done = [tick('box-block-twin')];
    expect(standingOf(done, 'one', boxes)).toEqual({ is: 'done' });
    const amount = boxes.amount === null ? null : { ...boxes.amount, quantity: boxes.amount.quantity + 1 };
    const more = standingOf(done, 'one', { ...boxes, amount });
    expect(more).toEqual({ is: 'changed', was: 3, now: 4 });
    expect(standingSaid(boxes, more)).toMatch(/^Ticked when it was 3; now it is 4\./);
  });

  it('of another scheme has ticks of its own', () => {
    expect(standingOf([tick('set-up')], 'other', task('set-up'))).toEqual({ is: 'open' });
  });

  it('that holds the work is done by a yes alone, and stopped by a no', () => {
    const hold = task('prove-dead');
    expect(standingOf([tick('prove-dead')], 'one', hold)).toEqual({ is: 'done' });
    expect(standingOf([tick('prove-dead', false)], 'one', hold)).toEqual({ is: 'stopped' });
    // A mere tick, as of a list in which it held nothing yet, answers nothing.
    expect(standingOf([{ entry: 'one/prove-dead' }], 'one', hold)).toEqual({ is: 'open' });
  });

  it('has not changed where its amount is said alike', () => {
    const run = tasks.find(({ amount }) => amount?.unit === 'm');
    if (run?.amount == null) throw new Error('no task by the metre');
    const nearly = { ...run, amount: { ...run.amount, quantity: run.amount.quantity + 0.001 } };
    expect(standingOf([tickOf('one', run, true)], 'one', nearly)).toEqual({ is: 'done' });
  });
});

describe('how far the work has got', () => {
  it('counts what is sure to be needed, and says what comes next', () => {
    const { done, of, next } = taskProgress(parts, [], 'one');
    expect(done).toBe(0);
    expect(of).toBe(tasks.filter(({ amount }) => amount === null || amount.quantity > 0).length);
    expect(next).toBe(tasks[0]);
    expect(said()).toBe(`0 of ${of} done.`);
    expect(said(tick('set-up'))).toBe(`1 of ${of} done.`);
  });

  it('says at which hold it is stopped, and which was passed without an answer', () => {
    expect(said(tick('test-supply', false))).toMatch(
      /Stopped: Earthed, bonded, polarity right, nothing burnt or loose\?$/,
    );
    expect(said(tick('fit-joint'))).toMatch(
      /^1 of \d+ done\. Ticked past a hold that nobody answered: Each settled, and/,
    );
    expect(said(tick('settle'), tick('test-supply'))).not.toMatch(/Ticked past|Stopped/);
  });

  it('is all of it once every task is ticked', () => {
    const all = tasks.map(({ id }) => tick(id));
    const { done, of, next, passed } = taskProgress(parts, all, 'one');
    expect([done, next, passed]).toEqual([of, null, null]);
  });
});
