import type { Floor } from '#model/building.ts';
import type { Plan } from '../../plan/plan.ts';
import { atOf, inAxes, joistAxes } from '../joist-axes.ts';
import { joistPlace } from '../joist-place.ts';
import type { JoistCut } from '../joist-window.ts';
import { JOIST_SPACING_MM } from '../joists.ts';
import { times, type WayTariff } from '../way-tariff.ts';
import type { Axis, LinePart } from './line.ts';
import type { VoidFrame } from './void-frame.ts';

/** A straight line in a void: which of the frame's two coordinates stays the same along it. */
export interface Straight {
  readonly frame: VoidFrame;
  readonly axis: Axis;
  readonly fixedMm: number;
}

/** A joist that a line meets, and what may be cut there. */
interface Met {
  readonly tMm: number;
  readonly judged: JoistCut;
}

/**
 * A part of a line that goes through joists, cut up by what may be done to them: drilled, notched, or neither. Joists of unknown
 * direction are met across or along: half of each.
 */
export function throughJoists(
  plan: Plan,
  straight: Straight,
  floor: Floor,
  part: LinePart,
  tariff: WayTariff,
): readonly LinePart[] {
  const spacingMm = floor.joistSpacingMm ?? JOIST_SPACING_MM;
  const axes = joistAxes(floor);
  if (axes === null) {
    const crossedBefore = (tMm: number) => multiplesBefore(tMm, spacingMm);
    return [{ ...part, crossedBefore, perCrossing: times(tariff.joist, 0.5) }];
  }
  const placeAt = ({ frame, axis, fixedMm }: Straight, tMm: number) =>
    axis === 0 ? atOf(frame, tMm, fixedMm) : atOf(frame, fixedMm, tMm);
  const startMm = inAxes(axes, placeAt(straight, 0))[1];
  const rate = inAxes(axes, placeAt(straight, 1))[1] - startMm;
  const sign = Math.sign(rate);
  const crossedBefore = (tMm: number) => multiplesBefore(sign * (startMm + rate * tMm), spacingMm);
  const met = joistsAt(startMm, rate, spacingMm, part).map((tMm): Met => {
    const at = placeAt(straight, tMm);
    return { tMm, judged: joistPlace(plan, straight.frame.space.storeyId, floor, at).judged };
  });
  return alike(met, part).map(({ fromMm, toMm, judged }) => ({
    ...part,
    fromMm,
    toMm,
    crossedBefore,
    ...cuttingAs(judged, tariff),
  }));
}

/** Where along a line the joists are, ends of the part with it, in order. */
function joistsAt(startMm: number, rate: number, spacingMm: number, part: LinePart): readonly number[] {
  const [a, b] = [part.fromMm, part.toMm].map((tMm) => (startMm + rate * tMm) / spacingMm).toSorted(byNumber);
  const first = Math.ceil((a ?? 0) - HAIR);
  const count = Math.max(0, Math.floor((b ?? 0) + HAIR) - first + 1);
  return Array.from({ length: count }, (_, index) => ((first + index) * spacingMm - startMm) / rate).toSorted(
    byNumber,
  );
}

const HAIR = 1e-6;
const byNumber = (a: number, b: number): number => a - b;

interface Alike {
  readonly fromMm: number;
  readonly toMm: number;
  readonly judged: JoistCut;
}

/** Stretches of a part in which the same may be done to every joist, parted halfway between two joists. */
function alike(met: readonly Met[], { fromMm, toMm }: LinePart): readonly Alike[] {
  const stretches: Alike[] = [];
  for (const [index, { tMm, judged }] of met.entries()) {
    const last = stretches.at(-1);
    if (last?.judged === judged) continue;
    const partingMm = last === undefined ? fromMm : ((met[index - 1]?.tMm ?? tMm) + tMm) / 2;
    if (last !== undefined) stretches[stretches.length - 1] = { ...last, toMm: partingMm };
    stretches.push({ fromMm: partingMm, toMm, judged });
  }
  return stretches.length === 0 ? [{ fromMm, toMm, judged: 'unknown' }] : stretches;
}

/** What a joist costs by how it may be cut; where it may not be, the way is avoided. */
function cuttingAs(
  judged: JoistCut,
  { joist, joistNotch }: WayTariff,
): Pick<LinePart, 'perCrossing' | 'unfit'> {
  if (judged === 'neither') return { perCrossing: joist, unfit: true };
  return { perCrossing: judged === 'notch' ? joistNotch : joist };
}

/** Whole multiples of a spacing below a place, one exactly there counting half; nought at or below nought. */
function multiplesBefore(mm: number, spacingMm: number): number {
  const share = mm / spacingMm;
  const nearest = Math.round(share);
  return Math.abs(share - nearest) < HAIR ? nearest - 0.5 : Math.floor(share);
}
