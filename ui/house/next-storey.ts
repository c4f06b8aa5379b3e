import type { Storey } from '#model/building.ts';
import { plainCopy } from './drawing.ts';

/** How much of a storey the one above it is like. */
export type CopiedParts = 'outer-walls' | 'all-walls-and-rooms';

/** What a storey is called by how many are below it. */
export function storeyName(below: number): string {
  return ['Ground floor', 'First floor', 'Second floor', 'Third floor'][below] ?? `Floor ${below}`;
}

/**
 * A storey that stands on another, its walls in line with those below: outer and party walls, or all with their rooms. Doors,
 * windows and fixtures are not taken along; what nobody has seen is assumed.
 *
 * @param newId ids for all that it has.
 */
export function storeyAbove(
  below: Storey,
  {
    name,
    parts,
    newId,
  }: { readonly name: string; readonly parts: CopiedParts; readonly newId: () => string },
): Storey {
  const copied = below.walls.filter(
    ({ external, party }) => parts === 'all-walls-and-rooms' || external || party === true,
  );
  const ids = new Map(copied.map(({ id }) => [id, newId()]));
  const floor = {
    build: 'suspended-timber',
    voidMm: 250,
    covering: 'boards',
    certainty: { build: 'assumed', voidMm: 'assumed', covering: 'assumed' },
  } as const;
  return {
    id: newId(),
    name,
    floorLevelMm: below.floorLevelMm + below.heightMm + floor.voidMm,
    heightMm: below.heightMm,
    floor: { ...floor, certainty: { ...floor.certainty } },
    ceiling: {
      lining: below.ceiling.lining,
      loft: below.ceiling.loft,
      certainty: { lining: 'assumed', loft: 'assumed' },
    },
    walls: copied.map((wall) => ({
      ...plainCopy(wall),
      id: ids.get(wall.id) ?? wall.id,
      openings: [],
      certainty: { ...wall.certainty, thicknessMm: 'assumed', core: 'assumed' },
    })),
    rooms:
      parts === 'outer-walls'
        ? []
        : below.rooms.map((room) => ({
            id: newId(),
            name: `${room.name}, above`,
            use: 'bedroom',
            block: room.block,
            walls: room.walls.map(({ wall, side }) => ({ wall: ids.get(wall) ?? wall, side })),
            certainty: { use: 'assumed' },
          })),
    fixtures: [],
    stairwells: [],
    certainty: { heightMm: 'assumed', floorLevelMm: 'assumed' },
  };
}
