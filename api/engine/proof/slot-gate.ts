import type { Plan } from '../plan/plan.ts';
import type { SlotGate } from '../ways/chase-slots.ts';
import type { WayTariff } from '../ways/way-tariff.ts';
import { capacityTogether } from './capacity-of-run.ts';

/** What decides in a house whether several cables may lie in one chase: what each of them carries there, and how deep it may be. */
export function slotGate(
  plan: Plan,
  { severalInChase: { deeperMm }, ambientC }: Pick<WayTariff, 'severalInChase' | 'ambientC'>,
): SlotGate {
  return {
    plan,
    deeperMm,
    capacityA: (segment, cable, cables) => capacityTogether(plan, segment, { cable, cables, ambientC }),
  };
}
