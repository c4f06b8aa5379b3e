import type { Connection, Tap } from '#model/scheme.ts';
import { endWords } from './end-words.ts';
import { connectedPoints, type LabelOf } from './label-of.ts';

const legWords = (labelOf: LabelOf, legId: string): string => labelOf(legId).replace(/^Leg /, '');

function tapWords(tap: Tap, labelOf: LabelOf): string {
  if ('point' in tap) return `from ${labelOf(tap.point)}`;
  return 'leg' in tap ? `from a joint in ${legWords(labelOf, tap.leg)}` : 'from the board';
}

/** One connection in a few words: "W2, W3 looped in between R8 and R9"; and whether a way in it is pinned. */
export function connectionWords(connection: Connection, labelOf: LabelOf): string {
  const pinned = (connection.runs ?? []).filter(({ via }) => via.length > 0).length;
  const joined = joinWords(connection, labelOf);
  if (pinned === 0) return joined;
  return `${joined} (${pinned === 1 ? 'a way' : `${pinned} ways`} pinned)`;
}

function joinWords(connection: Connection, labelOf: LabelOf): string {
  const points = connectedPoints(connection).map(labelOf).join(', ');
  switch (connection.kind) {
    case 'spur':
      return `${points} spur ${tapWords(connection.from, labelOf)}`;
    case 'fused-spur': {
      const isUnit = typeof connection.unit === 'string' && connection.feeds.length === 0;
      return `${points} ${isUnit ? 'fused spur' : 'behind one fused unit'} ${tapWords(connection.from, labelOf)}`;
    }
    case 'ring-extension': {
      const [one, other] = connection.between.map((end) => endWords(end, labelOf, 'the board'));
      return `${points} looped in between ${one} and ${other}`;
    }
    case 'radial':
      return `${points} new ${connection.device.ratingA} A radial from ${labelOf(connection.board)}`;
    case 'fuse-down':
      return `spur ${legWords(labelOf, connection.leg)} fused down${points === '' ? '' : `, on to ${points}`}`;
    case 'close-spur':
      return `spur to ${labelOf(connection.point)} closed into ${legWords(labelOf, connection.leg)}`;
  }
}

/** What words are put in order by: W2 before W10, whatever the case. */
const orderOf = (words: string): string =>
  words.toLowerCase().replace(/\d+/g, (digits) => digits.padStart(9, '0'));

/** Connections with their words, by what they join: W2 before W10. */
export const connectionsTold = (
  connections: readonly Connection[],
  labelOf: LabelOf,
): readonly { readonly connection: Connection; readonly words: string }[] =>
  connections
    .map((connection) => ({ connection, words: connectionWords(connection, labelOf) }))
    .sort((a, b) => (orderOf(a.words) < orderOf(b.words) ? -1 : 1));
