import type { KitCounts } from '#engine/takeoff/kit-counts.ts';

/**
 * How cables are stripped, sleeved and tightened, a sentence each. No length of bare copper is given: it is the maker's, by the accessory.
 * Sheath and copper: common practice, no source; bare earths: BS 7671 514.4.2, from memory.
 *
 * @param counts what the firm counts its kit by: how much of an earth is sleeved is its figure.
 */
export const strippingSaid = ({ sleeveMm }: Pick<KitCounts, 'sleeveMm'>): readonly string[] => [
  'Strip length: as the maker’s sheet or the gauge on the accessory says. No bare copper outside a terminal, no insulation in it.',
  'The sheath goes whole into the box or enclosure, and is cut back inside.',
  `Bare earths are sleeved green-yellow along all that is bare, ${sleeveMm} mm an end as the kit is counted.`,
  'Tightening: as the maker says; where a torque is given, with a tool set to it. Pull each conductor afterwards.',
];
