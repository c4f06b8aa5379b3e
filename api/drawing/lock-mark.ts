import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { line, type Shape } from './scene.ts';

/** What the mark of a lock means, for legends. */
export const LOCK_WORDS = 'held fast: locked, a search leaves it as it is';

/** What is said of a locked thing after its name. */
export const HELD_FAST = 'held fast';

/** Half the room that the mark takes, mm. */
export const LOCK_HALF_MM = 2;

/** A padlock about its middle: a closed body with a keyhole under a bow, in ink, told by its shape alone. */
export function lockMark([x, y]: SheetPoint): readonly Shape[] {
  const at = (right: number, down: number): SheetPoint => sheetPoint(x + right, y + down);
  return [
    { kind: 'circle', at: at(0, 0.1), radiusMm: LOCK_HALF_MM, ink: 'halo' },
    { kind: 'arc', at: at(0, -0.35), radiusMm: 0.9, fromDeg: 180, toDeg: 360, closed: false, ink: 'symbol' },
    line('symbol-solid', [at(-1.35, -0.3), at(1.35, -0.3), at(1.35, 1.5), at(-1.35, 1.5)], true),
    { kind: 'circle', at: at(0, 0.6), radiusMm: 0.4, ink: 'halo' },
  ];
}
