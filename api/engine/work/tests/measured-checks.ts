import { unitOfLoadSide } from '../../circuit/load-side.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { shownBy } from './answering-reading.ts';
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

/** Insulation, RCDs, arc fault device and polarity: by what leaves least room, or is wrong. */
export function otherChecks(read: ReadTests): readonly MeasuredCheck[] {
  return [
    inOne(ofGroup(read, 'insulation'), 'insulation'),
    inOne(ofGroup(read, 'rcd', 'rcd-button'), 'rcd'),
    inOne(ofGroup(read, 'afdd-button'), 'arc-fault'),
    // What there is room for on paper alone is not among what was read.
    inOne(
      ofGroup(read, 'polarity').filter(({ isKept }) => isKept),
      'polarity',
    ),
  ].flatMap((check) => check ?? []);
}

/** Several tests of one kind as one check: fails with any, holds where all were read and kept their limits; null without tests. */
function inOne(tests: readonly SheetTest[], name: MeasuredCheck['name']): MeasuredCheck | null {
  if (tests.length === 0) return null;
  const [worst] = tests.flatMap(roomLeft).toSorted((a, b) => b.share - a.share);
  const failing = tests.find(({ verdict }) => verdict === 'fails');
  const isAllKept = tests.every(({ keepsLimit }) => keepsLimit === true);
  const told = failing ?? worst?.test;
  return {
    name,
    outcome: failing === undefined ? (isAllKept ? 'holds' : 'not-told') : 'fails',
    actual: worst?.figure ?? null,
    limit:
      worst?.limit ??
      tests.flatMap(({ limit }) => (limit === null || limit.bound === 'right' ? [] : limit.value))[0] ??
      null,
    // Of a whole circuit there is no place to name.
    where: told === undefined || unitOfLoadSide(told.subject) !== told.at ? '' : told.mark,
  };
}

/** How much of its limit a figure takes up; none of what was not read, or is no figure. */
function roomLeft(test: SheetTest) {
  const { reading, limit } = test;
  const figure = reading === null ? null : shownBy(reading);
  if (typeof figure !== 'number' || limit === null || limit.bound === 'right') return [];
  const below = (least: number): number => (figure === 0 ? Number.POSITIVE_INFINITY : least / figure);
  const shares = {
    most: () => figure / limit.value,
    least: () => below(limit.value),
    between: () => Math.max(figure / limit.value, limit.bound === 'between' ? below(limit.least) : 0),
  };
  return [{ test, figure, limit: limit.value, share: shares[limit.bound]() }];
}
