import { buildThings } from '#engine/connections/build-things.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { linesOf, type WastePercents } from '#engine/takeoff/demand.ts';
import type { TakeoffLine } from '#engine/takeoff/line.ts';
import { takeOff } from '#engine/takeoff/take-off.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { inputOf, type Wiring } from '#tests/engine/connections/wiring-builder.ts';
import { tariff } from '#tests/engine/ways/demo-houses.ts';

/** Nothing lost, so that what is counted is what is asked for. */
export const noWaste: WastePercents = { cable: 0, containment: 0, fixings: 0, fillers: 0 };

/** A job worked through from its wiring; the circuit is touched. */
export function workedOf(wiring: Wiring): Worked {
  const input = inputOf(wiring);
  return {
    ...input,
    foundShapes: input.shapes,
    tariff,
    allowances: defaultLengthAllowances,
    things: buildThings(input),
    circuitIds: ['ring'],
  };
}

/** The take-off by item. */
export function linesByItem(
  worked: Worked,
  waste: WastePercents = noWaste,
): ReadonlyMap<string, TakeoffLine> {
  return new Map(takeOff(worked, waste).map((line) => [line.item, line]));
}

/** Measured quantities by item, of the demands of one concern. */
export function measuredByItem(demands: Parameters<typeof linesOf>[0]): Readonly<Record<string, number>> {
  return Object.fromEntries(linesOf(demands, noWaste).map((line) => [line.item, line.measured]));
}
