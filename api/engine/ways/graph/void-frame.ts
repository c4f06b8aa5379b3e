import type { Plan } from '../../plan/plan.ts';
import type { VoidSpace } from '../../plan/voids.ts';
import { atOf, axesAt, type JoistAxes } from '../joist-axes.ts';
import { inVoid } from '../plumb.ts';
import type { Sheet } from './line.ts';

/** A void as a sheet, square to its joists: `along` them and `across`. Where their direction is unknown, square to the plan. */
export interface VoidFrame extends Sheet, JoistAxes {
  readonly space: VoidSpace;
}

/** The frame of a void. */
export function voidFrame(plan: Plan, space: VoidSpace): VoidFrame {
  const storey = plan.storeyById.get(space.storeyId)?.storey;
  const axes = axesAt(space.kind === 'loft' ? 0 : (storey?.floor.joistsRunDeg ?? 0));
  return {
    space,
    ...axes,
    key: `void ${space.kind} ${space.storeyId}`,
    positionAt: (a, b) => inVoid(plan, space, atOf(axes, a, b)),
  };
}
