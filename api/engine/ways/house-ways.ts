import type { Storey } from '#model/building.ts';
import type { Plan } from '../plan/plan.ts';
import { remembered } from '../plan/remembered.ts';
import { type EndInHouse, type EndLayer, inHouse, withEnd } from './graph/end-layer.ts';
import { endLines } from './graph/end-lines.ts';
import { standingPlaces } from './graph/house-face-lines.ts';
import { type HouseNet, houseNet } from './graph/house-net.ts';
import { voidFrames } from './graph/house-void-lines.ts';
import type { Measure } from './graph/line.ts';
import { type FlatNet, type FoundWay, flatNet, type Row, rowFrom, wayInto } from './graph/shortest.ts';
import { nothing } from './graph/way-net.ts';
import { waySegments } from './graph/way-segments.ts';
import type { Weighing } from './graph/weigh.ts';
import type { RouteOptions } from './route.ts';
import type { Segment } from './run.ts';
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

/** How many houses are kept for each tariff, the last asked for first: what is being drawn, and what it is compared with. */
const HOUSES_KEPT = 4;
/** How many rows and ends are kept for a house. */
const ROWS_KEPT = 200;

interface KeptHouse {
  readonly storeys: readonly Storey[];
  readonly standing: string;
  readonly chased: RouteOptions['chased'];
  readonly ways: HouseWays;
}

const housesByTariff = remembered((_tariff: WayTariff): KeptHouse[] => []);

/**
 * The ways of a house. They hang on its storeys and on what stands on its walls, so a house is not worked anew when
 * something else in the job changes: a wanted point that moves leaves all rows from elsewhere as they are.
 */
export function houseWays(plan: Plan, tariff: WayTariff, { chased }: RouteOptions): HouseWays {
  const houses = housesByTariff(tariff);
  const storeys = plan.storeys.map(({ storey }) => storey);
  const standing = standingOn(plan);
  const at = houses.findIndex(
    (house) =>
      house.chased === chased &&
      house.standing === standing &&
      house.storeys.length === storeys.length &&
      house.storeys.every((storey, index) => storey === storeys[index]),
  );
  const [known] = at < 0 ? [] : houses.splice(at, 1);
  const house = known ?? {
    storeys,
    standing,
    chased,
    ways: waysIn(houseNet({ plan, tariff, options: { chased } })),
  };
  houses.unshift(house);
  houses.length = Math.min(houses.length, HOUSES_KEPT);
  return house.ways;
}

/** What stands on the walls of a house, in a text. */
const standingOn = remembered((plan: Plan): string => JSON.stringify(standingPlaces(plan)));

function waysIn(house: HouseNet): HouseWays {
  const { plan } = house.material;
  const flats = new Map<string, FlatNet>();
  const ends = new Map<string, EndInHouse>();
  const layers = new Map<string, EndLayer>();
  const rows = new Map<string, Row | null>();

  const kept = <V>(map: Map<string, V>, key: string, make: () => V): V => {
    const known = map.get(key);
    if (known !== undefined || map.has(key)) return known as V;
    const made = make();
    if (map.size >= ROWS_KEPT) map.delete(map.keys().next().value ?? '');
    map.set(key, made);
    return made;
  };
  const endOf = (end: WayPlace): EndInHouse =>
    kept(ends, keyOf(end), () => inHouse(house, endLines(house, end)));
  const layerOf = (end: WayPlace): EndLayer =>
    kept(layers, keyOf(end), () => withEnd(house, endOf(end), null));
  const flatOf = (weighing: Weighing): FlatNet =>
    kept(flats, weighingKey(weighing), () => flatNet(house.net, weighing));
  const rowOf = (end: WayPlace, weighing: Weighing): Row | null =>
    kept(rows, `${keyOf(end)} ${weighingKey(weighing)}`, () => {
      const { net, node } = layerOf(end);
      return node === null ? null : rowFrom(flatOf(weighing), net, node, weighing);
    });

  const found = (from: WayPlace, to: WayPlace, sought: Sought) => {
    const surface = from.mount === 'surface' || to.mount === 'surface';
    const row = rowOf(from, { surface, ...sought });
    if (row === null) return null;
    const layer = withEnd(house, endOf(to), layerOf(from));
    const way = layer.node === null ? null : wayInto(row, layer.net, layer.node);
    if (way === null || layer.node === null) return null;
    const cost = costOf(way, { ...sought, surface }, [endOf(from), endOf(to)]);
    return { net: layer.net, node: layer.node, way, cost };
  };
  const way = (from: WayPlace, to: WayPlace, sought: Sought): PricedWay | null => {
    const answer = found(from, to, sought);
    if (answer === null) return null;
    const segments = waySegments(plan, answer.net, answer.way, answer.node);
    return { segments, cost: answer.cost };
  };
  return {
    way: (from, to, aim) => way(from, to, { aim }),
    wayAsFound(from, to, knownMm) {
      const asFound = { aim: 'pence', asFound: true } as const;
      const cheapest = way(from, to, asFound);
      if (cheapest === null || knownMm === null || fits(cheapest, knownMm)) return cheapest;
      const others = avoidable(house).map((avoid) => way(from, to, { ...asFound, avoid }));
      return bestFitting([cheapest, ...others.filter((other) => other !== null)], knownMm);
    },
    costs: (from, to, aim) => to.map((end) => found(from, end, { aim })?.cost ?? null),
  };
}

/** What is sought of a way. */
type Sought = Omit<Weighing, 'surface'>;

/** A way fits a known length that it misses by no more than this share, or than this, mm. */
const FITS_SHARE = 0.1;
const FITS_MM = 500;

const fits = ({ cost }: PricedWay, knownMm: number): boolean =>
  Math.abs(cost.routeMm - knownMm) <= Math.max(FITS_MM, knownMm * FITS_SHARE);

/** What ways can avoid: every void, all of them, going level on walls, holes through them. */
const avoidable = ({ material: { plan } }: HouseNet): readonly string[] => [
  ...voidFrames(plan).map(({ key }) => key),
  'void ',
  'level',
  'hole',
];

/** The way whose length is nearest, to 100 mm; of several the cheapest, of those the first. */
function bestFitting(ways: readonly PricedWay[], knownMm: number): PricedWay | null {
  const misfit = ({ cost }: PricedWay) => Math.round(Math.abs(cost.routeMm - knownMm) / 100);
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

function costOf({ steps }: FoundWay, { surface, asFound }: Weighing, ends: readonly EndInHouse[]): WayCost {
  const all = steps.reduce<Measure>((sum, { edge }) => added(sum, edge.measure), nothing);
  const starts = ends.map(({ end }) => end.atStart);
  const sum = (pick: (cost: { millipence: number; minutes: number; mess: number }) => number): number =>
    pick(all) + starts.reduce((total, cost) => total + pick(cost), 0);
  return {
    // A half is a half in whatever order stretches are added up, so that both directions cost the same.
    millipence: Math.round(sum(({ millipence }) => millipence) + 1e-6),
    minutes: sum(({ minutes }) => minutes),
    mess: sum(({ mess }) => mess),
    routeMm: all.lengthMm,
    poor: all.poorMm + (surface ? 0 : all.surfaceMm) + (asFound === true ? 0 : all.unfit) > 0,
  };
}

const added = (a: Measure, b: Measure): Measure => ({
  millipence: a.millipence + b.millipence,
  minutes: a.minutes + b.minutes,
  mess: a.mess + b.mess,
  lengthMm: a.lengthMm + b.lengthMm,
  poorMm: a.poorMm + b.poorMm,
  surfaceMm: a.surfaceMm + b.surfaceMm,
  partyMm: a.partyMm + b.partyMm,
  unfit: a.unfit + b.unfit,
});
