import type { Worked } from '#engine/connections/worked.ts';
import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { type LabelPlacer, squareBeside } from '../label-placer.ts';
import { line, type Shape } from '../scene.ts';

/** From the middle of a symbol to its mark, mm. */
const BESIDE_MM = 4.6;
/** Half the room that the mark takes, mm. */
const HALF_MM = 1.9;

/** A camera about its middle: a body with a lens, and what is looked through on top; in ink, told by its shape alone. */
function cameraMark([x, y]: SheetPoint): readonly Shape[] {
  const at = (right: number, down: number): SheetPoint => sheetPoint(x + right, y + down);
  return [
    { kind: 'circle', at: at(0, 0), radiusMm: HALF_MM, ink: 'halo' },
    line(
      'symbol-solid',
      [
        at(-1.5, -0.7),
        at(-0.7, -0.7),
        at(-0.4, -1.2),
        at(0.4, -1.2),
        at(0.7, -0.7),
        at(1.5, -0.7),
        at(1.5, 1.1),
        at(-1.5, 1.1),
      ],
      true,
    ),
    { kind: 'circle', at: at(0, 0.2), radiusMm: 0.6, ink: 'halo' },
  ];
}

/** A camera beside every point and board that there are photos of, where there is room for it; on screen alone. */
export function photoMarks(
  { job }: Pick<Worked, 'job'>,
  middles: ReadonlyMap<string, SheetPoint>,
  free: LabelPlacer,
): readonly Shape[] {
  return [...job.points, ...job.boards].flatMap(({ id, photos = [] }): readonly Shape[] => {
    const middle = middles.get(id);
    if (middle === undefined || photos.length === 0) return [];
    const at = squareBeside(free, middle, { besideMm: BESIDE_MM, sideMm: 2 * HALF_MM });
    const title = photos.length === 1 ? 'a photo' : `${photos.length} photos`;
    return [{ kind: 'group', subject: id, title, shapes: cameraMark(at) }];
  });
}
