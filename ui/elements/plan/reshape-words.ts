import { cornerLengths } from '../../house/corner-lengths.ts';
import { fixtureStand } from '../../house/fixture-place.ts';
import type { Reshape, Reshaped } from '../../house/reshape.ts';
import { minus } from '../../house/vector.ts';
import { wallDepths } from '../../house/wall-depths.ts';

const mm = (length: number): string => `${Math.round(length)} mm`;

/** How long the sides are that change under the hand, or how far it has got: "Hall 1123 mm, Living room 3400 mm"; empty for nothing to tell. */
export function heldWords(asked: Reshape, { storey, plan }: Reshaped): string {
  switch (asked.part) {
    case 'wall':
      return wallDepths(storey, asked.wallId, plan.wallById)
        .map(({ room, lengthMm }) => `${room} ${mm(lengthMm)}`)
        .join(', ');
    case 'corner':
      return cornerLengths(storey, asked.to, plan.wallById)
        .map(({ words, lengthMm }) => `${words} ${mm(lengthMm)}`)
        .join(', ');
    case 'stretch':
      return `Pushed by ${mm(Math.abs(asked.byMm))}`;
    case 'fixture': {
      const stand = fixtureStand(storey, asked.to, plan.wallById);
      if (stand === null) return '';
      const { room, side, box } = stand;
      const off = box.offMm > 1 ? `, ${mm(box.offMm)} off the wall` : '';
      return `${room}, ${mm(box.leftMm)} from the left corner, ${mm(side.lengthMm - box.leftMm - box.widthMm)} from the right corner${off}`;
    }
  }
}

/** Where a held corner has got to, for who does not see it; empty for what is no corner. */
export function cornerWords(asked: Reshape): string {
  if (asked.part !== 'corner') return '';
  const [x, y] = minus(asked.to, asked.at).map(Math.round);
  return `${x} mm to the right, ${y} mm up`;
}
