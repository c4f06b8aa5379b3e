import type { Job } from '#model/job.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { circuitShapes } from '../circuit/circuit-shapes.ts';
import { foundNetwork } from '../circuit/found-network.ts';
import type { Network } from '../circuit/network.ts';
import { withPlacedRemedies } from '../circuit/place-remedies.ts';
import { connectedNetwork, proposedNetwork } from '../circuit/proposed-network.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import { circuitsWithNewEnds } from '../circuit/touched-circuits.ts';
import { buildThings } from '../connections/build-things.ts';
import { withChosenFuses } from '../connections/chosen-fuses.ts';
import type { FirmHabits } from '../connections/wiring-index.ts';
import type { Worked } from '../connections/worked.ts';
import { buildPlan, movedPoints, samePlaces } from '../plan/build-plan.ts';
import type { Plan } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import { mustCarry } from '../proof/must-carry.ts';
import { slotGate } from '../proof/slot-gate.ts';
import { plainRoute } from '../ways/find-run.ts';
import { foundChannels } from '../ways/found-channels.ts';
import { foundRuns } from '../ways/found-runs.ts';
import { inOneChase } from '../ways/in-one-chase.ts';
import { layRuns } from '../ways/lay-runs.ts';
import { nodePositions } from '../ways/node-positions.ts';
import { rememberedRoutes } from '../ways/remembered-routes.ts';
import type { FindRun } from '../ways/route.ts';
import type { LengthAllowances, Run } from '../ways/run.ts';
import type { WayTariff } from '../ways/way-tariff.ts';

/** What every scheme of a job shares: the house and its wiring as found. */
export interface House {
  readonly job: Job;
  readonly plan: Plan;
  readonly found: Network;
  readonly foundShapes: ReadonlyMap<string, CircuitShape>;
  readonly foundRuns: ReadonlyMap<string, Run>;
  readonly tariff: WayTariff;
  readonly allowances: LengthAllowances;
  /** What the firm does where the job says nothing; null: nobody has said. */
  readonly firmTerms: FirmHabits | null;
  /** Finds paths in this house, and remembers them. */
  readonly findRun: FindRun;
}

/** Works out a job as far as its schemes share it: plan, circuits as found, the likeliest ways of the legs. */
export function workHouse(
  job: Job,
  tariff: WayTariff,
  allowances: LengthAllowances,
  firmTerms: House['firmTerms'] = null,
): House {
  const plan = buildPlan(job);
  const found = foundNetwork(job);
  const findRun = rememberedRoutes(plainRoute);
  const runs = foundRuns({
    plan,
    network: found,
    legs: job.legs,
    tariff,
    allowances,
    findRun,
  });
  const foundShapes = circuitShapes(job, found);
  return { job, plan, found, foundShapes, foundRuns: runs, tariff, allowances, firmTerms, findRun };
}

/** What the connections of a scheme make of the wiring, whatever remedies come with them. */
export interface Wiring {
  readonly network: Network;
  readonly shapes: ReadonlyMap<string, CircuitShape>;
  readonly positions: ReadonlyMap<string, Position>;
  readonly newEnds: ReadonlySet<string>;
  /** What each new cable must carry at the least, A, by the id of its edge; absent: nobody can say. */
  readonly mustCarryA: ReadonlyMap<string, number>;
}

/** A scheme is worked several times over, with this remedy and with that one: its wiring is the same each time. */
export const wiringOf = rememberedOfTwo((house: House, connections: readonly Connection[]): Wiring => {
  const { job, plan, found, foundRuns, allowances } = house;
  const network = connectedNetwork(job, found, connections);
  const shapes = circuitShapes(job, network);
  return {
    network,
    shapes,
    positions: nodePositions({ plan, network, foundRuns, allowances }),
    newEnds: circuitsWithNewEnds(network, shapes),
    mustCarryA: mustCarry(network, shapes),
  };
});

/** The same house with another word on what was surveyed in it; walls, floors, legs and places must be the same. */
export function sameHouse(house: House, job: Job): House {
  const found = foundNetwork(job);
  return { ...house, job, plan: samePlaces(house.plan, job), found, foundShapes: circuitShapes(job, found) };
}

/** The same house where wanted points have moved: nothing that was there has another way for it. */
export function movedHouse(house: House, job: Job): House {
  const found = foundNetwork(job);
  const plan = movedPoints(house.plan, job);
  return { ...house, job, plan, found, foundShapes: circuitShapes(job, found) };
}

/**
 * Works one scheme out, from its edits to the wiring through to joints, boxes and units; no scheme: the house
 * as found.
 *
 * @param laid the runs of the same connections in the same house, where they are known: remedies move no cable.
 */
export function workScheme(house: House, scheme: Scheme | null, laid?: readonly Run[]): Worked {
  return scheme === null ? workAsFound(house) : workProposed(house, scheme, laid);
}

function workAsFound(house: House): Worked {
  const { job, plan, found, foundShapes, foundRuns, tariff, allowances } = house;
  const wired = { job, scheme: null, plan, found, proposed: found, shapes: foundShapes, foundRuns, runs: [] };
  const positions = nodePositions({ plan, network: found, foundRuns, allowances });
  const things = buildThings({ ...wired, nodePositions: positions, firmTerms: house.firmTerms });
  return {
    ...wired,
    foundShapes,
    tariff,
    allowances,
    things,
    circuitIds: job.circuits.map(({ id }) => id).sort(),
  };
}

function workProposed(house: House, scheme: Scheme, laid: readonly Run[] | undefined): Worked {
  const { job, plan, found, foundShapes, foundRuns, tariff, allowances } = house;
  const { network, shapes, positions, newEnds } = wiringOf(house, scheme.connections);
  const proposed = proposedNetwork(job, network, scheme.remedies);
  // From here on every remedy says what it is done to, as far as that can be told.
  const placed = withPlacedRemedies(job, network, scheme);
  const runs = laid ?? laidRuns(house, scheme.connections);
  const wired = { job, scheme: placed, plan, found, proposed, shapes, foundRuns, runs };
  const touched = [...shapes.keys()].filter(
    (id) => newEnds.has(id) || placed.remedies.some(({ at }) => at === id),
  );
  const things = buildThings({ ...wired, nodePositions: positions, firmTerms: house.firmTerms });
  return {
    ...wired,
    shapes: withChosenFuses(shapes, things.fusedUnits),
    foundShapes,
    tariff,
    allowances,
    things,
    circuitIds: touched.sort(),
  };
}

/** The new cables of a scheme, chased together where they may be. */
function laidRuns(house: House, connections: readonly Connection[]): readonly Run[] {
  const { mustCarryA } = wiringOf(house, connections);
  return inOneChase(runsAlone(house, connections), slotGate(house.plan, house.tariff), mustCarryA);
}

/** The new cables of a scheme, each in chases of its own. */
export function runsAlone(house: House, connections: readonly Connection[]): readonly Run[] {
  const { job, plan, foundRuns, tariff, allowances, findRun } = house;
  const { network, shapes, positions: nodePositions } = wiringOf(house, connections);
  return layRuns({
    plan,
    network,
    shapes,
    nodePositions,
    connections,
    tariff,
    allowances,
    findRun,
    channels: foundChannels(job.legs, foundRuns),
  });
}
