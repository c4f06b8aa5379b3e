import type { Locator } from 'playwright-core';

/** Where something is drawn in the window, px. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The box of something that is drawn; what is not is a fault. */
export async function boxOf(part: Locator): Promise<Box> {
  const box = await part.boundingBox();
  if (box === null) throw new Error(`${part} is not drawn`);
  return box;
}

/** Whether two boxes cover any of each other. */
export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
