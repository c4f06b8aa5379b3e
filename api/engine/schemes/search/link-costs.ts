import type { Cable } from '#model/cable.ts';
import { USUAL_CABLE } from '../../circuit/usual-cable.ts';
import { cableItem } from '../../takeoff/cable-lines.ts';
import { sleevingBoreMm } from '../../takeoff/earth-lines.ts';
import { kitCountsOf } from '../../takeoff/kit-counts.ts';
import { endMm } from '../../ways/run-length.ts';
import type { WayAim, WayCost, WayEnd } from '../../ways/way-cost.ts';
import { type Aim, weightOf } from './aim.ts';
import type { Link, LinkTable } from './kept-costs.ts';
import type { SearchGround } from './search-ground.ts';
import type { Works } from './works.ts';
import { demandMillipence, taskWorks } from './works-cost.ts';

const noLink: Link = { millipence: Number.POSITIVE_INFINITY, mess: 0 };

/** What cables between two places cost, way and cable and the sleeves at its ends, without the work at the ends. */
export type LinkCosts = (from: WayEnd | null, to: WayEnd | null, cable?: Cable) => Link;

/** The links of one house, each by that of an aim's ways that weighs least. */
export function linkCosts(ground: SearchGround, aim: Aim): LinkCosts {
  const [first, ...others] = aim.ways.map((by) => linksBy(ground, by));
  if (first === undefined) return () => noLink;
  return (from, to, cable) => {
    let least = first(from, to, cable);
    for (const other of others) {
      const link = other(from, to, cable);
      if (weightOf(aim, link) < weightOf(aim, least)) least = link;
    }
    return least;
  };
}

/** By which of an aim's ways a cable is laid. */
export function linkAim(ground: SearchGround, aim: Aim): (from: WayEnd, to: WayEnd, cable?: Cable) => WayAim {
  const kinds = aim.ways.map((by) => ({ by, link: linksBy(ground, by) }));
  return (from, to, cable) => {
    const weights = kinds.map(({ link }) => weightOf(aim, link(from, to, cable)));
    return kinds[weights.indexOf(Math.min(...weights))]?.by ?? 'pence';
  };
}

/** The links by the ways of one kind, each worked out once. */
export function linksBy(ground: SearchGround, by: WayAim): LinkCosts {
  const { ages } = ground.kept;
  const links = ground.kept.links[by];
  return (from, to, cable = USUAL_CABLE) => {
    if (from === null || to === null) return noLink;
    // One entry for both directions: under the end that was asked for earlier.
    const isTurned = (ages.get(from) ?? 0) > (ages.get(to) ?? 0);
    const [older, newer] = isTurned ? [to, from] : [from, to];
    const row = rowOf(links, cable, older);
    const known = row.get(newer);
    if (known !== undefined) return known;
    const way = ground.ways.costs(older, [newer], by)[0] ?? null;
    const link = way === null ? noLink : linkBy(ground, way, { from: older, to: newer, cable });
    row.set(newer, link);
    return link;
  };
}

function rowOf(links: LinkTable, cable: Cable, from: WayEnd): Map<WayEnd, Link> {
  const table = links.get(cable) ?? new Map<WayEnd, Map<WayEnd, Link>>();
  links.set(cable, table);
  const row = table.get(from) ?? new Map<WayEnd, Link>();
  table.set(from, row);
  return row;
}

/** A cable laid by a way: with its ends, and with what it is dearer than the usual one. */
export function linkBy(
  ground: SearchGround,
  way: Pick<WayCost, 'millipence' | 'mess' | 'routeMm'>,
  {
    from,
    to,
    cable,
  }: { readonly from: Pick<WayEnd, 'kind'>; readonly to: Pick<WayEnd, 'kind'>; readonly cable: Cable },
): Link {
  const { allowances } = ground.house;
  const endsM = (endMm(from.kind, allowances) + endMm(to.kind, allowances) + allowances.slackMm) / 1000;
  const routeM = way.routeMm / 1000;
  const millipence =
    way.millipence +
    cableMillipence(ground, cable, endsM) +
    sleevesMillipence(ground, cable) +
    // The way counts with the usual cable along it.
    (cable === USUAL_CABLE
      ? 0
      : cableMillipence(ground, cable, routeM) - cableMillipence(ground, USUAL_CABLE, routeM));
  return { millipence: Math.max(0, millipence), mess: way.mess };
}

function cableMillipence({ library }: SearchGround, cable: Cable, metres: number): number {
  const item = cableItem(cable);
  return demandMillipence({ item, unit: 'm', group: 'cable', measured: metres, causes: ['way'] }, library);
}

function sleevesMillipence({ library }: SearchGround, { type, cpcMm2 }: Cable): number {
  if (!type.startsWith('flat-') || cpcMm2 === 0) return 0;
  const counts = kitCountsOf(library);
  const item = `sleeving-earth-${sleevingBoreMm(cpcMm2, counts)}`;
  const measured = (2 * counts.sleeveMm) / 1000;
  const demand = { item, unit: 'm', group: 'cable', measured, causes: ['way'] } as const;
  return demandMillipence(demand, library);
}

/** What each cable after the first at an accessory takes to connect. */
export const furtherCable = ({ library }: SearchGround): Works => taskWorks('extra-cable', 1, library);
