import { UNTOLD_LENGTH_MM } from '../ways/length-allowances.ts';
import { HOT_RATIO } from './conductor-ohms.ts';
import type { ProofCase } from './proof-case.ts';
import { designCurrent, FURTHEST_A } from './scenarios.ts';
import type { SourceLoop } from './source-loop.ts';

/** What a proof takes for granted. */
export interface ProofAssumptions {
  readonly words: readonly string[];
  /** False where a length, a cable or the device is not known, so that nothing counts as proved. */
  readonly isWhole: boolean;
}

interface Settled {
  readonly source: SourceLoop;
  readonly correction: number;
}

const counted = (count: number, one: string, many: string): string =>
  count === 1 ? one : `${count} ${many}`;

/** Everything that the proof of a circuit takes for granted, in words. */
export function proofAssumptions(one: ProofCase, settled: Settled): ProofAssumptions {
  const { circuit, input, ohms } = one;
  const { ratingA, isTold } = designCurrent(circuit);
  const furthestA = Math.min(FURTHEST_A, ratingA);
  const without = circuit.legs.filter(
    ({ id, kind }) => kind === 'cable' && (input.capacities.get(id)?.izA ?? null) === null,
  );
  const words = [
    `${furthestA} A at the electrically furthest point, the other ${ratingA - furthestA} A in equal shares at all points.`,
    ...(isTold ? [] : [`Nobody named the device: ${ratingA} A are taken.`]),
    `Resistances are the greatest that BS EN 60228 allows at 20 °C; hot is 70 °C, × ${HOT_RATIO.toFixed(2)}.`,
    dropWords(settled.correction),
    ...lengthWords(one),
    ...(ohms.unknown.length === 0 ? [] : ['Of some cable no resistance is held: it counts as nothing.']),
    ...(ohms.cpc === null
      ? ['Some cable has no protective conductor of its own: no R1 + R2 is worked out.']
      : []),
    ...(without.length === 0
      ? []
      : [`What ${counted(without.length, 'one cable', 'cables')} may carry as installed is not known.`]),
    sourceWords(settled.source),
    ...(circuit.shape.joinedTo.length === 0
      ? []
      : ['The circuit is joined to another one: both are worked out together.']),
  ];
  const isWhole =
    isTold &&
    circuit.withoutLength.length + circuit.assumedLength.length + circuit.withoutCable.length === 0 &&
    ohms.unknown.length === 0;
  return { words, isWhole };
}

const dropWords = (correction: number): string =>
  correction === 1
    ? 'Volt drop by tabulated figures at 70 °C, without the correction of BS 7671 Appendix 4 §6.1.'
    : `Volt drop by tabulated figures, × ${correction.toFixed(3)} for cooler conductors (BS 7671 Appendix 4 §6.1).`;

function lengthWords({ circuit }: ProofCase): readonly string[] {
  const { withoutLength, assumedLength, withoutCable } = circuit;
  return [
    ...(withoutLength.length === 0
      ? []
      : [
          `The length of ${counted(withoutLength.length, 'one cable', 'cables')} is not known: ${UNTOLD_LENGTH_MM / 1e3} m each are taken.`,
        ]),
    ...(assumedLength.length === 0
      ? []
      : [`The length of ${counted(assumedLength.length, 'one cable', 'cables')} is assumed.`]),
    ...(withoutCable.length === 0
      ? []
      : [`Nobody looked at ${counted(withoutCable.length, 'one cable', 'cables')}: 2.5/1.5 mm² is taken.`]),
  ];
}

function sourceWords({ from, ohm }: SourceLoop): string {
  if (ohm === null) return 'The loop before the circuit is not known: no Zs is worked out.';
  if (from === 'assumed') return `The loop before the circuit is assumed: ${ohm} Ω.`;
  return `The loop ${from === 'board' ? 'at the board' : 'at the intake'} is ${ohm} Ω.`;
}
