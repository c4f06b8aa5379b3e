import type { Floor } from '#model/building.ts';

/** Room beneath the joists that lets a cable be clipped under them, mm. Common practice, no source. */
const BENEATH_MM = 250;

/** Whether the space under a floor is so deep that cable crosses beneath the joists: none is drilled. */
export function passesBeneath({ build, voidMm, joistDepthMm }: Floor): boolean {
  return build === 'suspended-timber' && joistDepthMm !== undefined && voidMm >= joistDepthMm + BENEATH_MM;
}
