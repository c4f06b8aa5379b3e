import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { oldToNew } from '#drawing/work/old-to-new.ts';
import { partWords } from '#drawing/work/task-words.ts';
import { testGroupWords } from '#drawing/work/test-sheet-words.ts';
import { connectionSheet } from '#engine/work/connection-sheet.ts';
import { taskList, type WorkTask } from '#engine/work/task-list.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import type { Job } from '#model/job.ts';
import { ConnectionSheetElement } from '../../../ui/elements/papers/work/connection-sheet.ts';
import { TaskRow } from '../../../ui/elements/papers/work/task-row.ts';
import { TaskSheet } from '../../../ui/elements/papers/work/task-sheet.ts';
import { TestSheetElement } from '../../../ui/elements/papers/work/test-sheet.ts';
import { TestedWith } from '../../../ui/elements/papers/work/tested-with.ts';
import type { JobEdit } from '../../../ui/job-events.ts';
import type { JobView } from '../../../ui/job-view.ts';
import { bound, sentBy, tell, templateOf, textOf } from './rendered.ts';
import { viewOf } from './view-of.ts';

const view = viewOf('saltglass-row', 'spurs-rcbo');
const { scheme } = view;
if (scheme === null) throw new Error('a scheme is shown');

/** A sheet of a view. */
function shownIn<T extends { view: JobView }>(sheet: T, of: JobView = view): T {
  sheet.view = of;
  return sheet;
}

/** The job after the one edit that an element sends. */
function edited(sent: readonly unknown[], job: Job = view.job): Job {
  expect(sent).toHaveLength(1);
  return produce(job, (sent[0] as JobEdit).change);
}

describe('every sheet that is worked from', () => {
  it.each([
    ['connections', () => new ConnectionSheetElement()],
    ['tasks', () => new TaskSheet()],
    ['tests', () => new TestSheetElement()],
  ])('of %s says so where there is no scheme', (_, made) => {
    expect(textOf(templateOf(shownIn(made(), viewOf('saltglass-row', null))))).toBe(
      'Wants a scheme: make one in Ways .',
    );
  });
});

describe('the sheet of tests', () => {
  const sheet = testSheet(scheme);
  const element = shownIn(new TestSheetElement());
  const shown = templateOf(element);

  it('has every group with its heading, live or dead, and a row for every test in its order', () => {
    const text = textOf(shown);
    for (const { group, isLive, circuitName } of sheet.parts)
      expect(text).toContain(`${testGroupWords[group].title} ${isLive ? 'live' : 'dead'} ${circuitName}`);
    expect(bound(shown, 'test-row', '.test')).toEqual(sheet.parts.flatMap(({ tests }) => tests));
  });

  it('says how far it is filled, and which is next', () => {
    expect(textOf(shown)).toContain('0 of 53 read. Next: r1');
  });

  it('keeps what a row tells as a reading after the work, of the day and the voltage that are set', () => {
    const insulation = sheet.parts.flatMap(({ tests }) => tests).find(({ group }) => group === 'insulation');
    const answer = new CustomEvent('test-answered', { detail: { test: insulation, value: 200 } });
    const job = edited(sentBy(element, 'job-edit', () => element.dispatchEvent(answer)));
    expect(job.readings.at(-1)).toMatchObject({
      kind: 'insulation',
      phase: 'after',
      takenOn: '2026-11-27',
      megohm: 200,
      testV: 500,
    });
    const nothing = new CustomEvent('test-answered', { detail: { test: insulation, value: null } });
    expect(sentBy(element, 'job-edit', () => element.dispatchEvent(nothing))).toEqual([]);
  });
});

describe('what was tested with', () => {
  it('is added, named, numbered and taken away', () => {
    const element = new TestedWith();
    element.job = view.job;
    const added = edited(
      sentBy(element, 'job-edit', () => tell(templateOf(element), 'button', new Event('click'))),
    );
    expect(added.testing?.instruments).toMatchObject([{ what: '' }]);
    element.job = added;
    const named = new CustomEvent('field-change', { detail: { value: ' Multifunction tester ' } });
    const job = edited(
      sentBy(element, 'job-edit', () => tell(templateOf(element), 'text-field', named)),
      added,
    );
    expect(job.testing?.instruments).toMatchObject([{ what: 'Multifunction tester' }]);
    element.job = job;
    expect(
      edited(
        sentBy(element, 'job-edit', () => tell(templateOf(element), 'button', new Event('click'))),
        job,
      ).testing,
    ).toBeUndefined();
  });
});

describe('the sheet of tasks', () => {
  const parts = taskList(scheme);
  const tasks = parts.flatMap((part) => part.tasks);
  const element = shownIn(new TaskSheet());

  it('has every part with its caution, every task in its order, and how far it has got', () => {
    const shown = templateOf(element);
    for (const { group } of parts)
      expect(textOf(shown)).toContain(`${partWords[group].title} ${partWords[group].caution}`);
    expect(bound(shown, 'task-row', '.task')).toEqual(tasks);
    expect(textOf(shown)).toMatch(/0 of \d+ done\. Next: Set up/);
  });

  it('ticks what a row tells in the job, of the scheme that is shown', () => {
    const [task] = tasks;
    const ticked = new CustomEvent('task-ticked', { detail: { task, is: true } });
    const job = edited(sentBy(element, 'job-edit', () => element.dispatchEvent(ticked)));
    expect(job.done?.map(({ entry }) => entry)).toEqual([`spurs-rcbo/${task?.id}`]);
    const after = shownIn(new TaskSheet(), { ...view, job });
    expect(textOf(templateOf(after))).toMatch(/1 of \d+ done\./);
    expect(bound(templateOf(after), 'task-row', '.standing')[0]).toEqual({ is: 'done' });
  });
});

describe('the row of a task', () => {
  const tasks = taskList(scheme).flatMap((part) => part.tasks);
  const rowOf = (id: string, is: 'open' | 'done' | 'stopped' = 'open'): TaskRow => {
    const row = new TaskRow();
    const task = tasks.find((each) => each.id === id);
    if (task === undefined) throw new Error(`no task ${id}`);
    row.task = task;
    row.standing = { is };
    return row;
  };
  const told = (row: TaskRow, tag: string, value: boolean | null): readonly unknown[] =>
    sentBy(row, 'task-ticked', () =>
      tell(templateOf(row), tag, new CustomEvent('field-change', { detail: { value } })),
    ).map((detail) => (detail as { readonly task: WorkTask; readonly is: boolean | null }).is);

  it('is a box to tick where nothing is held', () => {
    const row = rowOf('lift-board');
    expect(bound(templateOf(row), 'tick-field', '.value')).toEqual([false]);
    expect(told(row, 'tick-field', true)).toEqual([true]);
    expect(bound(templateOf(row), 'yes-no-field', '.value')).toEqual([]);
  });

  it('asks for a yes where the work is held: there is no box to tick', () => {
    const row = rowOf('prove-dead');
    const shown = templateOf(row);
    expect(bound(shown, 'tick-field', '.value')).toEqual([]);
    expect(bound(shown, 'yes-no-field', '.value')).toEqual([null]);
    expect(textOf(shown)).toMatch(/Hold: Dead, and proved so at every box/);
    expect(told(row, 'yes-no-field', true)).toEqual([true]);
    expect(told(row, 'yes-no-field', null)).toEqual([null]);
    const stopped = templateOf(rowOf('prove-dead', 'stopped'));
    expect(bound(stopped, 'yes-no-field', '.value')).toEqual([false]);
    expect(textOf(stopped)).toContain('Not so: the work stops here until it is put right.');
  });
});

describe('the sheet of connections', () => {
  const sheet = connectionSheet(scheme.worked);
  const text = textOf(templateOf(shownIn(new ConnectionSheetElement())));

  it('has a card for every place, what is worked on before what is not', () => {
    const places = bound(templateOf(shownIn(new ConnectionSheetElement())), 'article', 'data-place');
    expect(places).toEqual(sheet.places.map(({ id }) => id));
    const folded = sheet.places.filter(({ isWorkedOn }) => !isWorkedOn).length;
    expect(text).toContain(`As found and not touched: ${folded}`);
  });

  it('says how cables are stripped and sleeved, and what old colours mean, with the pair that is mistaken', () => {
    expect(text).toContain('Strip length: as the maker’s sheet or the gauge on the accessory says.');
    for (const words of oldToNew(sheet)) expect(text).toContain(words);
    expect(text).toMatch(/Danger: black was the neutral in old cable, and is/);
  });
});
