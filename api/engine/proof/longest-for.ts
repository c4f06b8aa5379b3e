import type { CircuitProof } from './circuit-proof.ts';
import { furthestLoadA, type LongestLength, longestLength } from './longest-ring.ts';
import type { ProofCase } from './proof-case.ts';
import { designCurrent } from './scenarios.ts';

/**
 * How long the circuit could be in its cable with its device and supply, spurs left out, by the handbook's load at the
 * furthest point. Volt drop as tabulated, without correction.
 *
 * @returns null for other shapes than ring and radial, for several cables, and where no figure is held.
 */
export function longestFor(
  { circuit }: ProofCase,
  { limit, source, dropLimitV }: Pick<CircuitProof, 'limit' | 'source' | 'dropLimitV'>,
): LongestLength | null {
  const { shape } = circuit.shape;
  if (shape !== 'ring' && shape !== 'radial') return null;
  const cables = circuit.legs.filter(({ kind }) => kind === 'cable').map(({ cable }) => cable);
  const [cable] = cables;
  const isUniform = cables.every(
    ({ type, lineMm2, cpcMm2 }) =>
      type === cable?.type && lineMm2 === cable.lineMm2 && cpcMm2 === cable.cpcMm2,
  );
  if (cable === undefined || !isUniform) return null;
  const { ratingA } = designCurrent(circuit);
  return longestLength({
    shape,
    cable,
    // A radial's whole rating may be wanted at its end.
    currentA: shape === 'ring' ? furthestLoadA(ratingA) : ratingA,
    dropLimitV,
    correctedByA: null,
    loopLimitOhm: limit.by === 'overcurrent' ? limit.maximumOhm : null,
    zeOhm: source.ohm,
  });
}
