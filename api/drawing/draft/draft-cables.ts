import type { Worked } from '#engine/connections/worked.ts';
import type { Position } from '#engine/plan/plane.ts';
import { type SheetFrame, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { metres } from '#engine/quotation/said.ts';
import { partOfPath } from '#engine/ways/part-of-path.ts';
import type { Run, Segment } from '#engine/ways/run.ts';
import type { LabelPlacer } from '../label-placer.ts';
import { nodeLabel } from '../node-label.ts';
import { isFoundAsSeen } from '../plan/cable-layer.ts';
import { labelSpots, planPath, sheetPath, storeysOf } from '../plan/cable-shapes.ts';
import { words } from '../scene.ts';
import type { DraftLayer, DraftPoint, DraftThing } from './draft.ts';
import { draftOfShapes } from './draft-of-shapes.ts';

/** Size of the lettering beside a cable, mm on paper. */
const LABEL_SIZE_MM = 2.5;
/** A joist is drilled about so wide, mm, where the drawing shows it. Common practice, no source. */
const HOLE_MM = 20;

/** Where the storey lies on the sheet that its lettering is placed on, and what is free there. */
export interface DraftSheet {
  readonly frame: SheetFrame;
  readonly free: LabelPlacer;
}

const spot = ({ at, levelMm }: Position): DraftPoint => [at[0], at[1], levelMm];

/** The layers of a way: flat on the plan, and as it runs in the house. */
interface WayLayers {
  readonly flat: DraftLayer;
  readonly inSpace: DraftLayer;
}

/**
 * A way twice: flat, without its uprights, which are points on plan; and as it runs in the house, uprights and all, as long as its stretches
 * together.
 */
function wayThings({ flat, inSpace }: WayLayers, segments: readonly Segment[]): readonly DraftThing[] {
  const [first] = segments;
  if (first === undefined) return [];
  const points = [spot(first.from), ...segments.map(({ to }) => spot(to))];
  const onPlan = planPath({ segments }).map(([x, y]): DraftPoint => [x, y, 0]);
  return [
    { kind: 'line', layer: inSpace, points, closed: false },
    ...(onPlan.length > 1 ? [{ kind: 'line', layer: flat, points: onPlan, closed: false } as const] : []),
  ];
}

const found: WayLayers = { flat: 'CABLES-FOUND', inSpace: 'CABLES-FOUND-3D' };
const assumed: WayLayers = { flat: 'CABLES-FOUND-ASSUMED', inSpace: 'CABLES-FOUND-3D' };
const removed: WayLayers = { flat: 'CABLES-REMOVED', inSpace: 'CABLES-REMOVED-3D' };
const fresh: WayLayers = { flat: 'CABLES-NEW', inSpace: 'CABLES-NEW-3D' };

/** What a cable is, on it or beside it, where there is room. */
function labelThings(worked: Worked, run: Run, { frame, free }: DraftSheet): readonly DraftThing[] {
  const spots = labelSpots(sheetPath(frame, run));
  if (spots.length === 0) return [];
  const { lineMm2, cpcMm2 } = run.cable;
  const ends = `${nodeLabel(worked, run.from.nodeId)} to ${nodeLabel(worked, run.to.nodeId)}`;
  const length = run.lengthMm === null ? 'length not known' : metres(run.lengthMm);
  const cable = cpcMm2 === undefined ? `${lineMm2}` : `${lineMm2}/${cpcMm2}`;
  const text = `${ends}: ${cable} mm², ${length}`;
  const at = free.placeOnCable(text, LABEL_SIZE_MM, spots);
  const foot = sheetPoint(at[0], at[1] + 0.9);
  return draftOfShapes(
    frame,
    [words('text', foot, text, { sizeMm: LABEL_SIZE_MM, anchor: 'middle' })],
    () => 'CABLE-LABELS',
  );
}

/** Holes lie where the cable that they are for goes through. */
const holeThings = ({ cuts, segments }: Run): readonly DraftThing[] =>
  cuts.flatMap(({ holes }, i) =>
    holes.map(({ at }) => ({
      kind: 'circle',
      layer: 'JOIST-HOLES',
      at: [at[0], at[1], segments[i]?.from.levelMm ?? 0],
      radiusMm: HOLE_MM / 2,
    })),
  );

function removedThings(worked: Worked, run: Run): readonly DraftThing[] {
  return worked.proposed.removed
    .filter(({ legId }) => legId === run.legId)
    .flatMap(({ fromMm, toMm }) =>
      wayThings(
        removed,
        // Where it was cut nobody can say: all of it may come out.
        fromMm === null || toMm === null
          ? run.segments
          : partOfPath(run, { fromMm, toMm }, worked.allowances),
      ),
    );
}

/**
 * The cables that show on a storey, each whole, as it lies in the house: found, taken out, and new ones with their ends, size and length and the
 * holes in joists. A cable without a way has nothing to draw.
 */
export function draftCables(worked: Worked, storeyId: string, sheet: DraftSheet): readonly DraftThing[] {
  const isOn = (run: Run): boolean => storeysOf(run).has(storeyId);
  return [
    ...[...worked.foundRuns.values()]
      .filter(isOn)
      .flatMap((run) => [
        ...wayThings(isFoundAsSeen(worked, run) ? found : assumed, run.segments),
        ...removedThings(worked, run),
      ]),
    ...worked.runs
      .filter(isOn)
      .flatMap((run) => [
        ...wayThings(fresh, run.segments),
        ...holeThings(run),
        ...labelThings(worked, run, sheet),
      ]),
  ];
}
