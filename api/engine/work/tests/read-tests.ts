import type { Worked } from '../../connections/worked.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { ohmAtTest } from '../../proof/compared-readings.ts';
import { temperatureRatio } from '../../proof/conductor-ohms.ts';
import type { OhmsRead } from '../../proof/measured-drop.ts';
import { readingsTaken } from '../../proof/readings/readings-taken.ts';
import type { SheetTest, TestGroup } from './sheet-test.ts';

/** A ring with more is open: over 500 m of the thinnest copper. As in `loop-readings.ts`. */
export const OPEN_OHM = 10;

/** The tests of one circuit with what was read. */
export interface ReadTests {
  readonly proof: CircuitProof;
  readonly worked: Worked;
  readonly tests: readonly SheetTest[];
}

/** What a test read, Ω at the temperature of the test; null where it was not read. */
export function ohmOf({ proof, worked }: ReadTests, test: SheetTest | undefined): number | null {
  if (test === undefined || test.reading === null) return null;
  const [reading] = readingsTaken({ ...worked.job, readings: [test.reading] });
  return reading?.kind === 'loop' || reading?.kind === 'zs' ? ohmAtTest(reading, proof) : null;
}

/** The tests of some groups, in the sheet's order. */
export const ofGroup = ({ tests }: ReadTests, ...groups: readonly TestGroup[]): readonly SheetTest[] =>
  tests.filter(({ group }) => groups.includes(group));

/** A conductor of a ring from end to end, by its mark: r1, rn, r2. */
export const end = (read: ReadTests, mark: string): number | null =>
  ohmOf(
    read,
    ofGroup(read, 'ends').find((test) => test.mark === mark),
  );

/** What was read of a circuit's cables, at 20 °C; a ring that does not close has no length. */
export function ohmsRead(read: ReadTests): OhmsRead {
  const ratio = temperatureRatio(read.proof.expected.conductorC);
  const at = (group: TestGroup): ReadonlyMap<string, number> =>
    new Map(
      ofGroup(read, group).flatMap((test) => {
        const ohm = ohmOf(read, test);
        return ohm === null ? [] : [[test.subject, ohm / ratio] as const];
      }),
    );
  const [r1, rn] = [end(read, 'r1'), end(read, 'rn')];
  const closes = r1 !== null && rn !== null && Math.max(r1, rn) <= OPEN_OHM;
  return {
    endsOhm: closes ? (r1 + rn) / ratio : null,
    crossedOhm: at('crossed-ln'),
    linkedOhm: at('r1r2'),
  };
}
