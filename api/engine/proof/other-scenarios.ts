import type { OtherScenario } from './circuit-proof.ts';
import { prepareFlow } from './flow/prepare-flow.ts';
import { worstOpenLeg } from './flow/worst-open-leg.ts';
import { type Flow, flowUnder, worstFlow } from './flow-under.ts';
import { HEAVY_W } from './heavy-appliances.ts';
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

/**
 * The scenarios beside the handbook's: what the survey names, and of rings heavy loads near an end and an open leg.
 *
 * @param heavyNodes where heavy appliances are likely, in the ring's order.
 */
export function otherScenarios(one: ProofCase, heavyNodes: readonly number[]): readonly OtherScenario[] {
  return [...byNamedLoads(one), ...ringScenarios(one, heavyNodes)];
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

function ringScenarios(one: ProofCase, heavyNodes: readonly number[]): readonly OtherScenario[] {
  if (one.ring === null) return [];
  const { nodes, legs } = one.ring.walk;
  return [nearOneEnd(one, nodes), ...atHeavyAppliances(one, heavyNodes), openAtWorstLeg(one, legs)];
}

/** Heavy loads near the end of the ring where they load a cable the more. */
function nearOneEnd(one: ProofCase, nodes: readonly number[]): OtherScenario {
  const words = [
    `${FURTHEST_A} A at the point nearest one end of the ring and the rest of the rating at the next one.`,
  ];
  return told(one, 'near-one-end', fromWorseEnd(one, nodes), words);
}

/** The same at the points where heavy appliances are likely; nothing without such points. */
function atHeavyAppliances(one: ProofCase, nodes: readonly number[]): readonly OtherScenario[] {
  if (nodes.length === 0) return [];
  const words = [
    `${FURTHEST_A} A and the rest of the rating at two points where heavy appliances are likely, nearest one end of the ring: in kitchens and utility rooms, or with ${HEAVY_W} W or more named.`,
    ...(nodes.length === 1 ? ['There is one such point: the rest is spread over all.'] : []),
  ];
  return [told(one, 'heavy-appliances', fromWorseEnd(one, nodes), words)];
}

/** Heavy loads at the first two of these nodes or at the last two, whichever loads a cable the more. */
const fromWorseEnd = (one: ProofCase, nodes: readonly number[]): Flow =>
  worstFlow(one, [nearEndLoads(one.circuit, nodes), nearEndLoads(one.circuit, nodes.toReversed())]);

function openAtWorstLeg(one: ProofCase, ringLegs: readonly number[]): OtherScenario {
  const { circuit, network, handbookA: loadA } = one;
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
