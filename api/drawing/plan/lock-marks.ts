import type { Worked } from '#engine/connections/worked.ts';
import type { SheetPoint } from '#engine/plan/sheet-frame.ts';
import { connectedPoints } from '../label-of.ts';
import { type LabelPlacer, squareBeside } from '../label-placer.ts';
import { LOCK_HALF_MM, LOCK_WORDS, lockMark } from '../lock-mark.ts';
import type { Shape } from '../scene.ts';

/** From the middle of a symbol or a cable to its mark, mm. */
const BESIDE_MM = 4.6;

/** The ids of what a scheme has locked, as it is drawn: its new cables and the points that they join on. */
export function lockedThings({ scheme, runs }: Pick<Worked, 'scheme' | 'runs'>): ReadonlySet<string> {
  const locked = (scheme?.connections ?? []).filter(({ id }) => scheme?.locks.includes(id) === true);
  const ids = new Set(locked.map(({ id }) => id));
  const cables = runs.filter(({ connectionId }) => connectionId !== null && ids.has(connectionId));
  return new Set([...cables.map(({ id }) => id), ...locked.flatMap(connectedPoints)]);
}

/** Where a padlock goes on a screen: where it covers least. */
export const lockBeside =
  (free: LabelPlacer) =>
  (middle: SheetPoint): SheetPoint =>
    squareBeside(free, middle, { besideMm: BESIDE_MM, sideMm: 2 * LOCK_HALF_MM });

/** A padlock beside everything that is locked and drawn, where `place` puts it; none where it has no room for it. */
export function lockMarks(
  worked: Worked,
  middles: ReadonlyMap<string, SheetPoint>,
  place: (middle: SheetPoint, subject: string) => SheetPoint | null,
): readonly Shape[] {
  return [...lockedThings(worked)].flatMap((subject): readonly Shape[] => {
    const middle = middles.get(subject);
    if (middle === undefined) return [];
    const at = place(middle, subject);
    if (at === null) return [];
    return [{ kind: 'group', subject, title: LOCK_WORDS, shapes: lockMark(at) }];
  });
}
