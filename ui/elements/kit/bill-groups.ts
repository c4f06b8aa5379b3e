import { EXTRA_GROUP } from '#engine/price/extra-bill.ts';
import type { TakeoffGroup } from '#engine/takeoff/line.ts';

/** The groups of a bill in the order in which a van is loaded, in words. */
export const billGroups: readonly (readonly [group: TakeoffGroup | typeof EXTRA_GROUP, words: string])[] = [
  ['cable', 'Cable'],
  ['accessories', 'Accessories'],
  ['protection', 'Protection'],
  ['joints', 'Joints'],
  ['boxes', 'Back boxes'],
  ['containment', 'Containment'],
  ['fixings', 'Fixings'],
  ['making-good', 'Making good'],
  ['sundries', 'Sundries'],
  ['papers', 'Papers'],
  [EXTRA_GROUP, 'Not on the drawing'],
];
