import type { Corners } from '../../house/straighten.ts';
import type { Vector } from '../../house/vector.ts';

/** What the four corners are called, in their order. */
export const cornerNames = ['Upper left', 'Upper right', 'Lower right', 'Lower left'] as const;

/** Where the corners are put at first: well inside, so that each can be taken hold of. */
const INSET = 0.15;

/** The corners that a picture begins with, px. */
export const firstCorners = ([width, height]: Vector): Corners => {
  const [left, right] = [width * INSET, width * (1 - INSET)];
  const [upper, lower] = [height * INSET, height * (1 - INSET)];
  return [
    [left, upper],
    [right, upper],
    [right, lower],
    [left, lower],
  ];
};

const within = (value: number, most: number): number => Math.min(Math.max(value, 0), most);

/** With one corner elsewhere, on the picture. */
export const withCorner = (corners: Corners, at: number, to: Vector, [width, height]: Vector): Corners =>
  corners.map((corner, i) =>
    i === at ? ([within(to[0], width), within(to[1], height)] as const) : corner,
  ) as unknown as Corners;
