import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { Storey } from '#model/building.ts';

/** The walls of a storey as the engine's plan has them, by id. */
export const wallMap = ({ walls }: Pick<Storey, 'walls'>): Plan['wallById'] =>
  buildPlan({ storeys: [{ ...wallsAlone, walls }], points: [], boards: [] }).wallById;

/** Of a storey's own nothing is asked. */
const wallsAlone: Storey = {
  id: '',
  name: '',
  floorLevelMm: 0,
  heightMm: 1,
  floor: { build: 'solid', voidMm: 0, covering: 'none' },
  ceiling: { lining: 'none', loft: false },
  walls: [],
  rooms: [],
  fixtures: [],
  stairwells: [],
};
