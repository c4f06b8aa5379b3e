import type { Library } from '#model/library.ts';
import { USUAL_CABLE } from '../../circuit/usual-cable.ts';
import { cableItem } from '../../takeoff/cable-lines.ts';
import { houseWays } from '../../ways/house-ways.ts';
import { cutsOf } from '../../ways/run-cuts.ts';
import { stepsOf } from '../../ways/steps.ts';
import type { WayAim, WayCost, WayEnd, WaysOfHouse } from '../../ways/way-cost.ts';
import type { House } from '../work-scheme.ts';
import { plainWays } from './plain-ways.ts';
import { wholeMess } from './works.ts';
import { demandMillipence } from './works-cost.ts';

/**
 * The ways of a house through its net. Where nothing that is drawn leads, the way that is assumed there counts, as it
 * does in every scheme, and is called poor.
 */
export function waysInHouse(house: House, library: Library): WaysOfHouse {
  const { plan, tariff } = house;
  const net = houseWays(plan, tariff);
  const assumed = plainWays(house, library);
  const assumedCost = (from: WayEnd, to: WayEnd, aim: WayAim): WayCost | null => {
    const cost = assumed.costs(from, [to], aim)[0] ?? null;
    return cost === null ? null : { ...cost, poor: true };
  };
  const withWaste = (cost: WayCost): WayCost => {
    const metres = cost.routeMm / 1000;
    const more = cableMillipence(library, metres) - tariff.cableMillipencePerM * metres;
    return {
      ...cost,
      millipence: Math.round(cost.millipence + more),
      mess: wholeMess(cost.mess),
    };
  };
  return {
    costs: (from, to, aim) =>
      net
        .costs(from, to, aim)
        .map((cost, i) => (cost === null ? assumedCost(from, to[i] as WayEnd, aim) : withWaste(cost))),
    route: (from, to, aim) => {
      const way = net.way(from, to, aim);
      if (way === null) return assumed.route(from, to, aim);
      return {
        segments: way.segments,
        steps: stepsOf(plan, way.segments, { cuts: cutsOf(plan, way.segments), cable: USUAL_CABLE }),
      };
    },
  };
}

/** The usual cable by the metre of way, what is wasted of it included. */
function cableMillipence(library: Library, metres: number): number {
  const item = cableItem(USUAL_CABLE);
  return demandMillipence({ item, unit: 'm', group: 'cable', measured: metres, causes: ['way'] }, library);
}
