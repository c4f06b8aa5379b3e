import { insulationResistance } from '#data/standards/insulation-resistance.ts';
import { rcdTest } from '#data/standards/rcd-test.ts';
import type { RowStatus } from '#data/standards/table.ts';

/** What a consumer unit tested as a whole bears behind the distributor's cut-out, kA. Source: BS EN 61439-3 Annex ZB (from memory). */
export const CONDITIONAL_KA = 16;

/** How the insulation of a circuit is tested, and what it must show at least. */
export interface InsulationLimit {
  /** Direct voltage. */
  readonly testV: number;
  readonly minimumMegohm: number;
  readonly grade: RowStatus;
}

/** How a residual current device is tested, and when it must have opened. */
export interface RcdTestLimit {
  /** Test current as a multiple of the rated residual current. */
  readonly testMultiple: number;
  /** Nought for a device without delay. */
  readonly minimumMs: number;
  readonly maximumMs: number;
  readonly grade: RowStatus;
}

/**
 * The insulation test of a 230 V circuit.
 * Source: BS 7671 Table 64.
 */
export function insulationLimit(): InsulationLimit {
  const [{ testV, minimumMegohm, status: grade }] = insulationResistance.rows;
  return { testV, minimumMegohm, grade };
}

/**
 * The test of an RCD since Amendment 2: one alternating test at its rated residual current, whatever its type.
 * `time-delayed` is type S, `in-accessory` an RCD in a socket-outlet or a fused unit. Before, additional protection was proved at five times and 40 ms.
 * Source: BS 7671:2018+A2:2022 643.7.1, 643.8; times of BS EN 61008, BS EN 61009 and BS 7288.
 */
export function rcdTestLimit(kind: (typeof rcdTest.rows)[number]['kind']): RcdTestLimit {
  const row = rcdTest.rows.find((each) => each.kind === kind) ?? rcdTest.rows[0];
  const { testMultiple, minimumMs, maximumMs, status: grade } = row;
  return { testMultiple, minimumMs, maximumMs, grade };
}
