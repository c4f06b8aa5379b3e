import type { Facts } from './facts.ts';
import type { PlacedAccessory } from './placed.ts';

/** Whether an accessory stands outside: in a place so named, or on a face of an external wall that no room looks at. */
export function isOutdoors(facts: Facts, { room, position }: PlacedAccessory): boolean {
  if (room) return room.room.use === 'outside';
  const wall = position.onWall ? facts.plan.wallById.get(position.onWall.wallId) : undefined;
  return wall?.wall.external === true;
}
