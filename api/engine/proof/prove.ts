import type { CircuitProof } from './circuit-proof.ts';
import { type ColdRule, disconnectionLimit } from './disconnection.ts';
import { dropCorrection, dropLimitsV } from './drop-limits.ts';
import { expectedReadings } from './expected-readings.ts';
import { expectedTests } from './expected-tests.ts';
import { loopToNodes } from './fault-loop.ts';
import { flowUnder } from './flow-under.ts';
import { heavyNodes, heavyPoints } from './heavy-appliances.ts';
import { longestFor } from './longest-for.ts';
import { otherScenarios } from './other-scenarios.ts';
import { pointProofs } from './point-proofs.ts';
import { proofAssumptions } from './proof-assumptions.ts';
import { type ProofInput, proofCase } from './proof-case.ts';
import { proofCircuit } from './proof-circuit.ts';
import { protectiveProofs } from './protective.ts';
import { sourceLoop } from './source-loop.ts';
import { testerLimits } from './tester-limits.ts';

/**
 * Proves the circuits concerned: those that a scheme touches, or all of a house as found; sorted by circuit. A circuit
 * of which no cable is recorded has nothing but its assumptions.
 */
export const proveCircuits = (input: ProofInput): readonly CircuitProof[] =>
  input.worked.circuitIds.map((circuitId) => proofOf(input, circuitId));

function proofOf(input: ProofInput, circuitId: string): CircuitProof {
  const { job } = input.worked;
  const circuit = proofCircuit(input.worked, circuitId);
  const source = sourceLoop(input.worked, circuitId);
  const coldRule: ColdRule = input.limits.coldLoopRule ?? 'eighty-percent';
  const limit = disconnectionLimit(input.worked, circuitId, coldRule);
  const common = {
    circuit: circuitId,
    scenario: 'handbook',
    source,
    limit,
    tests: testerLimits(input.worked, circuitId),
    ...dropLimitsV(input.limits),
  } as const;
  if (circuit === null)
    return {
      ...common,
      shape: input.worked.shapes.get(circuitId)?.shape ?? 'unknown',
      assumptions: ['No cable of this circuit is recorded: nothing of it can be worked out.'],
      isWhole: false,
      legs: [],
      points: [],
      expected: expectedTests(job, { ring: null, points: [], sourceOhm: source.ohm }),
      protective: [],
      dropCorrection: 1,
      longest: null,
      otherScenarios: [],
    };
  const one = proofCase(input, circuit);
  const { legs, dropV } = flowUnder(one, one.handbookA);
  const correction = dropCorrection(one, legs);
  const ring = one.ring === null ? null : expectedReadings(circuit, one.ring, one.ohms);
  const loopOhm = loopToNodes(one);
  const points = pointProofs(one, {
    dropV,
    loopOhm,
    step3: ring?.step3 ?? [],
    correction,
    source,
    maximumOhm: limit.maximumOhm,
    isRcd: limit.by === 'rcd',
  });
  const heavy = heavyNodes(one);
  const heavyAppliances = heavyPoints(one, heavy);
  const { words, isWhole } = proofAssumptions(one, { source, correction });
  return {
    ...common,
    shape: circuit.shape.shape,
    assumptions: words,
    isWhole,
    legs,
    points,
    protective: protectiveProofs(one, loopOhm, source),
    dropCorrection: correction,
    ...(ring === null ? {} : { ring }),
    expected: expectedTests(job, { ring, points, sourceOhm: source.ohm }),
    longest: longestFor(one, common),
    otherScenarios: otherScenarios(one, heavy.heavy),
    ...(heavyAppliances === null ? {} : { heavyAppliances }),
  };
}
