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
