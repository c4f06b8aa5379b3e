import type { Plan } from '../../plan/plan.ts';
import { type PlanPoint, planPoint } from '../../plan/plane.ts';
import type { VoidSpace } from '../../plan/voids.ts';
import { inVoid } from '../plumb.ts';
import type { Sheet } from './line.ts';

/** A void as a sheet, square to its joists: `along` them and `across`. Where their direction is unknown, square to the plan. */
export interface VoidFrame extends Sheet {
  readonly space: VoidSpace;
  /** Unit vector along the joists. */
  readonly along: readonly [number, number];
  readonly across: readonly [number, number];
}

/** The frame of a void. */
export function voidFrame(plan: Plan, space: VoidSpace): VoidFrame {
  const storey = plan.storeyById.get(space.storeyId)?.storey;
  const angle = space.kind === 'loft' ? 0 : (((storey?.floor.joistsRunDeg ?? 0) % 180) * Math.PI) / 180;
  const along = [clean(Math.cos(angle)), clean(Math.sin(angle))] as const;
  const across = [-along[1], along[0]] as const;
  const frame = { space, along, across };
  return {
    ...frame,
    key: `void ${space.kind} ${space.storeyId}`,
    positionAt: (a, b) => inVoid(plan, space, atOf(frame, a, b)),
  };
}

/** So that walls square to the joists are square to the frame, to the last digit. */
const clean = (value: number): number => (Math.abs(value) < 1e-12 ? 0 : value);

type Axes = Pick<VoidFrame, 'along' | 'across'>;

/** A place on plan by its coordinates in the frame. */
export const atOf = ({ along, across }: Axes, a: number, b: number): PlanPoint =>
  planPoint(along[0] * a + across[0] * b, along[1] * a + across[1] * b);

/** The coordinates of a place on plan in the frame. */
export const inFrame = (
  { along, across }: Axes,
  [x, y]: readonly [number, number],
): readonly [number, number] => [x * along[0] + y * along[1], x * across[0] + y * across[1]];
