import type { CircuitProof, LegProof, OtherScenario } from '../proof/circuit-proof.ts';

/**
 * The cable that carries the greatest share of what it may under a scenario.
 *
 * @returns null where the proof has no such scenario, or no cable a known capacity.
 */
export function heaviestLeg(
  proof: CircuitProof | undefined,
  scenario: OtherScenario['scenario'],
): (LegProof & Readonly<Record<'currentA' | 'izA' | 'share', number>>) | null {
  const legs = proof?.otherScenarios.find((each) => each.scenario === scenario)?.legs ?? [];
  const judged = legs.flatMap(({ currentA, izA, share, ...leg }) =>
    currentA === null || izA === null || share === null ? [] : [{ ...leg, currentA, izA, share }],
  );
  return judged.toSorted((a, b) => b.share - a.share)[0] ?? null;
}
