import type { CircuitProof } from '../../proof/circuit-proof.ts';
import type { MeasuredCheck, MeasuredPoint } from './measured-circuit.ts';
import { end, OPEN_OHM, ofGroup, type ReadTests } from './read-tests.ts';
import type { SheetTest } from './sheet-test.ts';

/**
 * How far r1 and rn of a sound ring may be apart, Ω.
 * Sources: https://electriciansforums.net/threads/testing-and-inspecting.36313/page-2 and https://zdroje.elektrika.cz/book/basic-electrical-installation-work/page/365;
 *   one page has 0.02: https://electriciansforums.net/threads/calculating-r2-from-r1-and-rn.31082.
 */
const ALIKE_OHM = 0.05;

/** How far r2 ÷ r1 may be from what the cables' sizes make it, as a share. Judgement, no source. */
const RATIO_OFF = 0.1;

/** Whether a ring closes, its line and neutral are alike, and its earth is what their sizes make it; none for other circuits. */
export function ringChecks(read: ReadTests): readonly MeasuredCheck[] {
  if (ofGroup(read, 'ends').length === 0) return [];
  const [r1, rn, r2] = [end(read, 'r1'), end(read, 'rn'), end(read, 'r2')];
  const ends = [r1, rn, r2].filter((ohm) => ohm !== null);
  const closes = {
    name: 'ring-closes',
    outcome: ends.some((ohm) => ohm > OPEN_OHM) ? 'fails' : ends.length < 3 ? 'not-told' : 'holds',
    actual: ends.length === 0 ? null : Math.max(...ends),
    limit: OPEN_OHM,
    where: '',
  } as const;
  const apart = r1 === null || rn === null ? null : Math.abs(r1 - rn);
  return [
    closes,
    {
      name: 'ring-alike',
      outcome: apart === null ? 'not-told' : apart <= ALIKE_OHM + 1e-9 ? 'holds' : 'look',
      actual: apart,
      limit: ALIKE_OHM,
      where: '',
    },
    ratioCheck(read, r1, r2),
  ];
}

function ratioCheck({ proof }: ReadTests, r1: number | null, r2: number | null): MeasuredCheck {
  const { ring } = proof.expected;
  const limit = ring === null || ring.r2Ohm === null || ring.r1Ohm === 0 ? null : ring.r2Ohm / ring.r1Ohm;
  const actual = r1 === null || r2 === null || r1 === 0 ? null : r2 / r1;
  const isOff = actual !== null && limit !== null && Math.abs(actual / limit - 1) > RATIO_OFF;
  return {
    name: 'earth-ratio',
    outcome: actual === null || limit === null ? 'not-told' : isOff ? 'look' : 'holds',
    actual,
    limit,
    where: '',
  };
}

/** The point whose loop, the greater of read and reckoned, leaves least of its limit. */
export function loopCheck(points: readonly MeasuredPoint[]): MeasuredCheck {
  const told = points.flatMap(({ zsReadOhm, zsReckonedOhm, zsLimitOhm, mark }) => {
    const loops = [zsReadOhm, zsReckonedOhm].filter((ohm) => ohm !== null);
    return loops.length === 0 || zsLimitOhm === null
      ? []
      : [{ ohm: Math.max(...loops), limit: zsLimitOhm, mark }];
  });
  const [worst] = told.toSorted((a, b) => b.ohm / b.limit - a.ohm / a.limit);
  return {
    name: 'loop',
    outcome: worst === undefined ? 'not-told' : worst.ohm > worst.limit ? 'fails' : 'holds',
    actual: worst?.ohm ?? null,
    limit: worst?.limit ?? null,
    where: worst?.mark ?? '',
  };
}

/** The greatest volt drop with cables as long as they read. */
export function dropCheck({ dropLimitV }: CircuitProof, points: readonly MeasuredPoint[]): MeasuredCheck {
  const [worst] = points
    .filter(({ dropV }) => dropV !== null)
    .toSorted((a, b) => (b.dropV ?? 0) - (a.dropV ?? 0));
  const actual = worst?.dropV ?? null;
  return {
    name: 'drop',
    outcome: actual === null ? 'not-told' : actual > dropLimitV ? 'fails' : 'holds',
    actual,
    limit: dropLimitV,
    where: worst?.mark ?? '',
  };
}

/** Insulation by its least, the RCD by its time, polarity by what is wrong. */
export function otherChecks(read: ReadTests): readonly MeasuredCheck[] {
  const insulation = figures(ofGroup(read, 'insulation'), 'insulation', Math.min);
  const rcd = figures(ofGroup(read, 'rcd', 'rcd-button'), 'rcd', Math.max);
  return [
    insulation,
    ...(rcd === null ? [] : [rcd]),
    figures(ofGroup(read, 'polarity'), 'polarity', Math.max),
  ].flatMap((check) => check ?? []);
}

/** Several tests of one kind as one check: fails with any, holds where all were read and kept their limits; null without tests. */
function figures(
  tests: readonly SheetTest[],
  name: MeasuredCheck['name'],
  worstOf: (...figures: readonly number[]) => number,
): MeasuredCheck | null {
  if (tests.length === 0) return null;
  const shown = tests.flatMap(({ reading }) =>
    reading?.kind === 'insulation' ? reading.megohm : reading?.kind === 'rcd' ? reading.ms : [],
  );
  const failing = tests.find(({ verdict }) => verdict === 'fails');
  const limit = tests.find((test) => test.limit?.bound !== 'right')?.limit ?? null;
  const isAllKept = tests.every(({ keepsLimit }) => keepsLimit === true);
  return {
    name,
    outcome: failing === undefined ? (isAllKept ? 'holds' : 'not-told') : 'fails',
    actual: shown.length === 0 ? null : worstOf(...shown),
    limit: limit === null || limit.bound === 'right' ? null : limit.value,
    where: failing?.group === 'polarity' ? failing.mark : '',
  };
}
