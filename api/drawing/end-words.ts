import type { End } from '#model/cable.ts';

/**
 * What a cable's end is called: the point's label, or the board.
 *
 * @param board what the board is called there; "board" within a name.
 */
export const endWords = (end: End, labelOf: (pointId: string) => string, board = 'board'): string =>
  'point' in end ? labelOf(end.point) : board;
