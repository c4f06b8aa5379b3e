import { sideWord } from '../../house/free-walls.ts';
import type { RoomSide } from '../../house/room-sides.ts';

const sideNames = {
  left: 'Left side',
  right: 'Right side',
  upper: 'Upper side',
  lower: 'Lower side',
} as const;

/** What a side of a room is called: by where it lies on the plan, with a number where there are several such. */
export function sideName(sides: readonly RoomSide[], at: number): string {
  const side = sides[at];
  if (side === undefined) return '';
  const word = sideWord(side);
  const alike = sides.map((one, i) => ({ one, i })).filter(({ one }) => sideWord(one) === word);
  return alike.length === 1
    ? sideNames[word]
    : `${sideNames[word]} ${alike.findIndex(({ i }) => i === at) + 1}`;
}
