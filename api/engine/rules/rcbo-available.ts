import type { Board } from '#model/installation.ts';
import { isRcbo } from '../circuit/fitted-device.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'available' | 'notAvailable' | 'notTold' | 'boardUnknown';

interface Fitting {
  readonly subjectId: string;
  readonly board: Board | undefined;
}

/** An RCBO is one that the board's maker accepts for that board. */
export const rcboAvailable = rule<Message>({
  id: 'DV2',
  title: 'RCBO for the board',
  source: 'BS 7671 536.4.203, 133.1.1; direction of power by 530.3.201',
  messages: {
    available: 'An RCBO that the maker accepts for {board} can be had.',
    notAvailable: 'No RCBO that the maker accepts for {board} can be had.',
    notTold:
      'Whether the maker of {board} has an RCBO for it was not looked up. Its price varies most of all lines.',
    boardUnknown: 'The board is not known, so neither is whether it takes an RCBO.',
  },
  remedies: {
    notAvailable: 'An enclosure with an RCD beside the board, or a new board.',
    notTold:
      'Read make and type at the board and look it up before the day; price the enclosure as the other way.',
    boardUnknown: 'Name the board.',
  },
  couldFail: true,
  applies: (facts) => fittings(facts).length > 0,
  check: (facts) =>
    fittings(facts).map(({ subjectId, board }): CheckResult<Message> => {
      const head = { subjectId, origin: 'scheme', values: { board: board?.label ?? '' } } as const;
      if (board === undefined) return { ...head, outcome: 'not-proven', messageId: 'boardUnknown' };
      const told = board.certainty?.rcboAvailable === 'unknown' ? undefined : board.rcboAvailable;
      if (told === undefined) return { ...head, outcome: 'not-proven', messageId: 'notTold' };
      return told
        ? { ...head, outcome: 'passes', messageId: 'available' }
        : { ...head, outcome: 'fails', messageId: 'notAvailable' };
    }),
});

/** RCBOs that the scheme fits: as a remedy of a circuit, or at the head of a new radial. */
function fittings(facts: Facts): readonly Fitting[] {
  const remedies = (facts.scheme?.remedies ?? [])
    .filter(({ kind }) => kind === 'rcbo')
    .map(({ at }) => {
      const circuit = facts.proposed.circuits.find(({ id }) => id === at);
      return { subjectId: at ?? '', board: circuit?.board ?? facts.job.boards.find(({ id }) => id === at) };
    });
  const radials = (facts.scheme?.connections ?? []).flatMap((connection) => {
    if (connection.kind !== 'radial') return [];
    const board = facts.job.boards.find(({ id }) => id === connection.board);
    return isRcbo(connection.device) ? [{ subjectId: connection.id, board }] : [];
  });
  return [...remedies, ...radials];
}
