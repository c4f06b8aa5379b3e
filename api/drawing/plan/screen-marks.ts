import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { type LabelPlacer, placesAround } from '../label-placer.ts';
import { findingMark, outcomeWords } from '../marks.ts';
import { line, type Shape } from '../scene.ts';

const signs = { fails: '!', decide: '?' } as const;

/** Lettering of marks on screen, units of the scene: 12.5 px. */
const SIGN_SIZE = 2.5;
/** From a thing's middle to its mark: nearer than this, no line need join them. */
const NEAR = 6.5;
const BESIDE = 5.8;

/** Marks, and the lines that join them to their things; the lines go below the things. */
export interface ScreenMarks {
  readonly marks: readonly Shape[];
  readonly leaders: readonly Shape[];
}

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
): ScreenMarks {
  const marked = new Set<string>();
  const marks: Shape[] = [];
  const leaders: Shape[] = [];
  for (const outcome of ['fails', 'decide'] as const)
    for (const { subject, message, outcome: own } of findings) {
      const spot = spots.get(subject);
      if (own !== outcome || spot === undefined || marked.has(subject)) continue;
      marked.add(subject);
      const at = free.placeOnCable('MM', 4, placesAround(spot, [0, 1], BESIDE));
      if (Math.hypot(at[0] - spot[0], at[1] - spot[1]) > NEAR)
        leaders.push(line(outcome === 'fails' ? 'mark-fails' : 'mark-decide', [spot, at]));
      const title = `${outcomeWords[outcome]}: ${message}`;
      marks.push({ kind: 'group', subject, title, shapes: markAt(outcome, at) });
    }
  return { marks, leaders };
}
