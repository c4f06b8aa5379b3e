import type { Worked } from '../connections/worked.ts';
import { accessoryDemands } from './accessory-lines.ts';
import { boxDemands } from './box-lines.ts';
import { cableDemands } from './cable-lines.ts';
import { clipDemands } from './clip-lines.ts';
import { containmentDemands } from './containment-lines.ts';
import { linesOf, type WastePercents } from './demand.ts';
import { earthDemands } from './earth-lines.ts';
import { fixingDemands } from './fixing-lines.ts';
import { frameDemands } from './frame-lines.ts';
import { jointDemands } from './joint-lines.ts';
import { type KitCounts, usualCounts } from './kit-counts.ts';
import type { TakeoffLine } from './line.ts';
import { makingGoodDemands } from './making-good-lines.ts';
import { paperDemands } from './paper-lines.ts';
import { protectionDemands } from './protection-lines.ts';

/**
 * Everything that a scheme takes, one line an item, in the order of a bill: by group, then by item id and size. A line of quantity nought may turn out
 * to be needed: its high quantity says how much. Nothing here decides anything: it counts what the stages
 * before made.
 */
export function takeOff(
  worked: Worked,
  waste: WastePercents,
  counts: KitCounts = usualCounts,
): readonly TakeoffLine[] {
  return linesOf(
    [
      ...cableDemands(worked, counts),
      ...accessoryDemands(worked),
      ...boxDemands(worked),
      ...frameDemands(worked, counts),
      ...jointDemands(worked, counts),
      ...earthDemands(worked, counts),
      ...protectionDemands(worked, counts),
      ...clipDemands(worked, counts),
      ...containmentDemands(worked, counts),
      ...fixingDemands(worked, counts),
      ...makingGoodDemands(worked, counts),
      ...paperDemands(worked, counts),
    ],
    waste,
  );
}
