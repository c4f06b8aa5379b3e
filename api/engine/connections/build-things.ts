import { newAccessories } from './accessories.ts';
import { backBoxes } from './boxes.ts';
import { fittings } from './fittings.ts';
import { fusedUnits } from './fused-units.ts';
import { cableJoints } from './joints.ts';
import { terminalFills } from './terminals.ts';
import type { Things } from './things.ts';
import { type ThingsInput, wiringIndex } from './wiring-index.ts';

/**
 * Turns wiring with its runs into things: joints, conductors in terminals, back boxes, fused units and
 * accessories, each list sorted by id. Never throws: what the survey does not tell is unknown, not a fault.
 */
export function buildThings(input: ThingsInput): Things {
  const index = wiringIndex(input);
  const units = fusedUnits(index);
  const terminals = terminalFills(index);
  const fitted = fittings(index, units);
  return {
    joints: cableJoints(index, units),
    terminals,
    boxes: backBoxes(index, fitted, terminals),
    fusedUnits: units,
    accessories: newAccessories(index, fitted, units),
  };
}
