import type { CircuitProof, LegProof, OtherScenario } from '../proof/circuit-proof.ts';

/**
 * The cable that carries the greatest share of what it may under a scenario.
 *
 * @returns null where the proof has no such scenario, or no cable a known capacity.
 */
export function heaviestLeg(
  proof: CircuitProof | undefined,
  scenario: OtherScenario['scenario'],
): (LegProof & { readonly izA: number; readonly share: number }) | null {
  const legs = proof?.otherScenarios.find((each) => each.scenario === scenario)?.legs ?? [];
  const judged = legs.flatMap((leg) =>
    leg.share === null || leg.izA === null ? [] : [{ ...leg, izA: leg.izA, share: leg.share }],
  );
  return judged.toSorted((a, b) => b.share - a.share)[0] ?? null;
}
