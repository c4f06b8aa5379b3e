import { isGuess } from '../plan/is-guess.ts';
import type { PlanWall } from '../plan/plan.ts';
import type { Mount } from './route.ts';
import { type Lay, openLay } from './segment.ts';
import type { Chased } from './way-tariff.ts';

/**
 * Depth of a chased cable's face below the finished surface: a chase of 25 mm, about 13 mm of plaster and 12 mm of masonry, less the
 * 6 mm of the cable; which also keeps a level chase in a 100 mm leaf within a sixth of it. Assumed; common practice, no source.
 */
export const CHASE_DEPTH_MM = 19;

/**
 * How a cable lies in or on a wall: chased into masonry, in the cavity of studwork, on the surface for surface
 * accessories. Concrete is not chased (reinforcement), so cable goes on its surface. Common practice, no source.
 */
export function layInWall(wall: PlanWall | undefined, mount: Mount, chased: Chased): Lay {
  if (wall === undefined || wall.wall.core === 'open') return openLay('surface-clipped', 'assumed');
  const { core, insulated } = wall.wall;
  const certainty = isGuess(wall.wall.certainty?.core) ? 'assumed' : 'derived';
  if (mount === 'surface' || core === 'concrete')
    return { medium: 'surface-channel', depthMm: 0, containment: 'channel', insulation: 'none', certainty };
  if (core === 'timber-stud' || core === 'metal-stud') {
    const insulation = insulated === undefined ? null : insulated ? 'surrounded' : 'none';
    return { ...openLay('stud-cavity', certainty), insulation };
  }
  return {
    medium: 'wall-chase',
    depthMm: CHASE_DEPTH_MM,
    containment: chased,
    insulation: 'none',
    certainty,
  };
}

/** What goes on from a wall into a void with the cable: the tube of a chase, so that a cable can be drawn past the floor. */
export const onInVoid = ({ medium, containment }: Pick<Lay, 'medium' | 'containment'>): Lay['containment'] =>
  medium === 'wall-chase' && containment === 'oval' ? containment : 'none';

/** The walls whose core can carry on through a floor: nobody builds masonry on boards. */
export const isMasonry = ({ wall }: PlanWall): boolean => isMasonryCore(wall.core);

/** Whether flush accessories of a wall have their cables chased into it. */
export const isChased = (plan: PlanWall): boolean => isMasonry(plan) && plan.wall.core !== 'concrete';

/** Whether a wall's core is drilled with a hammer. */
export const isMasonryCore = (core: string): boolean =>
  ['brick', 'hard-brick', 'block', 'aerated-block', 'concrete'].includes(core);
