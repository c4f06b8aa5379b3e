import type { Cable } from '#model/cable.ts';
import { USUAL_CABLE } from '../../circuit/usual-cable.ts';
import { cableItem } from '../../takeoff/cable-lines.ts';
import { SLEEVE_M, sleevingBoreMm } from '../../takeoff/earth-lines.ts';
import { endMm } from '../../ways/run-length.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import type { Link, LinkTable } from './kept-costs.ts';
import type { SearchGround } from './search-ground.ts';
import { demandMillipence, taskMillipence } from './works-cost.ts';

const noLink: Link = { millipence: Number.POSITIVE_INFINITY, mess: 0 };

/** What cables between two places cost, way and cable and the sleeves at its ends, without the work at the ends. */
export type LinkCosts = (from: WayEnd | null, to: WayEnd | null, cable?: Cable) => Link;

/** The links of one house, each worked out once. */
export function linkCosts(ground: SearchGround): LinkCosts {
  const { links, ages } = ground.kept;
  return (from, to, cable = USUAL_CABLE) => {
    if (from === null || to === null) return noLink;
    // From the end that was asked for earlier, so that the ways out of it, which are kept, serve a point that moves.
    const isTurned = (ages.get(from) ?? 0) > (ages.get(to) ?? 0);
    const [older, newer] = isTurned ? [to, from] : [from, to];
    const row = rowOf(links, cable, older);
    const known = row.get(newer);
    if (known !== undefined) return known;
    const link = linkOf(ground, { from: older, to: newer, cable });
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

function linkOf(
  ground: SearchGround,
  { from, to, cable }: { readonly from: WayEnd; readonly to: WayEnd; readonly cable: Cable },
): Link {
  const way = ground.ways.costs(from, [to], 'pence')[0] ?? null;
  if (way === null) return noLink;
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
  const item = `sleeving-earth-${sleevingBoreMm(cpcMm2)}`;
  const demand = { item, unit: 'm', group: 'cable', measured: 2 * SLEEVE_M, causes: ['way'] } as const;
  return demandMillipence(demand, library);
}

/** What each cable after the first at an accessory costs to connect, thousandths of a penny. */
export function furtherCableMillipence({ library }: SearchGround): number {
  return taskMillipence('extra-cable', 1, library);
}
