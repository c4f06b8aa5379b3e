import type { FoundPlace } from './places-of.ts';

/** A point with its place in the house. */
export interface HousePoint {
  readonly id: string;
  readonly storey: string;
  readonly floorLevelMm: number;
  readonly heightMm: number;
  readonly place: FoundPlace;
}

/** How far below the floor a leg runs, mm: through the middle of the joists or under it. */
const UNDER_MM = 110;
/** Every so manyth leg was followed by somebody when boards were up. */
const SEEN_EVERY = 3;
/** Cable that lies loose beside its way. */
const LOOSE_RATIO = 1.05;

/** The legs of one ring: from the board by every point in turn and back to it. */
export function ringLegs(
  circuit: string,
  points: readonly HousePoint[],
  board: HousePoint,
): readonly object[] {
  const stops = [board, ...points, board];
  return stops.slice(1).map((to, i) => {
    const from = stops[i] ?? board;
    const isSeen = from.storey === to.storey && from !== board && to !== board && i % SEEN_EVERY === 0;
    return {
      id: `${circuit}-leg${i + 1}`,
      circuit,
      from: from === board ? { origin: circuit, end: 'A' } : { point: from.id },
      to: to === board ? { origin: circuit, end: 'B' } : { point: to.id },
      cable: { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 },
      lengthMm: cableMm(from, to),
      ...(isSeen ? { via: wayUnderFloor(from, to) } : {}),
      certainty: { length: 'measured', route: isSeen ? 'seen' : 'assumed' },
    };
  });
}

/** Down, along the rooms and across them, and up again, to 100 mm. */
function cableMm(from: HousePoint, to: HousePoint): number {
  const [a, b] = [from.place.at, to.place.at];
  const levelMm = Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]);
  const uprightMm =
    from.storey === to.storey
      ? from.heightMm + to.heightMm + 2 * UNDER_MM
      : Math.abs(from.floorLevelMm + from.heightMm - to.floorLevelMm - to.heightMm) + 2 * UNDER_MM;
  return Math.max(500, Math.round(((levelMm + uprightMm) * LOOSE_RATIO) / 100) * 100);
}

function wayUnderFloor(from: HousePoint, to: HousePoint): readonly object[] {
  const [a, b] = [from.place.at, to.place.at];
  const spots = [a, [b[0], a[1]], b];
  return spots.map((at) => ({ storey: from.storey, at, heightMm: -UNDER_MM }));
}
