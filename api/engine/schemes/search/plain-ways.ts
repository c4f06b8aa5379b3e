import type { Library } from '#model/library.ts';
import { USUAL_CABLE } from '../../circuit/usual-cable.ts';
import type { Worked } from '../../connections/worked.ts';
import { cableWork } from '../../labour/cable-work.ts';
import { chaseWork } from '../../labour/chase-work.ts';
import { floorWork } from '../../labour/floor-work.ts';
import { unitMess } from '../../labour/mess.ts';
import { taskMinutes } from '../../labour/task-minutes.ts';
import { cableItem } from '../../takeoff/cable-lines.ts';
import { clipDemands } from '../../takeoff/clip-lines.ts';
import { containmentDemands } from '../../takeoff/containment-lines.ts';
import type { Demand } from '../../takeoff/demand.ts';
import { fixingDemands } from '../../takeoff/fixing-lines.ts';
import { kitCountsOf } from '../../takeoff/kit-counts.ts';
import { makingGoodDemands } from '../../takeoff/making-good-lines.ts';
import type { Route } from '../../ways/route.ts';
import type { Run, RunEnd } from '../../ways/run.ts';
import { cutsOf } from '../../ways/run-cuts.ts';
import { runLength } from '../../ways/run-length.ts';
import type { WayCost, WayEnd, WaysOfHouse } from '../../ways/way-cost.ts';
import type { House } from '../work-scheme.ts';
import { wholeMess } from './works.ts';
import { demandMillipence, taskMillipence } from './works-cost.ts';

/** What one run takes that a job takes once: not the way's own. */
const onceAJob: ReadonlySet<string> = new Set(['pva', 'filler', 'caulk', 'fire-sealant', 'weather-sealant']);

const keyOf = ({ position, mount, kind }: WayEnd): string => JSON.stringify([position, mount, kind]);

/**
 * The ways of a house as its plain router finds them, each priced by itself as labour and take-off count it: what
 * several cables would share is paid by each of them. Stands behind `WaysOfHouse`.
 */
export function plainWays(house: House, library: Library): WaysOfHouse {
  const known = new Map<string, WayCost>();
  const costOf = (from: WayEnd, to: WayEnd): WayCost => {
    // One order for both directions, so that they cost the same.
    const [a, b] = keyOf(from) <= keyOf(to) ? [from, to] : [to, from];
    const key = `${keyOf(a)} ${keyOf(b)}`;
    const found = known.get(key) ?? worksOfRun(house, library, runOf(house, a, b));
    known.set(key, found);
    return found;
  };
  return {
    costs: (from, to) => to.map((end) => costOf(from, end)),
    route: (from, to) => routeOf(house, from, to),
  };
}

function routeOf({ plan, tariff, findRun }: House, from: WayEnd, to: WayEnd): Route {
  return findRun({
    plan,
    from: from.position,
    to: to.position,
    via: [],
    fromMount: from.mount,
    toMount: to.mount,
    tariff,
  });
}

function runOf(house: House, from: WayEnd, to: WayEnd): Run {
  const { segments, steps } = routeOf(house, from, to);
  const endOf = ({ position, kind }: WayEnd, nodeId: string): RunEnd => ({
    nodeId,
    pointId: null,
    position,
    kind,
  });
  const ends = [endOf(from, 'from'), endOf(to, 'to')] as const;
  return {
    id: 'way',
    connectionId: null,
    legId: null,
    circuitIds: [],
    from: ends[0],
    to: ends[1],
    cable: USUAL_CABLE,
    segments,
    ...runLength(segments, ends, house.allowances),
    pinned: false,
    cuts: cutsOf(house.plan, segments),
    steps,
  };
}

const noThings = { joints: [], terminals: [], boxes: [], fusedUnits: [], accessories: [] };

/** One run by itself as labour and take-off count its way and the cable along it. */
export function worksOfRun(
  { job, plan, found, foundShapes, foundRuns, tariff, allowances }: House,
  library: Library,
  run: Run,
): WayCost {
  const worked: Worked = {
    ...{ job, scheme: null, plan, found, foundShapes, proposed: found, shapes: foundShapes },
    ...{ foundRuns, runs: [run], tariff, allowances, things: noThings, circuitIds: [] },
  };
  const work = [...cableWork(worked), ...chaseWork(worked), ...floorWork(worked)];
  const cable: Demand = {
    item: cableItem(run.cable),
    unit: 'm',
    group: 'cable',
    measured: run.routeMm / 1000,
    causes: [run.id],
  };
  const counts = kitCountsOf(library);
  const demands = [
    cable,
    ...clipDemands(worked, counts),
    ...containmentDemands(worked, counts),
    ...fixingDemands(worked, counts),
    ...makingGoodDemands(worked, counts).filter(({ item }) => !onceAJob.has(item)),
  ];
  const minutes = work.reduce(
    (sum, { task, quantity }) => sum + (taskMinutes(task, quantity, library.norms).typicalMin ?? 0),
    0,
  );
  return {
    millipence:
      work.reduce((sum, { task, quantity }) => sum + taskMillipence(task, quantity, library), 0) +
      demands.reduce((sum, demand) => sum + demandMillipence(demand, library), 0),
    minutes,
    mess: wholeMess(
      work.reduce((sum, { task, quantity }) => sum + quantity * unitMess(task, library.norms), 0),
    ),
    routeMm: run.routeMm,
    poor: false,
  };
}
