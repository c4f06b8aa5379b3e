import type { Plan } from '#engine/plan/plan.ts';
import type { Position } from '#engine/plan/plane.ts';
import { positionOfPlace } from '#engine/plan/position-of-place.ts';
import type { RouteRequest } from '#engine/ways/route.ts';
import type { Segment } from '#engine/ways/run.ts';
import type { WayTariff, WorkCost } from '#engine/ways/way-tariff.ts';
import type { Place } from '#model/installation.ts';
import { planOf, room, solidFloor, storey, timberFloor, wall } from '#tests/engine/plan/small-house.ts';

const thick = { thicknessMm: 200 };
const stud = { core: 'timber-stud' } as const;

/** A terraced house, the parts of it that the hand-checked runs need: timber floors, brick, one stud partition. */
export function terrace(): Plan {
  const ground = storey('gf', {
    floor: { ...timberFloor, voidMm: 450, joistDepthMm: 100, joistsRunDeg: 90 },
    walls: [
      // The joists go on over it, from party wall to party wall.
      wall('hall-living', [1015, -100], [1015, 3750], { thicknessMm: 130, structural: false }),
      wall('kitchen-w', [-100, 7200], [-100, 10300], thick),
    ],
  });
  const first = storey('ff', {
    floorLevelMm: 2725,
    walls: [
      wall('s', [-100, -100], [4300, -100], thick),
      wall('e1', [4300, -100], [4300, 3750], thick),
      wall('e2', [4300, 3750], [4300, 7100], thick),
      wall('n2', [4300, 7100], [1000, 7100], thick),
      wall('n1', [1000, 7100], [-100, 7100], thick),
      wall('w2', [-100, 7100], [-100, 3750], thick),
      wall('w1', [-100, 3750], [-100, -100], thick),
      wall('mid1', [-100, 3750], [1000, 3750], stud),
      wall('mid2', [1000, 3750], [4300, 3750], stud),
      wall('landing', [1000, 3750], [1000, 7100], stud),
    ],
    rooms: [
      room('bed1', [
        ['s', 'left'],
        ['e1', 'left'],
        ['mid2', 'right'],
        ['mid1', 'right'],
        ['w1', 'left'],
      ]),
      room('bed2', [
        ['mid2', 'left'],
        ['e2', 'left'],
        ['n2', 'left'],
        ['landing', 'right'],
      ]),
      room('land', [
        ['mid1', 'left'],
        ['landing', 'left'],
        ['n1', 'left'],
        ['w2', 'left'],
      ]),
    ],
    ceiling: { lining: 'plasterboard', loft: true },
  });
  return planOf([ground, first]);
}

/** Places in the terrace, by the names of its points. */
export const terracePlaces = {
  R1: { wall: 'hall-living', side: 'left', alongMm: 2600, heightMm: 300 },
  W1: { wall: 'hall-living', side: 'right', alongMm: 2300, heightMm: 450 },
  R6: { wall: 'kitchen-w', side: 'right', alongMm: 2200, heightMm: 1100 },
  W4: { wall: 'kitchen-w', side: 'right', alongMm: 1300, heightMm: 1100 },
  R8: { wall: 'e2', side: 'left', alongMm: 1250, heightMm: 300 },
  R9: { wall: 'e1', side: 'left', alongMm: 1000, heightMm: 300 },
  W3: { wall: 'landing', side: 'right', alongMm: 1450, heightMm: 450 },
  W2: { wall: 's', side: 'left', alongMm: 2900, heightMm: 450 },
  joint: { storey: 'ff', at: [2900, 900], heightMm: -110 },
} satisfies Record<string, Place>;

/** A semi, its kitchen: solid ground floor, ceiling at 2400, timber floor above with its cable level at 2478, the middle of its joists. */
export function semi(): Plan {
  const ground = storey('gf', {
    heightMm: 2400,
    floor: solidFloor,
    walls: [
      wall('kitchen-s', [-100, 4350], [5700, 4350], { core: 'block' }),
      wall('party', [-100, 4350], [-100, 8500], { ...thick, core: 'block' }),
    ],
  });
  const first = storey('ff', {
    floorLevelMm: 2610,
    floor: { ...timberFloor, joistDepthMm: 220, voidMm: 210, joistsRunDeg: 90 },
  });
  return planOf([ground, first]);
}

/** Places in the semi, by the names of its points. */
export const semiPlaces = {
  A4: { wall: 'party', side: 'right', alongMm: 850, heightMm: 450 },
  unit: { wall: 'kitchen-s', side: 'left', alongMm: 1000, heightMm: 1100 },
  B1: { wall: 'kitchen-s', side: 'left', alongMm: 1900, heightMm: 1100 },
  B2: { wall: 'kitchen-s', side: 'left', alongMm: 2800, heightMm: 1100 },
  B3: { wall: 'kitchen-s', side: 'left', alongMm: 3700, heightMm: 1100 },
  joint: { storey: 'ff', at: [0, 4400], heightMm: -110 },
} satisfies Record<string, Place>;

const pence = (perUnit: number): WorkCost => ({ millipence: perUnit * 1000, minutes: 0, mess: 0 });
const chases = (perM: number): WayTariff['chase'] => ({
  brick: pence(perM),
  'hard-brick': pence(perM),
  block: pence(perM),
  'aerated-block': pence(perM),
  concrete: pence(perM),
  'timber-stud': pence(perM),
  'metal-stud': pence(perM),
  open: pence(perM),
});

/** An invented tariff: a metre of chase costs most, then channel, then voids. */
export const tariff: WayTariff = {
  thread: pence(150),
  clip: pence(400),
  channel: pence(1100),
  channelTurn: { flat: pence(90), internal: pence(100), external: pence(110) },
  trench: pence(4000),
  chased: 'oval',
  filling: 'one-coat',
  chase: chases(1700),
  chaseBoard: pence(1300),
  severalInChase: { deeperMm: 5, more: [pence(100), pence(200)] },
  board: { 'lift-board': pence(200), 'chipboard-trap': pence(400), 'open-fixed-floor': pence(800) },
  joist: pence(300),
  joistNotch: pence(700),
  stud: pence(900),
  wallHole: pence(700),
  fish: pence(200),
  cableMillipencePerM: 100_000,
};

/** The same with another price of chasing, pence a metre. */
export const tariffOfChase = (perM: number): WayTariff => ({ ...tariff, chase: chases(perM) });

/** A request between two places of a plan; fails the test when a place is not there. */
export function requestBetween(
  plan: Plan,
  [from, to]: readonly [Place, Place],
  more: Partial<RouteRequest> = {},
): RouteRequest {
  return {
    plan,
    from: knownPosition(plan, from),
    to: knownPosition(plan, to),
    via: [],
    fromMount: null,
    toMount: null,
    tariff,
    ...more,
  };
}

function knownPosition(plan: Plan, place: Place): Position {
  const position = positionOfPlace(plan, place);
  if (position === null) throw new Error(`no position for ${JSON.stringify(place)}`);
  return position;
}

/** The stretches as `medium length`, lengths to the millimetre. */
export function inShort(segments: readonly Segment[]): readonly string[] {
  return segments.map(({ medium, lengthMm }) => `${medium} ${Math.round(lengthMm)}`);
}
