import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Wall } from '#model/building.ts';
import type { Waypoint } from '#model/cable.ts';
import type { Circuit, Leg, Place, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { fourWalls, room, storey, timberFloor } from '../../plan/small-house.ts';
import { boardOf, circuitOf, jobOf, legOf, pointOf } from '../../rules/facts-builder.ts';
import { numbersOf } from './random-house.ts';

/** A house at random, with the legs that a person allows to be cut though their way is only assumed. */
export interface VariedHouse {
  readonly job: Job;
  readonly allowAssumedLegs: readonly string[];
}

/** Chance by one seed. */
interface Dice {
  readonly of: (share: number) => boolean;
  readonly upTo: (count: number) => number;
  readonly between: (low: number, high: number) => number;
}

function diceOf(seed: number): Dice {
  const next = numbersOf(seed);
  return {
    of: (share) => next() < share,
    upTo: (count) => Math.floor(next() * count),
    between: (low, high) => Math.round(low + next() * (high - low)),
  };
}

/** How far below the floor a leg runs, mm. */
const UNDER_MM = 110;
const GROUND = { id: 'gf', floorLevelMm: 0, voidMm: 300, prefix: '' };
const FIRST = { id: 'ff', floorLevelMm: 2725, voidMm: 225, prefix: 'u-' };

/**
 * One or two rooms over each other, in brick or studs: a ring (perhaps with spurs) or a radial, with an RCD or without, in
 * old colours or new, some boxes small or unknown, some legs followed, a board with a free way or none, cables chased in oval tube,
 * under capping or bare; wanted are `wanted` outlets, the last of them now and then a fused unit, with a fixed load or without.
 */
export function variedHouse(seed: number, wanted: number): VariedHouse {
  const dice = diceOf(seed);
  const [widthMm, depthMm] = [dice.between(3000, 7000), dice.between(3000, 7000)];
  const core: Wall['core'] = dice.of(0.3) ? 'timber-stud' : 'brick';
  const floors = dice.of(0.4) ? [GROUND, FIRST] : [GROUND];
  const storeys = floors.map(({ id, floorLevelMm, voidMm, prefix }) => {
    const { walls, sides } = fourWalls(widthMm, depthMm, { prefix, more: { core } });
    const floor = { ...timberFloor, voidMm };
    return storey(id, { floorLevelMm, floor, walls, rooms: [room(`${prefix}room`, sides)] });
  });
  const place = placesAt(dice, { widthMm, depthMm, prefixes: floors.map(({ prefix }) => prefix) });
  const isRing = dice.of(0.7);
  const found = foundPoints(dice, place, isRing);
  const legs = isRing ? ringLegs(dice, found) : radialLegs(dice, found);
  const bare = jobOf({
    storeys,
    boards: [
      boardOf('b1', {
        place: { ...place(), heightMm: 1500 },
        spareWays: dice.of(0.5) ? 1 : 0,
        rcboAvailable: dice.of(0.85),
      }),
    ],
    circuits: [circuitAt(dice, isRing)],
    points: [...found.trunk, ...found.spurs, ...wantedPoints(dice, place, wanted)],
    legs: [...legs],
  });
  const followed = { ...bare, legs: bare.legs.map((leg) => withWay(dice, bare, leg)) };
  const chased = (['oval', 'capping', 'none'] as const)[dice.upTo(3)] ?? 'oval';
  const job = { ...followed, terms: { ...followed.terms, chased } };
  const isAssumed = (leg: Leg): boolean => leg.certainty?.route === 'assumed';
  return { job, allowAssumedLegs: followed.legs.filter(isAssumed).map(({ id }) => id) };
}

type TakePlace = () => Extract<Place, { wall: string }>;

interface Rooms {
  readonly widthMm: number;
  readonly depthMm: number;
  readonly prefixes: readonly string[];
}

/** Places along the walls of all rooms, 250 mm apart at least. */
function placesAt(dice: Dice, { widthMm, depthMm, prefixes }: Rooms): TakePlace {
  const taken: { readonly wall: string; readonly mm: number }[] = [];
  return () => {
    for (;;) {
      const name = ['s', 'e', 'n', 'w'][dice.upTo(4)] ?? 's';
      const wall = `${prefixes[dice.upTo(prefixes.length)] ?? ''}${name}`;
      const longMm = name === 's' || name === 'n' ? widthMm : depthMm;
      const alongMm = dice.between(500, longMm - 400);
      if (taken.some((other) => other.wall === wall && Math.abs(other.mm - alongMm) < 250)) continue;
      taken.push({ wall, mm: alongMm });
      return { wall, side: 'left', alongMm, heightMm: 450 };
    }
  };
}

interface Found {
  readonly trunk: readonly Point[];
  readonly spurs: readonly Point[];
}

function foundPoints(dice: Dice, place: TakePlace, isRing: boolean): Found {
  const point = (id: string): Point => {
    const boxDepthMm = [25, 35, 35, null][dice.upTo(4)] ?? null;
    return pointOf(id, {
      circuit: 'c',
      kind: dice.of(0.25) ? 'socket-single' : 'socket-twin',
      place: place(),
      ...(boxDepthMm === null ? {} : { asFound: { boxDepthMm } }),
    });
  };
  const trunk = Array.from({ length: dice.between(2, 4) }, (_, i) => point(`p${i + 1}`));
  const spurs = Array.from({ length: isRing ? dice.upTo(3) : dice.upTo(2) }, (_, i) => point(`s${i + 1}`));
  return { trunk, spurs: spurs.slice(0, trunk.length) };
}

function ringLegs(dice: Dice, { trunk, spurs }: Found): readonly Leg[] {
  const stops = ['c', ...trunk.map(({ id }) => id), 'c'];
  const first = dice.upTo(trunk.length);
  return [
    ...stops.slice(1).map((to, i) => legOf(`l${i + 1}`, stops[i] ?? 'c', to)),
    ...spurs.map(({ id }, i) => legOf(`l-${id}`, trunk[(first + i) % trunk.length]?.id ?? 'p1', id)),
  ];
}

function radialLegs(dice: Dice, { trunk, spurs }: Found): readonly Leg[] {
  const stops = ['c', ...trunk.map(({ id }) => id)];
  const branch = trunk[dice.upTo(trunk.length)]?.id ?? 'p1';
  return [
    ...stops.slice(1).map((to, i) => legOf(`l${i + 1}`, stops[i] ?? 'c', to)),
    ...spurs.map(({ id }) => legOf(`l-${id}`, branch, id)),
  ];
}

function circuitAt(dice: Dice, isRing: boolean): Circuit {
  const ratingA = isRing ? 32 : 20;
  const hasRcd = dice.of(0.5);
  return circuitOf('c', {
    shape: isRing ? 'ring' : 'radial',
    colours: dice.of(0.5) ? 'old' : 'new',
    device: hasRcd
      ? { standard: 'BS-EN-61009', curve: 'B', ratingA, rcd: { type: 'A', mA: 30 } }
      : { standard: 'BS-EN-60898', curve: 'B', ratingA },
    certainty: { order: 'measured' },
  });
}

function wantedPoints(dice: Dice, place: TakePlace, count: number): readonly Point[] {
  const isUnit = dice.of(0.25);
  return Array.from({ length: count }, (_, i): Point => {
    const head = { status: 'wanted', place: place() } as const;
    if (!isUnit || i < count - 1)
      return pointOf(`w${i + 1}`, { ...head, kind: dice.of(0.2) ? 'socket-single' : 'socket-twin' });
    return dice.of(0.6)
      ? pointOf(`w${i + 1}`, {
          ...head,
          kind: 'fused-unit',
          unit: { fuseA: 3, switched: true, flexOutlet: true },
          load: { watts: dice.between(100, 600), use: 'boiler', fixed: true },
        })
      : pointOf(`w${i + 1}`, { ...head, kind: 'fused-unit', unit: { fuseA: 13, switched: true } });
  });
}

/** Of legs within one storey some were followed under the floor, and of some that is what people think. */
function withWay(dice: Dice, job: Job, leg: Leg): Leg {
  const plan = buildPlan(job);
  const [from, to] = [leg.from, leg.to].map((end) =>
    'point' in end ? plan.positionOfPoint.get(end.point) : plan.positionOfBoard.get('b1'),
  );
  const chance = dice.upTo(4);
  if (from === undefined || to === undefined || from.storeyId !== to.storeyId || chance === 0) return leg;
  const [a, b] = [from.at, to.at];
  const levelMm = Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]);
  const lengthMm = Math.round((levelMm + from.heightMm + to.heightMm + 2 * UNDER_MM) * 1.05 + 400);
  const corners: readonly (readonly [number, number])[] = [a, [b[0], a[1]], b];
  const via = corners.map(([x, y]): Waypoint => ({ storey: from.storeyId, at: [x, y], heightMm: -UNDER_MM }));
  if (chance === 1) return { ...leg, lengthMm };
  const route = chance === 2 ? 'seen' : 'assumed';
  return { ...leg, lengthMm, via, certainty: { length: 'measured', route } };
}
