import type { Board } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import { isGuess } from '../plan/is-guess.ts';
import { counted } from './counted.ts';
import type { Facts } from './facts.ts';
import { exchangesBoard } from './fitted-devices.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'enough' | 'tooFew' | 'unknown' | 'newBoard' | 'enclosure';

/** A new circuit needs a way in the board to start from. */
export const spareWay = rule<Message>({
  id: 'DV3',
  title: 'Spare ways in the board',
  source: 'common practice; BS 7671 132.12, 536.4.203',
  messages: {
    enough: '{board} has {spare}; {needed} wanted for what is new.',
    tooFew: '{board} has {spare}; {needed} wanted for what is new.',
    unknown: 'The spare ways of {board} were not counted; {needed} wanted for what is new.',
    newBoard: 'The scheme exchanges {board}: order it with {needed} for what is new, and some to spare.',
    enclosure: '{board} has {spare}; the scheme puts an enclosure beside it for what is new.',
  },
  remedies: {
    tooFew: 'A larger board, or an enclosure beside it that its maker and the supply allow.',
    unknown: 'Count them with the cover off; a blank is a spare way only if the busbar reaches it.',
  },
  // Nothing in the wiring rules fails: another board or an enclosure is a matter of money.
  couldFail: false,
  applies: (facts) => newRadials(facts).length > 0,
  check: (facts) =>
    facts.job.boards
      .map((board) => ({ board, ways: newRadials(facts).filter((id) => id === board.id).length }))
      .filter(({ ways }) => ways > 0)
      .map(({ board, ways }) => judged(facts, board, ways)),
});

/** Whether somebody has counted the spare ways of a board. */
export const waysAreCounted = ({ spareWays, certainty }: Board): boolean =>
  spareWays !== undefined && !isGuess(certainty?.spareWays);

/** The boards from which the scheme's new circuits start and that stay, unless an enclosure stands beside them already; sorted. */
export const boardsOfNewCircuits = (worked: Worked): readonly string[] =>
  [...new Set(newRadials(worked))]
    .filter((id) => !(worked.scheme?.remedies ?? []).some((remedy) => makesRoom(remedy, id)))
    .sort();

const makesRoom = ({ kind, at }: Remedy, boardId: string): boolean =>
  (kind === 'new-board' && (at === undefined || at === boardId)) ||
  (kind === 'rcd-enclosure' && at === boardId);

/** Those of them whose spare ways nobody has counted, sorted. */
export const boardsWithUncountedWays = (worked: Worked): readonly string[] =>
  boardsOfNewCircuits(worked).filter((id) =>
    worked.job.boards.some((board) => board.id === id && !waysAreCounted(board)),
  );

/** The board of each new radial, in the scheme's order. */
function newRadials({ scheme }: Worked): readonly string[] {
  return (scheme?.connections ?? []).flatMap((each) => (each.kind === 'radial' ? [each.board] : []));
}

function judged(facts: Facts, board: Board, ways: number): CheckResult<Message> {
  const needed = ways === 1 ? '1 way is' : `${ways} ways are`;
  const names = { board: board.label, needed };
  const head = { subjectId: board.id, origin: 'scheme', limit: ways, unit: 'ways' } as const;
  if (exchangesBoard(facts, board.id)) {
    const values = { ...names, needed: counted(ways, 'way') };
    return { ...head, outcome: 'passes', messageId: 'newBoard', values };
  }
  if (board.spareWays === undefined || !waysAreCounted(board))
    return { ...head, outcome: 'not-proven', messageId: 'unknown', values: names };
  const actual = board.spareWays;
  const values = { ...names, spare: actual === 0 ? 'no spare way' : counted(actual, 'spare way') };
  if (actual >= ways) return { ...head, actual, outcome: 'passes', messageId: 'enough', values };
  const enclosed = facts.scheme?.remedies.some(({ kind, at }) => kind === 'rcd-enclosure' && at === board.id);
  return enclosed === true
    ? { ...head, actual, outcome: 'passes', messageId: 'enclosure', values }
    : { ...head, actual, outcome: 'decide', messageId: 'tooFew', values };
}
