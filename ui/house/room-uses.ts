import type { Room, Storey } from '#model/building.ts';

/** What rooms are used as, in the words of people, in the order in which houses have most of them. */
export const roomUseWords: Readonly<Record<Room['use'], string>> = {
  hall: 'Hall',
  living: 'Living room',
  dining: 'Dining room',
  kitchen: 'Kitchen',
  utility: 'Utility room',
  wc: 'WC',
  bedroom: 'Bedroom',
  landing: 'Landing',
  bathroom: 'Bathroom',
  garage: 'Garage',
  store: 'Store',
  loft: 'Loft',
  outside: 'Outside',
};

/** The name of a next room of a use: "Bedroom 2" where there is a bedroom. */
export function nextRoomName(storeys: readonly Pick<Storey, 'rooms'>[], use: Room['use']): string {
  const taken = new Set(storeys.flatMap(({ rooms }) => rooms.map(({ name }) => name)));
  const word = roomUseWords[use];
  if (!taken.has(word)) return word;
  let number = 2;
  while (taken.has(`${word} ${number}`)) number += 1;
  return `${word} ${number}`;
}

/** What rooms houses have, in the order in which people walk through them: at the door, and above it. */
const walkThrough: Readonly<Record<'below' | 'above', readonly Room['use'][]>> = {
  below: ['hall', 'living', 'dining', 'kitchen', 'utility'],
  above: ['landing', 'bedroom', 'bathroom', 'bedroom'],
};

/**
 * What the next room of a storey most likely is: the first usual one that is not there yet, and the last of them once all
 * are.
 *
 * @param storeys all of the job: the lowest has the door.
 */
export function likelyRoomUse(storeys: readonly Storey[], storey: Storey): Room['use'] {
  const lowest = Math.min(...storeys.map(({ floorLevelMm }) => floorLevelMm));
  const usual = walkThrough[storey.floorLevelMm > lowest ? 'above' : 'below'];
  const there = storey.rooms.map(({ use }) => use);
  return usual.find((use) => !there.includes(use)) ?? usual.at(-1) ?? 'store';
}
