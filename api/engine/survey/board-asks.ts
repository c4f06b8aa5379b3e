import { SURGE_QUESTION, surgeIsOpen } from '../connections/surge-device.ts';
import type { Worked } from '../connections/worked.ts';
import { exchangesBoard } from '../rules/fitted-devices.ts';
import { boardsOfNewCircuits } from '../rules/spare-way.ts';
import { boardsCountingRcbos, boardsWithUnknownRcbo } from '../rules/unknown-rcbo.ts';
import type { Ask } from './ask.ts';
import { checklistAsk } from './checklist-ask.ts';
import { askOf, fieldOf } from './fields.ts';

/** Premises whose socket circuits are asked after for arc fault detection. Source: BS 7671:2018+A2:2022 421.1.7. */
const ARC_FAULT_PREMISES: readonly string[] = ['hmo', 'higher-risk', 'student', 'care'];

/** What is told at the board with its cover on, and what of it waits until it is off. */
export function boardAsks(worked: Worked): readonly Ask[] {
  const { job } = worked;
  const hasArcFault = ARC_FAULT_PREMISES.includes(job.site.premises);
  return [
    checklistAsk(job, 'board-condition', {
      stage: 'board',
      why: 'If it is unsafe the work stops until it is mended or exchanged. With the cover on, say what shows.',
      source: 'BS 7671 132.16, 134.1',
      rules: ['ST3'],
    }),
    checklistAsk(job, 'isolation', {
      stage: 'board',
      why: 'Where only the distributor’s fuse isolates it, a visit of theirs has to be booked before the day.',
      source: 'Electricity at Work Regulations 1989, 14',
      rules: ['SU6'],
    }),
    ...makeAsks(worked),
    ...rcboAsks(worked),
    ...spareWayAsks(worked),
    checklistAsk(job, 'borrowed-neutral', {
      stage: 'board',
      why: 'With a neutral borrowed from another circuit an RCBO trips at once.',
      rules: [],
    }),
    checklistAsk(job, 'maximum-demand', {
      stage: 'board',
      why: 'It is held against the main fuse.',
      source: 'BS 7671 311.1',
      rules: ['SU2'],
    }),
    ...(hasArcFault
      ? [
          checklistAsk(job, 'arc-fault-protection', {
            stage: 'board',
            why: 'In such premises it is required on new socket circuits.',
            source: 'BS 7671:2018+A2:2022 421.1.7',
            rules: ['PR1'],
          }),
        ]
      : []),
    checklistAsk(job, 'surge-protection', {
      stage: 'board',
      why: 'The owner may decline it; somebody has to have asked.',
      source: 'BS 7671:2018+A2:2022 443.4.1',
      rules: ['PR2'],
      ...(surgeIsOpen(worked) ? { closing: { settles: [SURGE_QUESTION] } } : {}),
    }),
  ];
}

/** The make of every board that a device is bought for. */
function makeAsks(worked: Worked): readonly Ask[] {
  const bought = new Set([...boardsCountingRcbos(worked), ...boardsOfNewCircuits(worked)]);
  const boards = worked.job.boards.filter(({ id }) => bought.has(id) && !exchangesBoard(worked, id));
  if (boards.length === 0) return [];
  return [
    askOf({
      id: 'board-make',
      short: 'make of board',
      words: 'Read the make and the model off the board, and off a device in it',
      why: 'A device goes in only where the board’s maker lists it: none is bought before it is known.',
      source: 'BS 7671 536.4.203',
      stage: 'board',
      when: 'visit',
      fields: boards.map((board) => fieldOf(board.id, board, 'make')),
      rules: ['DV2'],
    }),
  ];
}

function rcboAsks(worked: Worked): readonly Ask[] {
  const counting = boardsCountingRcbos(worked);
  const unknown = boardsWithUnknownRcbo(worked);
  if (counting.length === 0) return [];
  return [
    askOf({
      id: 'rcbo-available',
      short: 'RCBO',
      words: 'Look at the board: does its maker still sell an RCBO for it?',
      why: 'If not, an RCD goes into an enclosure beside it.',
      source: 'BS 7671 536.4.203',
      stage: 'board',
      when: 'visit',
      fields: worked.job.boards
        .filter(({ id }) => counting.includes(id))
        .map((board) => fieldOf(board.id, board, 'rcboAvailable')),
      rules: ['DV2'],
      ...(unknown.length > 0 ? { closing: { settles: ['rcbo-available'] } } : {}),
    }),
  ];
}

function spareWayAsks(worked: Worked): readonly Ask[] {
  const boards = boardsOfNewCircuits(worked);
  if (boards.length === 0) return [];
  const ask = askOf({
    id: 'spare-ways',
    short: 'spare ways',
    words: 'Count the spare ways of the board, with its cover off: the busbar has to reach them',
    why: 'A new circuit needs one; without, an enclosure goes beside the board.',
    source: null,
    stage: 'board',
    when: 'isolated',
    fields: worked.job.boards
      .filter(({ id }) => boards.includes(id))
      .map((board) => fieldOf(board.id, board, 'spareWays')),
    rules: ['DV3'],
  });
  return [ask.subjects.length === 0 ? ask : { ...ask, closing: { settles: ['spare-ways'] } }];
}
