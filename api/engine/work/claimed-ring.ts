import type { Worked } from '../connections/worked.ts';

/** Whether a circuit as found is a ring, a broken one, or is said to be one: its ends are tested before anything is added. */
export function isClaimedRing({ foundShapes }: Pick<Worked, 'foundShapes'>, circuitId: string): boolean {
  const shape = foundShapes.get(circuitId);
  return shape?.shape === 'ring' || shape?.shape === 'broken-ring' || shape?.claimed === 'ring';
}
