import type { TaskGroup } from '#engine/work/task-groups.ts';
import type { WorkTask } from '#engine/work/task-list.ts';
import type { TaskProgress, TaskStanding } from '#engine/work/task-progress.ts';

/** A part of the job as it is headed, with the caution that goes with it. */
export const partWords: Readonly<Record<TaskGroup, { readonly title: string; readonly caution: string }>> = {
  before: {
    title: 'Before anything is opened',
    caution:
      'Ask for the asbestos survey of anything built or altered before 2000; suspect material is left alone.',
  },
  'live-as-found': {
    title: 'Live checks as found',
    caution:
      'Live: only who is competent for it, with fused leads and finger guards, and nobody else near the open board.',
  },
  isolate: {
    title: 'Isolate and prove dead',
    caution: 'The tails stay live with the main switch off. A voltage stick proves nothing.',
  },
  'dead-as-found': {
    title: 'Dead tests of what exists',
    caution: '500 V hurts what is left plugged in, and who touches a bare end: warn everybody in the house.',
  },
  'open-up': {
    title: 'Open up',
    caution:
      'Look for cables, pipes, gas and asbestos before cutting, drilling or lifting; mask, eyes, dust extraction; tread on joists alone.',
  },
  run: {
    title: 'Run the cables',
    caution: 'Away from pipes that get warm and out of insulation; clear of sharp edges.',
  },
  box: {
    title: 'Boxes',
    caution: 'Cables found may be live from another circuit: prove each box dead by itself.',
  },
  connect: {
    title: 'Connect',
    caution: 'Cores are proved by test, never by colour alone. The connection sheet says which goes where.',
  },
  board: {
    title: 'At the board',
    caution:
      'Once the dead tests are passed. The tails and the main switch’s supply side stay live: only the distributor, or who it lets, takes its fuse out.',
  },
  'dead-tests': {
    title: 'Dead tests of the work',
    caution:
      'Leads’ own resistance taken off first; nothing is made live before all of these are as they should be.',
  },
  'live-tests': {
    title: 'Live tests',
    caution: 'Covers on as far as the test allows; nobody touches what is tested.',
  },
  close: {
    title: 'Make good',
    caution: 'Plaster, brick and silica dust: damp down, vacuum, no dry sweeping.',
  },
  record: {
    title: 'Record',
    caution:
      'No certificate until a competent person has inspected, tested and signed on the proper form; local rules on notice come first.',
  },
};

const unitWords = { job: '', each: '', m: ' m', circuit: '', room: '' } as const;

const count = (value: number, unit: keyof typeof unitWords): string =>
  `${Math.round(value * 10) / 10}${unitWords[unit]}`;

/** How much of a task, and how long: "2.4 m, 36 min"; empty for looks and tests. */
export function amountSaid({ amount }: WorkTask): string {
  if (amount === null) return '';
  const { quantity, highQuantity, unit, typicalMin } = amount;
  const many =
    quantity === 0
      ? `may be needed, up to ${count(highQuantity, unit)}`
      : unit === 'job' || (quantity === 1 && unit !== 'm')
        ? ''
        : `${count(quantity, unit)}${unit === 'm' ? '' : ' times'}`;
  const most =
    quantity > 0 && highQuantity > quantity ? `up to ${count(highQuantity, unit)} if found so` : '';
  const long = typicalMin === null || quantity === 0 ? '' : `${Math.round(typicalMin)} min`;
  return [many, most, long].filter((words) => words !== '').join(', ');
}

/** What the steps of a part are reckoned at as a whole: "Reckoned for these: isolate and prove dead, 8 min"; empty for none. */
export const reckonedSaid = (reckoned: readonly WorkTask[]): string =>
  reckoned.length === 0
    ? ''
    : `Reckoned for these: ${reckoned
        .map((task) =>
          [`${task.words.charAt(0).toLowerCase()}${task.words.slice(1)}`, amountSaid(task)]
            .filter((words) => words !== '')
            .join(', '),
        )
        .join('; ')}.`;

/** What is said of a task that stands otherwise than open or done; empty for these. */
export function standingSaid({ amount }: WorkTask, standing: TaskStanding): string {
  if (standing.is === 'stopped') return 'Not so: the work stops here until it is put right.';
  if (standing.is !== 'changed') return '';
  const unit = amount?.unit ?? 'each';
  return `Ticked when it was ${count(standing.was, unit)}; now it is ${count(standing.now, unit)}. Tick it again once all of it is done.`;
}

/** How far a list of tasks has got: "12 of 40 done. Stopped: …", with the hold that was passed unanswered. */
export function taskProgressSaid({ done, of, stopped, passed }: TaskProgress): string {
  const holds = stopped.map(({ hold }) => `Stopped: ${questionOf(hold)}`);
  const unanswered =
    passed === null ? [] : [`Ticked past a hold that nobody answered: ${questionOf(passed.hold)}`];
  return [`${done} of ${of} done.`, ...holds, ...unanswered].join(' ');
}

/** What a hold asks, without what is done if it is not so: "Dead, and proved so at every box that is opened?" */
export const questionOf = (hold: string | null): string => (hold ?? '').replace(/(\?) Else.*$/, '$1');
