import { type AlongSide, boxAlong } from '../house/along-side.ts';
import type { RoomSide } from '../house/room-sides.ts';
import type { JobEdit } from '../job-events.ts';
import type { HouseEdit } from './house.ts';

type Outline = [number, number][];

/** Why an opening in the floor cannot be so large; null where it can. It may lie outside the room that it is measured from. */
const whyNot = ({ widthMm, depthMm }: AlongSide): string | null =>
  widthMm <= 0 || depthMm <= 0 ? 'It has to have a length and a width.' : null;

/** Cuts a stairwell into the floor of a storey, measured from a side of one of its rooms. */
export const addStairwell = (storeyId: string, side: RoomSide, box: AlongSide): HouseEdit =>
  put(storeyId, 'Add a stairwell', box, (wells) => void wells.push(boxAlong(side, box)));

/** Has a stairwell lie elsewhere, or be larger or smaller. */
export const placeStairwell = (
  storeyId: string,
  at: number,
  { side, box }: { readonly side: RoomSide; readonly box: AlongSide },
): HouseEdit =>
  put(storeyId, 'Change a stairwell', box, (wells) => {
    if (wells[at] !== undefined) wells[at] = boxAlong(side, box);
  });

function put(storeyId: string, label: string, box: AlongSide, change: (wells: Outline[]) => void): HouseEdit {
  const why = whyNot(box);
  if (why !== null) return { ok: false, why };
  return {
    ok: true,
    edit: {
      label,
      change: ({ storeys }) => {
        const storey = storeys.find(({ id }) => id === storeyId);
        if (storey !== undefined) change(storey.stairwells as Outline[]);
      },
    },
  };
}

/** Closes a stairwell. */
export const removeStairwell = (storeyId: string, at: number): JobEdit => ({
  label: 'Remove a stairwell',
  change: ({ storeys }) => void storeys.find(({ id }) => id === storeyId)?.stairwells.splice(at, 1),
});
