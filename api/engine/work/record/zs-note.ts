import type { SheetTest } from '../tests/sheet-test.ts';
import { notesOf, withUnit } from './record-field.ts';

/** What the loops of a circuit are told from. */
export interface LoopsOf {
  /** The tests of Zs; of these the record has the highest. */
  readonly zs: readonly SheetTest[];
  /** R1 + R2 as read after the work, Ω, by the names of the points. */
  readonly r1r2Read: readonly { readonly mark: string; readonly ohm: number }[];
  /** The loop before the circuit as read after the work, Ω; null: not read. */
  readonly sourceOhm: number | null;
}

const ohm = (figure: number): string => withUnit(Number(figure.toFixed(2)), 'Ω');

/** The test of which a figure is highest; undefined where none has it. */
function highestBy(
  tests: readonly SheetTest[],
  figure: (test: SheetTest) => number | undefined,
): SheetTest | undefined {
  return tests
    .filter((test) => figure(test) !== undefined)
    .toSorted((a, b) => (figure(b) ?? 0) - (figure(a) ?? 0))[0];
}

/** Where a tester is expected to show most, the ring in service and fed both ways; undefined where nothing is expected. */
export const highestLive = (tests: readonly SheetTest[]): SheetTest | undefined =>
  highestBy(tests, ({ expected }) => expected?.fromOhm);

/**
 * Which of the two highest loops is which: as a tester reads it live, where a ring is fed both ways, and as the loop before the circuit
 * and R1 + R2 come to, which is what the design is held by. They may be at different points.
 */
function whereHighest({ zs }: LoopsOf): string | null {
  const live = highestLive(zs);
  const reckoned = highestBy(zs, ({ expected }) => expected?.toOhm);
  if (live?.expected == null || reckoned?.expected == null) return null;
  const { fromOhm } = live.expected;
  const { toOhm } = reckoned.expected;
  if (live.subject === reckoned.subject && ohm(fromOhm) === ohm(toOhm))
    return `The highest is expected at ${live.mark}.`;
  return `Read live the highest is expected at ${live.mark}, ${ohm(fromOhm)}; as loop before the circuit + R1 + R2 at ${reckoned.mark}, ${ohm(toOhm)}.`;
}

/** The highest loop out of the two that were read; null where one was not. */
function asRead({ r1r2Read, sourceOhm }: LoopsOf): string | null {
  const most = r1r2Read.toSorted((a, b) => b.ohm - a.ohm)[0];
  if (sourceOhm === null || most === undefined) return null;
  return `Out of what was read: ${ohm(sourceOhm)} before the circuit + R1 + R2 ${ohm(most.ohm)} = ${ohm(sourceOhm + most.ohm)} at ${most.mark}.`;
}

/**
 * What is to be borne in mind of the highest Zs; null where nothing is known of it. A live reading is the result: it goes before what is
 * worked out, and earths in parallel make it less, never more.
 *
 * Source: BS 7671 643.7.3; that a reading is less than Ze + R1 + R2 through parallel earths is a fact of the trade.
 */
export const zsNote = (loops: LoopsOf, isRead: boolean): string | null =>
  notesOf(isRead ? null : whereHighest(loops), asRead(loops));
