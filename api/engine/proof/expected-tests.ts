import type { Job } from '#model/job.ts';
import type { ExpectedAt, ExpectedTests, PointProof, RingProof } from './circuit-proof.ts';
import { REFERENCE_C, temperatureRatio } from './conductor-ohms.ts';

/** The conductors' temperature when they are tested, °C: as the job has it, else 20. */
export function testedAt({ site: { conductorC, certainty } }: Pick<Job, 'site'>): {
  readonly conductorC: number;
  readonly isTold: boolean;
} {
  const isTold = conductorC !== undefined && certainty?.conductorC !== 'unknown';
  return { conductorC: isTold ? conductorC : REFERENCE_C, isTold };
}

/** A circuit's figures at 20 °C. */
interface ColdFigures {
  readonly ring: RingProof | null;
  readonly points: readonly PointProof[];
  /** The loop before the circuit, Ω: measured or declared, it has its own temperature and keeps it. */
  readonly sourceOhm: number | null;
}

/**
 * What a tester shows of a circuit: resistances of copper grow by 0.4 % of their value at 20 °C per kelvin.
 *
 * Source: the factor of BS 7671 Appendix 3 as UK practice rounds it, as in `temperatureRatio`.
 */
export function expectedTests(
  job: Pick<Job, 'site'>,
  { ring, points, sourceOhm }: ColdFigures,
): ExpectedTests {
  const tested = testedAt(job);
  const ratio = temperatureRatio(tested.conductorC);
  const warmed = (ohm: number | null): number | null => (ohm === null ? null : ohm * ratio);
  // Only the circuit's own part of the loop is copper of this temperature.
  const loop = (coldOhm: number | null): number | null =>
    coldOhm === null || sourceOhm === null ? null : sourceOhm + (coldOhm - sourceOhm) * ratio;
  const each = (list: readonly ExpectedAt[]): readonly ExpectedAt[] =>
    list.map(({ point, ohm }) => ({ point, ohm: ohm * ratio }));
  return {
    ...tested,
    ring:
      ring === null
        ? null
        : {
            r1Ohm: ring.r1Ohm * ratio,
            rnOhm: ring.rnOhm * ratio,
            r2Ohm: warmed(ring.r2Ohm),
            step2: each(ring.step2),
            step3: each(ring.step3),
          },
    points: points.map(({ point, r1r2ColdOhm, zsColdOhm, zsServiceColdOhm }) => ({
      point,
      r1r2Ohm: warmed(r1r2ColdOhm),
      zsOhm: loop(zsColdOhm),
      zsServiceOhm: loop(zsServiceColdOhm),
    })),
  };
}
