import type { End } from '#model/cable.ts';
import type { Cut } from '#model/scheme.ts';
import type { NetworkEdge } from '../../circuit/network.ts';
import type { CircuitShape } from '../../circuit/shape.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { jointSpots, mayCut } from './attachments.ts';
import { cheapestOrders } from './cheapest-orders.ts';
import { sizeOf } from './point-prices.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { endOfNode, type Part, type SearchGround } from './search-ground.ts';
import { type CableBetween, mostSharedWeight } from './shared-works.ts';
import { spotsInTurn } from './spots-in-turn.ts';
import { type Works, worksTimes, worksTogether } from './works.ts';
import { endsWorks, neededBeforeFuse, type Workshop } from './workshop.ts';

/** One way to open a leg: how its two sides are joined to the new cable, and where. */
interface Opening {
  readonly key: string;
  readonly out: Cut;
  readonly back: Cut;
  readonly from: WayEnd | null;
  readonly to: WayEnd | null;
}

/**
 * A ring or a radial carried through every set of wanted points where one of its legs is opened, each set in its cheapest order and by
 * its cheapest opening, with the other openings in turn where a rule bars that. On a radial this leaves no more cables at either end of
 * the leg than there were, where a branch would add one.
 */
export function extensionColumns(
  shop: Workshop,
  shape: CircuitShape,
  legId: string,
): readonly SchemeColumn[] {
  const openings = openingsOf(shop.ground, legId);
  const opened = (groups: readonly (readonly Opening[])[]) =>
    groups.flatMap((alike) => openedColumns(shop, { shape, legId, openings: alike }));
  const one = opened(alikeOf(openings));
  if (openings.length < 2) return one;
  const all = () => opened(openings.map((opening) => [opening]));
  return spotsInTurn(one, all).toSorted((a, b) => a.mask - b.mask);
}

/** The cable that is a whole leg. */
const edgeOf = ({ network }: SearchGround, legId: string): NetworkEdge | undefined =>
  network.edges.find(({ id }) => id === legId);

function openingsOf(ground: SearchGround, legId: string): readonly Opening[] {
  const edge = edgeOf(ground, legId);
  if (edge === undefined) return [];
  const [from, to] = [endOfNode(ground, edge.from), endOfNode(ground, edge.to)];
  const lifted: Cut = { how: 'terminals' };
  const [fromLifts, toLifts] = [hasTerminals(ground, edge.from), hasTerminals(ground, edge.to)];
  const whole = fromLifts && toLifts ? [{ key: 'lifted', out: lifted, back: lifted, from, to }] : [];
  if (!mayCut(ground, legId)) return whole;
  const spots = jointSpots(ground, legId);
  const cuts = spots.flatMap(({ alongMm, end }): readonly Opening[] => {
    const joint: Cut = { how: 'joint', alongMm };
    // Between two cuts the leg is taken out, so the second is no nearer to where the leg comes from.
    const others = spots.filter((other) => other.alongMm >= alongMm);
    return [
      ...others.map((other) => ({
        key: `joints@${alongMm}-${other.alongMm}`,
        out: joint,
        back: { how: 'joint', alongMm: other.alongMm } as const,
        ...{ from: end, to: other.end },
      })),
      ...(toLifts ? [{ key: `out@${alongMm}`, out: joint, back: lifted, from: end, to }] : []),
      ...(fromLifts ? [{ key: `back@${alongMm}`, out: lifted, back: joint, from, to: end }] : []),
    ];
  });
  return [...whole, ...cuts];
}

/** Openings by how their sides are joined: what takes the same at its ends. */
function alikeOf(openings: readonly Opening[]): readonly (readonly Opening[])[] {
  const byHow = new Map<string, Opening[]>();
  for (const opening of openings) {
    const how = `${opening.out.how} ${opening.back.how}`;
    const alike = byHow.get(how) ?? [];
    byHow.set(how, alike);
    alike.push(opening);
  }
  return [...byHow.values()];
}

function hasTerminals({ nodeById }: SearchGround, nodeId: string): boolean {
  const kind = nodeById.get(nodeId)?.kind;
  return kind === 'terminals' || kind === 'load-terminals' || kind === 'origin';
}

interface Opened {
  readonly shape: CircuitShape;
  readonly legId: string;
  /** Alike, one at least. */
  readonly openings: readonly Opening[];
}

function openedColumns(shop: Workshop, opened: Opened): readonly SchemeColumn[] {
  const { shape, legId, openings } = opened;
  const { ground, link, sample, weigh, further } = shop;
  const { wanted } = ground;
  const [any] = openings;
  if (any === undefined || sample === null || sample.isUnit) return [];
  const rowOf = (end: WayEnd | null) =>
    wanted.map((each) => (each.isUnit ? Number.POSITIVE_INFINITY : weigh(link(end, each.end))));
  const part = ({ out, back }: Opening, through: readonly string[]): Part => ({
    kind: 'ring-extension',
    circuit: shape.circuitId,
    between: betweenOf(ground, legId),
    leg: legId,
    out,
    back,
    through: [...through],
  });
  // With one point between them, both ends and its second cable; each further point has a second cable too.
  const endsOfOne = endsOf(shop, { legId, ...any }, part(any, [sample.point.id]));
  const mustCarryA = neededBeforeFuse(shop, shape.circuitId);
  const ends = openings.map(({ from, to }) => ({ fromA: rowOf(from), fromB: rowOf(to) }));
  const orders = cheapestOrders(shop.paths, ends);
  return orders.flatMap((found, set): readonly SchemeColumn[] => {
    const mask = shop.sets.masks[set] as number;
    const opening = openings[found?.by ?? -1];
    if (found === null || opening === undefined) return [];
    const { order } = found;
    const cables = (): readonly CableBetween[] => {
      const stops = [opening.from, ...order().map((i) => wanted[i]?.end ?? null), opening.to];
      return stops.slice(1).map((to, i) => ({ from: stops[i] ?? null, to, mustCarryA }));
    };
    const works = (): Works => {
      const links = cables().map(({ from, to }) => link(from, to));
      return worksTogether([endsOfOne, ...links, worksTimes(further, links.length - 2)]);
    };
    return [
      {
        mask,
        cost: Math.max(0, weigh(endsOfOne) + found.cost),
        key: `leg/${legId}/${opening.key}/${mask}`,
        kind: 'ring-extension',
        circuitIds: [shape.circuitId],
        ...{ works, cables },
        mostShared: mostSharedWeight(found.cost, 1 + sizeOf(mask)),
        parts: () => [
          part(
            opening,
            order().map((i) => wanted[i]?.point.id ?? ''),
          ),
        ],
      },
    ];
  });
}

/** Openings of one kind at one leg take the same at their ends, wherever the joints are. */
function endsOf(
  shop: Workshop,
  { legId, out, back }: Pick<Opening, 'out' | 'back'> & { readonly legId: string },
  part: Part,
): Works {
  return endsWorks(shop, `leg/${legId} ${out.how} ${back.how}`, [part]);
}

function betweenOf(ground: SearchGround, legId: string): [End, End] {
  const edge = edgeOf(ground, legId);
  const endOf = (nodeId: string): End => {
    const node = ground.nodeById.get(nodeId);
    if (node?.kind === 'origin')
      return { origin: nodeId, ...(edge?.originEnd ? { end: edge.originEnd } : {}) };
    const point = node?.pointId ?? nodeId;
    return node?.kind === 'load-terminals' ? { point, side: 'load' } : { point };
  };
  return [endOf(edge?.from ?? ''), endOf(edge?.to ?? '')];
}
