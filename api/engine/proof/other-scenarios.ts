import type { LegProof, OtherScenario } from './circuit-proof.ts';
import { ringWalk } from './expected-readings.ts';
import { prepareFlow } from './flow/prepare-flow.ts';
import { worstOpenLeg } from './flow/worst-open-leg.ts';
import { type Flow, flowUnder } from './flow-under.ts';
import { flowNetwork } from './leg-ohms.ts';
import { namedLoadsOf } from './named-loads-of.ts';
import type { ProofCase } from './proof-case.ts';
import {
  allNamedLoads,
  designCurrent,
  FURTHEST_A,
  namedLoads,
  nearEndLoads,
  type ScenarioName,
} from './scenarios.ts';

/** The scenarios beside the handbook's: what the survey names, and of rings heavy loads near an end and an open leg. */
export function otherScenarios(one: ProofCase): readonly OtherScenario[] {
  return [...byNamedLoads(one), ...ringScenarios(one)];
}

function byNamedLoads(one: ProofCase): readonly OtherScenario[] {
  const given = namedLoadsOf(one);
  if (given.named.length === 0 && given.spreadW === 0) return [];
  const flow = flowUnder(one, namedLoads(one.circuit, one.resistanceOhm, given));
  const words = [
    'Loads that the survey names: fixed ones in full, of those on plugs the largest in full and 40 % of each other.',
    'Points without a load named draw nothing here.',
  ];
  const atOnce = flowUnder(one, allNamedLoads(one.circuit, one.resistanceOhm, given));
  return [
    told(one, 'named-loads', flow, words),
    told(one, 'all-named-loads', atOnce, ['All loads that the survey names at once, without diversity.']),
  ];
}

function ringScenarios(one: ProofCase): readonly OtherScenario[] {
  const walk = ringWalk(one.circuit);
  if (walk === null) return [];
  return [nearOneEnd(one, walk.nodes), openAtWorstLeg(one, walk.legs)];
}

/** Heavy loads near the end of the ring where they load a cable the more. */
function nearOneEnd(one: ProofCase, nodes: readonly number[]): OtherScenario {
  const fromA = flowUnder(one, nearEndLoads(one.circuit, nodes));
  const fromB = flowUnder(one, nearEndLoads(one.circuit, nodes.toReversed()));
  const flow = heaviest(fromB.legs) > heaviest(fromA.legs) ? fromB : fromA;
  const words = [
    `${FURTHEST_A} A at the point nearest one end of the ring and the rest of the rating at the next one.`,
  ];
  return told(one, 'near-one-end', flow, words);
}

/** How much of its capacity the most loaded cable carries; by current alone where no capacity is known. */
const heaviest = (legs: readonly LegProof[]): number =>
  Math.max(0, ...legs.map(({ share, currentA }) => share ?? currentA / 1000));

function openAtWorstLeg(one: ProofCase, ringLegs: readonly number[]): OtherScenario {
  const { circuit, ohms, handbookA: loadA } = one;
  const network = flowNetwork(circuit, ohms.drop);
  const { leg } = worstOpenLeg(network, loadA, ringLegs);
  const flow = flowUnder(one, loadA, prepareFlow(network, { openLeg: leg }));
  const words = [
    'The handbook’s loads with the ring open where that is worst: a broken ring is a defect, not a case to design for.',
    `${Math.round(designCurrent(circuit).ratingA)} A then flow by one cable.`,
  ];
  return { ...told(one, 'open-at-worst-leg', flow, words), openLeg: circuit.legs[leg]?.id ?? null };
}

function told(
  { circuit }: ProofCase,
  scenario: ScenarioName,
  { legs, dropV }: Flow,
  assumptions: readonly string[],
): OtherScenario {
  let worst = -1;
  circuit.nodes.forEach((_, node) => {
    const isWorse = worst < 0 || (dropV[node] ?? 0) > (dropV[worst] ?? 0);
    if ((circuit.pointAt[node] ?? null) !== null && !Number.isNaN(dropV[node]) && isWorse) worst = node;
  });
  return {
    scenario,
    assumptions,
    legs,
    worstDropV: worst < 0 ? null : (dropV[worst] ?? null),
    worstPoint: worst < 0 ? null : (circuit.pointAt[worst] ?? null),
    openLeg: null,
  };
}
