import type { Limits } from '#model/library.ts';
import { unitOfLoadSide } from '../../circuit/load-side.ts';
import type { Worked } from '../../connections/worked.ts';
import { capacities } from '../../proof/capacity-of-run.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { measuredDrop } from '../../proof/measured-drop.ts';
import { bandOf } from '../../proof/reading-band.ts';
import { dropCheck, loopCheck, otherChecks, ringChecks } from './measured-checks.ts';
import type { MeasuredCircuit, MeasuredOutcome, MeasuredPoint } from './measured-circuit.ts';
import { ofGroup, ohmOf, ohmsRead, type ReadTests } from './read-tests.ts';
import type { TestSheet } from './sheet-test.ts';
import { coldLoopLimit } from './test-limits.ts';

interface Measuring {
  readonly worked: Worked;
  readonly proof: readonly CircuitProof[];
  readonly limits: Limits;
  readonly sheet: TestSheet;
}

/**
 * The proofs of a scheme's circuits repeated with what was read after the work: the loop at each point against its limit, by the tester and by
 * R1 + R2 read; the volt drop with cables as long as they read; whether the ring closes, insulation, RCD, polarity. Worked out each time from
 * proof and readings: nothing of it is designed by.
 */
export function measuredProofs(measuring: Measuring): readonly MeasuredCircuit[] {
  return measuring.proof.map((proof) => measured(measuring, proof));
}

function measured({ worked, limits, sheet }: Measuring, proof: CircuitProof): MeasuredCircuit {
  const circuit = worked.proposed.circuits.find(({ id }) => id === proof.circuit);
  const parts = sheet.parts.filter(({ circuitId }) => circuitId === proof.circuit);
  const read: ReadTests = { proof, worked, tests: parts.flatMap(({ tests }) => tests) };
  const drop = measuredDrop(
    { worked, capacities: capacities(worked, limits), limits },
    proof.circuit,
    ohmsRead(read),
  );
  const points = pointsOf(read, {
    drop,
    sourceOhm: sourceRead(sheet, circuit?.board?.id) ?? proof.source.ohm,
  });
  return {
    circuitId: proof.circuit,
    circuitName: circuit?.name ?? proof.circuit,
    checks: [...ringChecks(read), loopCheck(points), dropCheck(proof, points), ...otherChecks(read)],
    points,
    dropLimitV: proof.dropLimitV,
    contradicted: read.tests.filter(({ fitsBand }) => fitsBand === false),
    notRead: read.tests.filter(({ verdict, isKept }) => isKept && verdict === 'not-read').length,
  };
}

/** The loop before a board's circuits as it was read after the work, Ω; null where it was not. */
export function sourceRead({ parts }: TestSheet, boardId: string | undefined): number | null {
  const readings = parts
    .flatMap(({ tests }) => tests)
    .flatMap(({ group, subject, reading }) =>
      group === 'supply' && subject === boardId ? (reading ?? []) : [],
    );
  const loop = readings.find(({ kind }) => kind === 'ze' || kind === 'zs');
  return loop?.kind === 'ze' || loop?.kind === 'zs' ? loop.ohm : null;
}

/** What points are told by beside the readings taken at them. */
interface Before {
  readonly drop: ReadonlyMap<string, number> | null;
  /** The loop before the circuit, Ω. */
  readonly sourceOhm: number | null;
}

function pointsOf(read: ReadTests, { drop, sourceOhm }: Before): readonly MeasuredPoint[] {
  const { proof } = read;
  const loops = new Map(ofGroup(read, 'zs').map((test) => [test.subject, test]));
  return ofGroup(read, 'crossed-le', 'r1r2').flatMap((test) => {
    const r1r2Ohm = ohmOf(read, test);
    const tester = loops.get(test.subject)?.reading;
    const told = {
      point: test.subject,
      mark: test.mark,
      r1r2Ohm,
      zsReckonedOhm: r1r2Ohm === null || sourceOhm === null ? null : sourceOhm + r1r2Ohm,
      zsReadOhm: tester?.kind === 'zs' ? tester.ohm : null,
      zsLimitOhm: coldLoopLimit(read, test.subject),
      dropV: drop?.get(test.subject) ?? drop?.get(unitOfLoadSide(test.subject)) ?? null,
    };
    if (told.r1r2Ohm === null && told.zsReadOhm === null && told.dropV === null) return [];
    return [{ ...told, outcome: outcomeAt(told, proof.dropLimitV) }];
  });
}

/**
 * How a point comes out by its loop, as read and as reckoned, and by its volt drop. A tester that shows more than the loop before the circuit and
 * R1 + R2 contradicts one of them; less is usual, through other ways to earth.
 */
export function outcomeAt(
  {
    zsReadOhm,
    zsReckonedOhm,
    zsLimitOhm,
    dropV,
  }: Pick<MeasuredPoint, 'zsReadOhm' | 'zsReckonedOhm' | 'zsLimitOhm' | 'dropV'>,
  dropLimitV: number,
): MeasuredOutcome {
  const loops = [zsReadOhm, zsReckonedOhm].filter((ohm) => ohm !== null);
  const isOver = zsLimitOhm !== null && loops.some((ohm) => ohm > zsLimitOhm);
  if (isOver || (dropV !== null && dropV > dropLimitV)) return 'fails';
  if (zsReadOhm !== null && zsReckonedOhm !== null && zsReadOhm > zsReckonedOhm + bandOf(zsReckonedOhm))
    return 'look';
  return loops.length === 0 || zsLimitOhm === null ? 'not-told' : 'holds';
}
