import { buildPlan } from '#engine/plan/build-plan.ts';
import { planPoint } from '#engine/plan/plane.ts';
import type { Facts } from '#engine/rules/facts.ts';
import type { Segment } from '#engine/ways/run.ts';
import { cutsOf } from '#engine/ways/run-cuts.ts';
import type { Fixture, Floor, Room, Storey, Wall } from '#model/building.ts';
import type { Point } from '#model/installation.ts';
import { type FactsLiteral, factsOf, jobOf, pointOf, schemeOf, segmentOf } from './facts-builder.ts';

/** A plastered brick wall of 100 mm that is nobody else's. */
const wallOf = (
  id: string,
  from: [number, number],
  to: [number, number],
  partial: Partial<Wall> = {},
): Wall => ({
  id,
  from,
  to,
  thicknessMm: 100,
  core: 'brick',
  external: false,
  faces: { left: { finish: 'plaster', lining: 'none' }, right: { finish: 'plaster', lining: 'none' } },
  openings: [],
  ...partial,
});

/** What `houseOf` takes besides the facts: changes to its storey, room, floor and the wall `s`. */
export type HouseLiteral = Omit<FactsLiteral, 'plan'> & {
  readonly storey?: Partial<Storey>;
  readonly below?: boolean;
  readonly floor?: Partial<Floor>;
  readonly room?: Partial<Room>;
  readonly wall?: Partial<Wall>;
  readonly fixtures?: Fixture[];
  readonly points?: Point[];
};

/** A suspended timber floor on 200 mm joists along x. */
const timber: Floor = {
  build: 'suspended-timber',
  voidMm: 300,
  joistDepthMm: 200,
  joistsRunDeg: 0,
  covering: 'boards',
};

function groundStorey({ storey, floor, room, wall, fixtures = [] }: HouseLiteral): Storey {
  const ids = ['s', 'e', 'n', 'w'];
  return {
    id: 'gf',
    name: 'Ground floor',
    floorLevelMm: 0,
    heightMm: 2400,
    floor: { ...timber, ...floor },
    ceiling: { lining: 'plasterboard', loft: true },
    walls: [
      wallOf('s', [-50, -50], [4050, -50], wall),
      wallOf('e', [4050, -50], [4050, 3050]),
      wallOf('n', [4050, 3050], [-50, 3050]),
      wallOf('w', [-50, 3050], [-50, -50]),
    ],
    rooms: [
      {
        id: 'room',
        name: 'Room',
        use: 'living',
        block: 'main',
        walls: ids.map((id) => ({ wall: id, side: 'left' as const })),
        ...room,
      },
    ],
    fixtures,
    stairwells: [],
    ...storey,
  };
}

/**
 * One room, x 0 to 4000 and y 0 to 3000, on one storey `gf` of 2400 mm; its walls s, e, n, w look inwards with
 * their left faces. Wanted points are fitted; `below` puts a cellar storey beneath.
 */
export function houseOf(literal: HouseLiteral = {}): Facts {
  const { storey, below, floor, room, wall, fixtures, points = [], ...rest } = literal;
  const cellar: Storey = {
    id: 'cellar',
    name: 'Cellar',
    floorLevelMm: -2700,
    heightMm: 2400,
    floor: { build: 'solid', voidMm: 0, covering: 'none' },
    ceiling: { lining: 'plasterboard', loft: false },
    walls: [],
    rooms: [],
    fixtures: [],
    stairwells: [],
  };
  const storeys = [groundStorey(literal), ...(below ? [cellar] : [])];
  const job = jobOf({ storeys, points, ...rest.job });
  const accessories = points
    .filter(({ status }) => status === 'wanted')
    .map(({ id, kind, features }) => ({ id, pointId: id, kind, features }));
  const plan = buildPlan(job);
  const runs = (rest.runs ?? []).map((run) => ({ ...run, cuts: cutsOf(plan, run.segments) }));
  return factsOf({
    scheme: schemeOf(),
    ...rest,
    runs,
    job,
    plan,
    things: { accessories, ...rest.things },
  });
}

/** A wanted twin outlet on the inside of wall s; x = `alongMm` − 50. */
export const wantedOn = (alongMm: number, heightMm: number, partial: Partial<Point> = {}): Point =>
  pointOf('p', {
    status: 'wanted',
    place: { wall: 's', side: 'left', alongMm, heightMm },
    ...partial,
  });

/** A fixture over a rectangle on plan. */
export const fixtureOf = (
  kind: Fixture['kind'],
  [x1, y1]: [number, number],
  [x2, y2]: [number, number],
  partial: Partial<Fixture> = {},
): Fixture => ({
  id: `${kind}-1`,
  kind,
  outline: [
    [x1, y1],
    [x2, y1],
    [x2, y2],
    [x1, y2],
  ],
  ...partial,
});

/** A position on storey gf. */
const at = (x: number, y: number, heightMm: number) => ({
  storeyId: 'gf',
  at: planPoint(x, y),
  heightMm,
  levelMm: heightMm,
});

/** An upright chase in wall s at `alongMm` between two heights. */
export const uprightOf = (
  alongMm: number,
  heights: [number, number],
  partial: Partial<Segment> = {},
): Segment =>
  segmentOf({
    medium: 'wall-chase',
    from: at(alongMm - 50, 0, heights[0]),
    to: at(alongMm - 50, 0, heights[1]),
    direction: 'vertical',
    wallId: 's',
    side: 'left',
    ...partial,
  });

/** A level chase in wall s at `heightMm` between two places along it. */
export const levelOf = (
  alongs: [number, number],
  heightMm: number,
  partial: Partial<Segment> = {},
): Segment =>
  segmentOf({
    medium: 'wall-chase',
    from: at(alongs[0] - 50, 0, heightMm),
    to: at(alongs[1] - 50, 0, heightMm),
    direction: 'horizontal',
    wallId: 's',
    side: 'left',
    ...partial,
  });

/** A stretch across the joists in the middle of the room at `heightMm` below the floor, which crosses five. */
export const acrossOf = (heightMm: number, partial: Partial<Segment> = {}): Segment =>
  acrossAt(2000, heightMm, partial);

/** The same, so far from the left-hand wall. */
export const acrossAt = (xMm: number, heightMm: number, partial: Partial<Segment> = {}): Segment =>
  segmentOf({
    medium: 'void-across',
    from: at(xMm, 500, heightMm),
    to: at(xMm, 2500, heightMm),
    joistsCrossed: 5,
    ...partial,
  });
