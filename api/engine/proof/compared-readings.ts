import type { Reading } from '#model/installation.ts';
import type { CircuitProof } from './circuit-proof.ts';
import { REFERENCE_C, temperatureRatio } from './conductor-ohms.ts';
import { bandAbout, bandOf, fitsBand } from './reading-band.ts';
import { atTwenty } from './readings/loop-readings.ts';

/** One thing that can be measured of a circuit. */
export interface ComparedReading {
  /**
   * What was measured: `ends` from end to end, crossed lines with neutrals, with protective conductors, R1 + R2 with both linked at the
   * board, or the loop.
   */
  readonly group: 'ends' | 'step2' | 'step3' | 'r1r2' | 'zs';
  /** The point, or the circuit for readings from end to end. */
  readonly subject: string;
  /** r1, rn or r2 for readings from end to end, else empty: the point's name says it. */
  readonly name: string;
  /** Ω at the temperature of the test; null where it cannot be worked out. */
  readonly expectedOhm: number | null;
  /** The most that is expected: of a loop, as it is reckoned from the crossed test; else as `expectedOhm`. */
  readonly expectedToOhm: number | null;
  /** Ω, leads taken off and brought to the temperature of the test; null where nobody measured it. */
  readonly measuredOhm: number | null;
  /** Half the width of what counts as fitting. */
  readonly bandOhm: number;
  /** Null while either figure is missing. */
  readonly fits: boolean | null;
}

const nameOfConductor = { L: 'r1', N: 'rn', cpc: 'r2' } as const;

interface Measured {
  readonly group: ComparedReading['group'];
  readonly subject: string;
  readonly name: string;
  readonly ohm: number;
}

/** What a reading says that a picture compares; null for all others. */
function measuredOf(reading: Reading, proof: CircuitProof): Measured | null {
  const circuitId = proof.circuit;
  if (reading.kind === 'zs')
    return reading.at === undefined
      ? null
      : { group: 'zs', subject: reading.at, name: '', ohm: ohmAtTest(reading, proof) };
  if (reading.kind !== 'loop') return null;
  const ohm = ohmAtTest(reading, proof);
  const { loop, from, at, linkedAt } = reading;
  if (from === 'end-to-end')
    return loop === 'L' || loop === 'N' || loop === 'cpc'
      ? { group: 'ends', subject: circuitId, name: nameOfConductor[loop], ohm }
      : null;
  const place = linkedAt ?? at;
  if (from !== 'crossed')
    return loop === 'L-cpc' && place !== undefined ? { group: 'r1r2', subject: place, name: '', ohm } : null;
  if (at === undefined) return null;
  if (loop === 'L-N') return { group: 'step2', subject: at, name: '', ohm };
  return loop === 'L-cpc' ? { group: 'step3', subject: at, name: '', ohm } : null;
}

/** What a resistance or a loop reads with the leads taken off, brought to the temperature of the test, Ω. */
export const ohmAtTest = (reading: Extract<Reading, { kind: 'loop' | 'zs' }>, proof: CircuitProof): number =>
  reading.kind === 'zs'
    ? loopAt(reading, proof)
    : atTwenty(reading) * temperatureRatio(proof.expected.conductorC);

/** A loop at the temperature of the test: what lies before the circuit stays as it is. */
function loopAt(
  { ohm, conductorC }: Pick<Reading & { kind: 'zs' }, 'ohm' | 'conductorC'>,
  { expected, source }: CircuitProof,
): number {
  const own = temperatureRatio(conductorC ?? REFERENCE_C);
  const before = Math.min(ohm, source.ohm ?? 0);
  return before + ((ohm - before) * temperatureRatio(expected.conductorC)) / own;
}

type Expected = Pick<ComparedReading, 'group' | 'subject' | 'name' | 'expectedOhm' | 'expectedToOhm'>;

/** Points at which R1 + R2 is read with line and earth linked at the board: those that no crossed test of a ring reaches. */
function linkedOf({ expected: { ring, points } }: CircuitProof): CircuitProof['expected']['points'] {
  const crossed = new Set((ring?.step2 ?? []).map(({ point }) => point));
  return points.filter(({ point }) => !crossed.has(point));
}

function expectedOf(proof: CircuitProof): readonly Expected[] {
  const {
    circuit,
    expected: { ring, points },
  } = proof;
  const ends: readonly (readonly [string, number | null])[] =
    ring === null
      ? []
      : [
          ['r1', ring.r1Ohm],
          ['rn', ring.rnOhm],
          ['r2', ring.r2Ohm],
        ];
  const at = (
    group: Expected['group'],
    subject: string,
    expectedOhm: number | null,
    expectedToOhm = expectedOhm,
  ): Expected => ({ group, subject, name: '', expectedOhm, expectedToOhm });
  return [
    ...ends.map(([name, ohm]) => ({ ...at('ends', circuit, ohm), name })),
    ...(ring?.step2 ?? []).map(({ point, ohm }) => at('step2', point, ohm)),
    ...(ring?.step3 ?? []).map(({ point, ohm }) => at('step3', point, ohm)),
    ...linkedOf(proof).map(({ point, r1r2Ohm }) => at('r1r2', point, r1r2Ohm)),
    // Some write down what the loop tester shows, some the loop before the circuit and R1 + R2: either fits.
    ...points.map(({ point, zsServiceOhm, zsOhm }) => at('zs', point, zsServiceOhm, zsOhm)),
  ];
}

const keyOf = ({ group, subject, name }: Pick<ComparedReading, 'group' | 'subject' | 'name'>): string =>
  JSON.stringify([group, subject, name]);

/**
 * What is expected of a circuit beside what was measured, both at the temperature of the test; of several readings of
 * one thing the last counts. Readings of things for which nothing is expected are left out.
 *
 * @param readings of the job, each with its temperature (`readingsTaken`).
 * @param phase `before` for the house as found, `after` for a scheme.
 */
export function comparedReadings(
  proof: CircuitProof,
  readings: readonly Reading[],
  phase: Reading['phase'],
): readonly ComparedReading[] {
  const measured = new Map<string, number>();
  const points = new Set(proof.points.map(({ point }) => point));
  for (const reading of readings) {
    if (reading.phase !== phase) continue;
    const told = measuredOf(reading, proof);
    const isHere =
      reading.circuit === proof.circuit || (reading.circuit === undefined && points.has(told?.subject ?? ''));
    if (told !== null && isHere) measured.set(keyOf(told), told.ohm);
  }
  return expectedOf(proof).map((expected) => {
    const measuredOhm = measured.get(keyOf(expected)) ?? null;
    const { expectedOhm, expectedToOhm } = expected;
    const bandOhm = bandOf(expectedToOhm ?? expectedOhm ?? 0);
    const fits =
      expectedOhm === null || measuredOhm === null
        ? null
        : fitsBand(bandAbout(expectedOhm, expectedToOhm ?? expectedOhm), measuredOhm);
    return { ...expected, measuredOhm, bandOhm, fits };
  });
}
