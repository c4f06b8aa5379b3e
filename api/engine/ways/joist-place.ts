import type { Floor } from '#model/building.ts';
import type { Plan } from '../plan/plan.ts';
import type { PlanPoint } from '../plan/plane.ts';
import { inAxes, joistAxes } from './joist-axes.ts';
import { type Bearing, joistSupports } from './joist-supports.ts';
import { type JoistCut, type JoistSpan, judgeCrossing } from './joist-window.ts';

/** A place in a joist: where it is between the supports, and what may be cut there. */
export interface JoistPlace {
  /** Along the joist, both from the plan's origin; null where a support is not drawn, and over a support. */
  readonly span: JoistSpan | null;
  /** The nearer support; null where none is drawn, and over a support. */
  readonly support: Bearing | null;
  /** To the nearer support; 0 over a support; null where one is not drawn. */
  readonly fromSupportMm: number | null;
  /** Where an end of the span is only assumed: see `BorneSpan`. */
  readonly isSpanAssumed: boolean;
  readonly judged: JoistCut;
}

const nothingKnown: JoistPlace = {
  span: null,
  support: null,
  fromSupportMm: null,
  isSpanAssumed: true,
  judged: 'unknown',
};

/** What may be cut into the joist at a place of a floor; nothing is known where the joists' direction is not, or no supports are drawn. */
export function joistPlace(plan: Plan, storeyId: string, floor: Floor, at: PlanPoint): JoistPlace {
  const axes = joistAxes(floor);
  if (axes === null) return nothingKnown;
  const [alongMm, acrossMm] = inAxes(axes, at);
  const { span, isOverSupport } = joistSupports(plan, storeyId, axes, [alongMm, acrossMm]);
  if (isOverSupport) return { ...nothingKnown, fromSupportMm: 0, isSpanAssumed: false, judged: 'neither' };
  if (span === null) return nothingKnown;
  const [lowMm, highMm] = [alongMm - span.fromMm, span.toMm - alongMm];
  return {
    span,
    support: lowMm <= highMm ? span.low : span.high,
    fromSupportMm: Math.max(0, Math.min(lowMm, highMm)),
    isSpanAssumed: span.isAssumed,
    judged: judgeCrossing(floor, span, alongMm),
  };
}
