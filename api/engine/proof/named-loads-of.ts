import type { ProofCase } from './proof-case.ts';
import type { NamedLoad, SurveyLoads } from './scenarios.ts';

/** What the survey names of a circuit's loads: at its points where they draw, and those of the circuit as a whole. */
export function namedLoadsOf({ circuit, input }: ProofCase): SurveyLoads {
  const { plan, job } = input.worked;
  const named = circuit.nodes.flatMap(({ pointId, draws }, node): readonly NamedLoad[] => {
    const load = pointId === null || !draws ? undefined : plan.pointById.get(pointId)?.load;
    return load === undefined ? [] : [{ node, watts: load.watts, isFixed: load.fixed }];
  });
  const loads = job.circuits.find(({ id }) => id === circuit.circuitId)?.loads ?? [];
  return { named, spreadW: loads.reduce((sum, { watts }) => sum + watts, 0) };
}
