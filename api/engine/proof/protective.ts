import { adiabaticAreaMm2, letThroughCeilingA2s, protectiveK, withstandA2s } from './adiabatic.ts';
import type { ProtectiveProof } from './circuit-proof.ts';
import { loopLimit } from './loop-limit.ts';
import type { ProofCase } from './proof-case.ts';
import type { ProofNode } from './proof-circuit.ts';
import type { SourceLoop } from './source-loop.ts';
import { NOMINAL_V } from './spur-load.ts';

/** Below this time the energy that a device lets through counts, and not its current and time. Source: BS 7671 434.5.2. */
const SHORTEST_S = 0.1;
/** The time within which a fuse has to clear a fault in a circuit with outlets. Source: BS 7671 Table 41.1. */
const FUSE_S = 0.4;

const breakers: ReadonlySet<string> = new Set(['BS-EN-60898', 'BS-EN-61009', 'BS-3871']);

/**
 * Whether the protective conductor of each cable takes a fault at the end of it that is nearer to the origin, where the
 * current is greatest; behind a plug fuse nothing is told, since the fuse lets through little.
 *
 * @param loopOhm R1 + R2 by node, cold.
 * @returns nothing while the device or the loop before the circuit is not known, and for cables without such a conductor.
 * Source: BS 7671 543.1.3 with k of Table 54.3.
 */
export function protectiveProofs(
  { circuit }: ProofCase,
  loopOhm: Float64Array,
  source: SourceLoop,
): readonly ProtectiveProof[] {
  const { device, legs, nodes } = circuit;
  const { ohm: sourceOhm } = source;
  if (device === null || device.standard === undefined || sourceOhm === null) return [];
  const k = protectiveK('in-cable');
  const operatingA = loopLimit(device)?.operatingA ?? null;
  const isBreaker = breakers.has(device.standard);
  const classCeilingA2s = letThroughCeilingA2s(device, 3);
  const proofs: ProtectiveProof[] = [];
  for (const { id, kind, cable, from, to } of legs) {
    const loop = sourceOhm + Math.min(loopOhm[from] ?? Number.NaN, loopOhm[to] ?? Number.NaN);
    const isBehindFuse = isFused(nodes[from]) || isFused(nodes[to]);
    // Not so for a loop of no resistance, nor where one is not known.
    if (kind === 'fuse' || cable.cpcMm2 === 0 || isBehindFuse || !(loop > 0)) continue;
    const faultA = NOMINAL_V / loop;
    proofs.push({
      leg: id,
      cpcMm2: cable.cpcMm2,
      faultA,
      neededMm2: neededMm2({ isBreaker, operatingA, faultA, k }),
      withstandA2s: withstandA2s(cable.cpcMm2, k),
      classCeilingA2s,
      letThroughA2s: device.letThroughA2s ?? null,
    });
  }
  return proofs;
}

const isFused = (node: ProofNode | undefined): boolean => node !== undefined && node.behindUnit !== null;

/** What a fault is judged by. */
interface Fault {
  readonly isBreaker: boolean;
  readonly operatingA: number | null;
  readonly faultA: number;
  readonly k: number;
}

/** By the current and time that count: a breaker's at once, a fuse's where it just clears in time. */
function neededMm2({ isBreaker, operatingA, faultA, k }: Fault): number | null {
  if (operatingA === null || faultA < operatingA) return null;
  // A greater current melts a fuse so much sooner that it lets through no more than this.
  return isBreaker
    ? adiabaticAreaMm2({ currentA: faultA, seconds: SHORTEST_S, k })
    : adiabaticAreaMm2({ currentA: operatingA, seconds: FUSE_S, k });
}
