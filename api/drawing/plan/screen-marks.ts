import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { type LabelPlacer, placesAround } from '../label-placer.ts';
import { findingMark, outcomeWords } from '../marks.ts';
import { line, type Shape } from '../scene.ts';

const signs = { fails: '!', decide: '?' } as const;

/** Lettering of marks on screen, units of the scene: 12.5 px. */
const SIGN_SIZE = 2.5;
/** From a thing to its mark: nearer than this, no line need join them. */
const NEAR = 6;

/** The mark with its sign large enough for a screen. */
function markAt(outcome: keyof typeof signs, at: SheetPoint): readonly Shape[] {
  return findingMark(outcome, at, signs[outcome]).map((shape) =>
    shape.kind === 'text'
      ? { ...shape, sizeMm: SIGN_SIZE, at: sheetPoint(at[0], at[1] + SIGN_SIZE * 0.36) }
      : shape,
  );
}

/**
 * One mark a thing, of the gravest that is said of it; advice and what is not proven is left to the list. A mark that
 * had to go aside is joined to its thing by a line.
 */
export function screenMarks(
  findings: readonly Finding[],
  spots: ReadonlyMap<string, SheetPoint>,
  free: LabelPlacer,
): readonly Shape[] {
  const marked = new Set<string>();
  const shapes: Shape[] = [];
  for (const outcome of ['fails', 'decide'] as const)
    for (const { subject, message, outcome: own } of findings) {
      const spot = spots.get(subject);
      if (own !== outcome || spot === undefined || marked.has(subject)) continue;
      marked.add(subject);
      const at = free.placeOnCable('MM', 4, placesAround(spot, [0, 1], 5));
      const isFar = Math.hypot(at[0] - spot[0], at[1] - spot[1]) > NEAR;
      const leader = isFar ? [line(outcome === 'fails' ? 'mark-fails' : 'mark-decide', [spot, at])] : [];
      const title = `${outcomeWords[outcome]}: ${message}`;
      shapes.push({ kind: 'group', subject, title, shapes: [...leader, ...markAt(outcome, at)] });
    }
  return shapes;
}
