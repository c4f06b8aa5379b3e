import type { Fixture } from '#model/building.ts';
import type { Facts } from './facts.ts';
import { fixturesNear, type PlacedAccessory, plateToFixtureMm } from './placed.ts';

/** Zone 1 round a shower without a tray, mm from its head. Source: BS 7671 701.32.3. */
const SHOWER_RADIUS_MM = 1200;

/** Zone 2 beyond the edge of zone 1, mm. Source: BS 7671 701.32.4. */
export const ZONE_2_MM = 600;
/** Top of zones 1 and 2, mm above floor. Source: BS 7671 701.32.3. */
export const ZONES_TOP_MM = 2250;

/**
 * Distance, level, from an accessory to the edge of zone 1 of the nearest bath or shower of its own room, mm;
 * nought within it. A wall or a door ends the location (BS 7671 701.32.1), so other rooms' do not count.
 *
 * @returns null where the room has neither, or none was drawn.
 */
export function toZone1Mm(facts: Facts, accessory: PlacedAccessory): number | null {
  const gaps = fixturesNear(facts, accessory, ['bath', 'shower']).map((fixture) =>
    Math.max(0, plateToFixtureMm(facts, accessory, fixture) - (isTrayless(fixture) ? SHOWER_RADIUS_MM : 0)),
  );
  return gaps.length > 0 ? Math.min(...gaps) : null;
}

/** Whether an accessory's room is a bathroom by its name, with no bath or shower drawn in it. */
export function isUndrawnBathroom(facts: Facts, accessory: PlacedAccessory): boolean {
  return accessory.room?.room.use === 'bathroom' && toZone1Mm(facts, accessory) === null;
}

/** A shower drawn as a spot or a line is its head: there is no tray to measure from. */
function isTrayless({ kind, outline }: Fixture): boolean {
  return kind === 'shower' && outline.length < 3;
}
