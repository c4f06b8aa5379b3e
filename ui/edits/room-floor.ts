import type { Floor, Room, Storey } from '#model/building.ts';
import type { Certainty } from '#model/primitives.ts';
import { plainCopy } from '../house/drawing.ts';
import type { JobEdit } from '../job-events.ts';
import { type FactValue, putCertainty, putFact } from './facts.ts';
import type { FloorFact } from './storeys.ts';

type StoreyOf = Pick<Storey, 'id'>;
type RoomOf = Pick<Room, 'id' | 'name'>;

/** The change of a room; nothing where it is not there any more. */
const change = ({ id }: StoreyOf, room: RoomOf, put: (found: Room, storey: Storey) => void): JobEdit => ({
  label: `Change the floor of ${room.name}`,
  change: ({ storeys }) => {
    const storey = storeys.find((one) => one.id === id) as Storey | undefined;
    const found = storey?.rooms.find((one) => one.id === room.id);
    if (storey !== undefined && found !== undefined) put(found, storey);
  },
});

/**
 * Gives a room a floor of its own, for now as the storey's is, all of it assumed: nobody has said yet what differs; or (false) the
 * storey's again.
 */
export const setRoomFloor = (storey: StoreyOf, room: RoomOf, isOwn: boolean): JobEdit =>
  change(storey, room, (found, { floor }) => {
    if (!isOwn) {
      delete found.floor;
      return;
    }
    const { certainty: _seen, ...facts } = plainCopy(floor);
    const own: Floor = { ...facts };
    for (const fact of Object.keys(facts)) putCertainty(own, fact, 'assumed');
    found.floor = own;
  });

/** Sets a fact of a room's own floor; null takes it away where it need not be there. What is set counts as seen. */
export const setRoomFloorFact = <K extends FloorFact>(
  storey: StoreyOf,
  room: RoomOf,
  fact: K,
  value: FactValue<Floor, K>,
): JobEdit =>
  change(storey, room, ({ floor }) => {
    if (floor === undefined) return;
    putFact<Floor, K>(floor, fact, value);
    putCertainty(floor, fact, null);
  });

/** Says how sure a fact of a room's own floor is. */
export const setRoomFloorCertainty = (
  storey: StoreyOf,
  room: RoomOf,
  fact: FloorFact,
  certainty: Certainty,
): JobEdit =>
  change(storey, room, ({ floor }) => {
    if (floor !== undefined) putCertainty(floor, fact, certainty);
  });
