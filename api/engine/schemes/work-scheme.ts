import type { Job } from '#model/job.ts';
import type { Scheme } from '#model/scheme.ts';
import { circuitShapes } from '../circuit/circuit-shapes.ts';
import { foundNetwork } from '../circuit/found-network.ts';
import type { Network } from '../circuit/network.ts';
import { withPlacedRemedies } from '../circuit/place-remedies.ts';
import { proposedNetwork } from '../circuit/proposed-network.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import { buildThings } from '../connections/build-things.ts';
import type { Worked } from '../connections/worked.ts';
import { buildPlan } from '../plan/build-plan.ts';
import type { Plan } from '../plan/plan.ts';
import { plainRoute } from '../ways/find-run.ts';
import { foundRuns } from '../ways/found-runs.ts';
import { layRuns } from '../ways/lay-runs.ts';
import { nodePositions } from '../ways/node-positions.ts';
import type { RouteOptions } from '../ways/route.ts';
import type { LengthAllowances, Run, Tariff } from '../ways/run.ts';

/** Cables chased into masonry go into oval tube: common practice, no source, and the stricter for capacity. */
const routeOptions: RouteOptions = { chased: 'oval' };

/** What every scheme of a job shares: the house and its wiring as found. */
export interface House {
  readonly job: Job;
  readonly plan: Plan;
  readonly found: Network;
  readonly foundShapes: ReadonlyMap<string, CircuitShape>;
  readonly foundRuns: ReadonlyMap<string, Run>;
  readonly tariff: Tariff;
  readonly allowances: LengthAllowances;
}

/** Works out a job as far as its schemes share it: plan, circuits as found, the likeliest ways of the legs. */
export function workHouse(job: Job, tariff: Tariff, allowances: LengthAllowances): House {
  const plan = buildPlan(job);
  const found = foundNetwork(job);
  const runs = foundRuns({
    plan,
    network: found,
    legs: job.legs,
    tariff,
    allowances,
    options: routeOptions,
    findRun: plainRoute,
  });
  return { job, plan, found, foundShapes: circuitShapes(job, found), foundRuns: runs, tariff, allowances };
}

/** Circuits that have new wiring in them, or that a remedy names. */
function touchedCircuits(
  scheme: Scheme,
  network: Network,
  shapes: ReadonlyMap<string, CircuitShape>,
): readonly string[] {
  const newEdges = new Set(
    network.edges.filter((edge) => edge.state === 'new').flatMap((edge) => [edge.from, edge.to]),
  );
  const touched = [...shapes.values()].filter(
    (shape) =>
      shape.places.some((place) => newEdges.has(place.nodeId)) ||
      scheme.remedies.some((remedy) => remedy.at === shape.circuitId),
  );
  return touched.map((shape) => shape.circuitId).sort();
}

/** The same house with another word on what was surveyed in it; walls, legs and floors must be the same. */
export function sameHouse(house: House, job: Job): House {
  const found = foundNetwork(job);
  return { ...house, job, plan: buildPlan(job), found, foundShapes: circuitShapes(job, found) };
}

/**
 * Works one scheme out, from its edits to the wiring through to joints, boxes and units; no scheme: the house
 * as found.
 *
 * @param laid the runs of the same connections in the same house, where they are known: remedies move no cable.
 */
export function workScheme(house: House, scheme: Scheme | null, laid?: readonly Run[]): Worked {
  const { job, plan, found, foundShapes, tariff, allowances } = house;
  const proposed = scheme === null ? found : proposedNetwork(job, found, scheme);
  // From here on every remedy says what it is done to, as far as that can be told.
  const placed = scheme === null ? null : withPlacedRemedies(job, proposed, scheme);
  const shapes = scheme === null ? foundShapes : circuitShapes(job, proposed);
  const positions = nodePositions({ plan, network: proposed, foundRuns: house.foundRuns, allowances });
  const runs =
    scheme === null
      ? []
      : (laid ??
        layRuns({
          plan,
          network: proposed,
          shapes,
          nodePositions: positions,
          connections: scheme.connections,
          tariff,
          allowances,
          options: routeOptions,
          findRun: plainRoute,
        }));
  const things = buildThings({
    job,
    scheme: placed,
    plan,
    found,
    proposed,
    shapes,
    runs,
    foundRuns: house.foundRuns,
    nodePositions: positions,
  });
  const circuitIds =
    placed === null
      ? job.circuits.map((circuit) => circuit.id).sort()
      : touchedCircuits(placed, proposed, shapes);
  return {
    job,
    scheme: placed,
    plan,
    found,
    foundShapes,
    proposed,
    shapes,
    foundRuns: house.foundRuns,
    runs,
    things,
    circuitIds,
  };
}
