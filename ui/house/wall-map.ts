import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { Storey } from '#model/building.ts';

/** The walls of a storey as the engine's plan has them, by id. */
export const wallMap = (storey: Storey): Plan['wallById'] =>
  buildPlan({ storeys: [storey], points: [], boards: [] }).wallById;
