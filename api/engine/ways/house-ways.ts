import type { Storey } from '#model/building.ts';
import type { Plan } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import { remembered } from '../plan/remembered.ts';
import { type EndLayer, endLayer } from './graph/end-layer.ts';
import { endLines } from './graph/end-lines.ts';
import { standingPlaces } from './graph/house-face-lines.ts';
import { type HouseNet, houseNet } from './graph/house-net.ts';
import { voidFrames } from './graph/house-void-lines.ts';
import { Kept } from './graph/kept.ts';
import { nothing } from './graph/line.ts';
import { Meetings } from './graph/meeting.ts';
import { Row } from './graph/row.ts';
import { type FoundWay, WaysInto } from './graph/shortest.ts';
import { TwoEnds } from './graph/two-ends.ts';
import { waySegments } from './graph/way-segments.ts';
import type { Weighing } from './graph/weigh.ts';
import { WeighedWays } from './graph/weighed-ways.ts';
import type { Segment } from './run.ts';
import { reversedSegments } from './segment.ts';
import type { WayAim, WayCost, WayPlace } from './way-cost.ts';
import type { WayTariff } from './way-tariff.ts';

/** A way between two ends with its stretches and what it comes to. */
export interface PricedWay {
  readonly segments: readonly Segment[];
  readonly cost: WayCost;
}

/** Where cable may go in one house. Rows and ends are kept: asking again for an end that has not moved costs little. */
export interface HouseWays {
  /** The least way; null where nothing that is drawn leads there. */
  way(from: WayPlace, to: WayPlace, aim: WayAim): PricedWay | null;
  /**
   * The likeliest way of a cable that is there already: the cheapest, if it is about as long as is known of it, else of those that avoid this
   * and that the one that fits best, the cheaper of two that fit alike.
   */
  wayAsFound(from: WayPlace, to: WayPlace, knownMm: number | null): PricedWay | null;
  /** What it comes to, from one end to each of others, in their order. */
  costs(from: WayPlace, to: readonly WayPlace[], aim: WayAim): readonly (WayCost | null)[];
}

/** How many houses are kept, the last asked for first: what is being drawn, and what it is compared with. */
const HOUSES_KEPT = 4;
/** How many weighings, rows, ends and answers are kept for a house. */
const WEIGHINGS_KEPT = 32;
const ROWS_KEPT = 64;
const ENDS_KEPT = 512;
const ANSWERS_KEPT = 4096;

/** The houses last asked for, by all that their ways hang on. */
const houses = new Map<string, HouseWays>();

/**
 * The ways of a house. They hang on its storeys, on what stands on its walls and on the tariff, so a house is not worked
 * anew when something else in the job changes: a wanted point that moves leaves all rows from elsewhere as they are.
 */
export function houseWays(plan: Plan, tariff: WayTariff): HouseWays {
  const drawn = plan.storeys.map(({ storey }) => textOfStorey(storey));
  const key = [textOfTariff(tariff), standingOn(plan), ...drawn].join('\n');
  const ways = houses.get(key) ?? waysIn(houseNet({ plan, tariff }));
  houses.delete(key);
  houses.set(key, ways);
  if (houses.size > HOUSES_KEPT) houses.delete(houses.keys().next().value ?? '');
  return ways;
}

const textOfStorey = remembered((storey: Storey): string => JSON.stringify(storey));
const textOfTariff = remembered((tariff: WayTariff): string => JSON.stringify(tariff));

const textOfPlace = ({ storeyId, at, heightMm }: Position): string =>
  `${storeyId} ${at.join(' ')} ${heightMm}`;

/** What stands on the walls of a house, in a text. */
const standingOn = remembered((plan: Plan): string => JSON.stringify(standingPlaces(plan)));

function waysIn(house: HouseNet): HouseWays {
  const found = finder(house);
  const answers = new Kept<PricedWay | null>(ANSWERS_KEPT);
  const priced = ({ ends, way, turned, cost }: Found): PricedWay => {
    const segments = waySegments(house.material.plan, ends, way);
    return { segments: turned ? reversedSegments(segments) : segments, cost };
  };
  const likeliest = (from: WayPlace, to: WayPlace, knownMm: number | null): Found | null => {
    const cheapest = found(from, to, asFound);
    if (cheapest === null || knownMm === null || fits(cheapest, knownMm)) return cheapest;
    const withinMm = longestUseful(cheapest, knownMm);
    // What it does not use it has avoided already.
    const used = avoidable(house).filter((avoid) => goesBy(cheapest, avoid));
    const others = used.flatMap((avoid) => found(from, to, { ...asFound, avoid, withinMm }) ?? []);
    return bestFitting([cheapest, ...others], knownMm);
  };
  const answered = (key: string, work: () => Found | null): PricedWay | null =>
    answers.get(key, () => {
      const answer = work();
      return answer === null ? null : priced(answer);
    });
  return {
    way: (from, to, aim) => answered(`${keyOf(from)} ${keyOf(to)} ${aim}`, () => found(from, to, { aim })),
    wayAsFound: (from, to, knownMm) =>
      answered(`${keyOf(from)} ${keyOf(to)} found ${knownMm}`, () => likeliest(from, to, knownMm)),
    costs: (from, to, aim) => to.map((end) => found(from, end, { aim })?.cost ?? null),
  };
}

/** How cables are weighed that are there already. */
const asFound = { aim: 'pence', asFound: true } as const;

/** A way between two ends of a house as its net has it. */
interface Found {
  readonly ends: TwoEnds;
  readonly way: FoundWay;
  readonly cost: WayCost;
  /** Whether it was worked from the second end to the first. */
  readonly turned: boolean;
}

const goesBy = ({ way }: Found, kind: string): boolean =>
  way.steps.some(({ edge }) => edge.way?.startsWith(kind) === true);

/** Finds the least way between two ends of a house, keeping what each end brings and the rows worked from it. */
function finder(house: HouseNet) {
  const layers = new Kept<EndLayer>(ENDS_KEPT);
  const ways = house.net.ways();
  const weighed = new Kept<WeighedWays>(WEIGHINGS_KEPT);
  const rows = new Kept<Row | null>(ROWS_KEPT);
  const isTurned = turning(house);
  const layerOf = (end: WayPlace) => layers.get(keyOf(end), () => endLayer(house, endLines(house, end)));
  const weighedBy = (weighing: Weighing) =>
    weighed.get(weighingKey(weighing), () => new WeighedWays(ways, weighing));
  const rowOf = (end: WayPlace, weighing: Weighing): Row | null =>
    rows.get(`${keyOf(end)} ${weighingKey(weighing)}`, () => {
      const { net, node } = layerOf(end);
      return node === null ? null : new Row(weighedBy(weighing), net, node);
    });
  const meetings = new Meetings(house.net.nodeCount);
  const waysInto = new WaysInto();
  // Cables that are there have each their own two ends: rows would be kept for nobody.
  const wayBetween = (from: WayPlace, ends: TwoEnds, weighing: Weighing, withinMm?: number) => {
    const { node: start } = layerOf(from);
    const { target } = ends;
    if (start === null || target === null) return null;
    return meetings.between(weighedBy(weighing), { ends, start, target, withinMm: withinMm ?? Infinity });
  };
  return (a: WayPlace, b: WayPlace, { withinMm, ...sought }: Sought): Found | null => {
    const turned = isTurned(a, b);
    const [from, to] = turned ? [b, a] : [a, b];
    const surface = from.mount === 'surface' || to.mount === 'surface';
    const weighing = { surface, ...sought };
    const [own, other] = [layerOf(from), layerOf(to)];
    const ends = new TwoEnds(house, own, other);
    const row = sought.asFound ? null : rowOf(from, weighing);
    const way = row === null ? wayBetween(from, ends, weighing, withinMm) : waysInto.way(row, ends);
    if (way === null) return null;
    return { ends, way, cost: costOf(way, weighing, [own, other]), turned };
  };
}

/** A place this near to what stands is as good as one that stands itself: a unit beside an outlet, mm. */
const BESIDE_MM = 500;

/**
 * Whether the row is worked from the second of two ends: from the one that does not stand there yet, since little is new
 * and much is there. The same pair has the same row in both directions.
 */
function turning({ material: { plan } }: HouseNet): (from: WayPlace, to: WayPlace) => boolean {
  const standing = standingPlaces(plan);
  const standsAt = new Kept<boolean>(ENDS_KEPT);
  const isBeside = (a: Position, b: Position): boolean =>
    Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1], a.levelMm - b.levelMm) <= BESIDE_MM;
  // Off walls there are only cables, and joints in them.
  const stands = ({ position }: WayPlace): boolean =>
    position.onWall === undefined ||
    standsAt.get(textOfPlace(position), () => standing.some((other) => isBeside(position, other)));
  return (from, to) => {
    const [first, second] = [stands(from), stands(to)];
    return first === second ? keyOf(from) > keyOf(to) : first === true;
  };
}

/** What is sought of a way. */
interface Sought extends Omit<Weighing, 'surface'> {
  /** Ways that are longer are of no use, mm; absent: all are. */
  readonly withinMm?: number;
}

/** A way fits a known length that it misses by no more than this share, or than this, mm. */
const FITS_SHARE = 0.1;
const FITS_MM = 500;

const fits = ({ cost }: Found, knownMm: number): boolean =>
  Math.abs(cost.routeMm - knownMm) <= Math.max(FITS_MM, knownMm * FITS_SHARE);

/** What ways can avoid: every void, all of them, going level on walls, holes through them. */
const avoidable = ({ material: { plan } }: HouseNet): readonly string[] => [
  ...voidFrames(plan).map(({ key }) => key),
  'void ',
  'level',
  'hole',
];

/** Lengths are told apart to so much, mm. */
const MISFIT_STEP_MM = 100;

/** No way that is longer fits better than this one. */
const longestUseful = ({ cost }: Found, knownMm: number): number =>
  knownMm + Math.abs(cost.routeMm - knownMm) + MISFIT_STEP_MM;

/** The way whose length is nearest, to 100 mm; of several the cheapest, of those the first. */
function bestFitting(ways: readonly Found[], knownMm: number): Found | null {
  const misfit = ({ cost }: Found) => Math.round(Math.abs(cost.routeMm - knownMm) / MISFIT_STEP_MM);
  const [best] = ways.toSorted(
    (a, b) =>
      Number(a.cost.poor) - Number(b.cost.poor) ||
      misfit(a) - misfit(b) ||
      a.cost.millipence - b.cost.millipence,
  );
  return best ?? null;
}

const keyOf = ({ position, mount }: WayPlace): string => {
  const { storeyId, at, heightMm, onWall } = position;
  const wall = onWall === undefined ? '' : `${onWall.wallId} ${onWall.side} ${onWall.alongMm}`;
  return `${storeyId} ${at[0]} ${at[1]} ${heightMm} ${wall} ${mount}`;
};

const weighingKey = ({ aim, surface, avoid, asFound }: Weighing): string =>
  `${aim} ${surface} ${asFound ?? false} ${avoid ?? ''}`;

function costOf({ steps }: FoundWay, { surface, asFound }: Weighing, ends: readonly EndLayer[]): WayCost {
  const all = { ...nothing };
  for (const { edge } of steps) edge.addTo(all);
  const starts = ends.map(({ atStart }) => atStart);
  const sum = (pick: (cost: { millipence: number; minutes: number; mess: number }) => number): number =>
    pick(all) + starts.reduce((total, cost) => total + pick(cost), 0);
  return {
    // A half is a half in whatever order stretches are added up, so that both directions cost the same.
    millipence: Math.round(sum(({ millipence }) => millipence) + 1e-6),
    minutes: sum(({ minutes }) => minutes),
    mess: sum(({ mess }) => mess),
    routeMm: all.lengthMm,
    poor: all.poorMm + (surface ? 0 : all.surfaceMm) + (asFound === true ? 0 : all.unfit + all.warmMm) > 0,
  };
}
