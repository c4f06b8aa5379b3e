import type { Worked } from '#engine/connections/worked.ts';
import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Run } from '#engine/ways/run.ts';
import { type LabelPlacer, textBox } from '../label-placer.ts';
import { nodeLabel } from '../node-label.ts';
import { type Ink, line, type Shape, words } from '../scene.ts';
import { labelSpots, partOfPath, planPath, sheetPath, storeysOf } from './cable-shapes.ts';
import { inLanes } from './lanes.ts';
import type { SheetLayout } from './sheet-layout.ts';
import { wayInWords } from './way-words.ts';

/** A new cable as the panel lists it. */
export interface DrawnRun {
  readonly id: string;
  readonly fromLabel: string;
  readonly toLabel: string;
  readonly words: string;
  readonly lengthMm: number | null;
}

/** A storey's cables as drawn. */
export interface CableLayer {
  readonly shapes: readonly Shape[];
  readonly middles: ReadonlyMap<string, SheetPoint>;
  readonly drawnRuns: readonly DrawnRun[];
}

const isOn = (run: Run, storeyId: string): boolean =>
  storeysOf(run).has(storeyId) && planPath(run).length > 0;

function foundInk(worked: Worked, run: Run): Ink {
  const certainty = worked.job.legs.find((leg) => leg.id === run.legId)?.certainty;
  const route = certainty?.route ?? certainty?.via;
  return run.pinned && (route === undefined || route === 'seen' || route === 'measured')
    ? 'found'
    : 'found-assumed';
}

function foundShapes(
  worked: Worked,
  run: Run,
  path: readonly SheetPoint[],
  free: LabelPlacer,
): readonly Shape[] {
  const ink = foundInk(worked, run);
  const shapes: Shape[] = [line('halo-line', path), line(ink, path)];
  if (ink === 'found-assumed' && path.length > 1) {
    const at = free.placeOnCable('?', 2.5, labelSpots(path));
    shapes.push(
      { kind: 'circle', at, radiusMm: 1.5, ink: 'halo' },
      words('text-soft', sheetPoint(at[0], at[1] + 0.9), '?', { sizeMm: 2.5, anchor: 'middle' }),
    );
  }
  return shapes;
}

function removedShapes(worked: Worked, legId: string, path: readonly SheetPoint[]): readonly Shape[] {
  return worked.proposed.removed
    .filter((stretch) => stretch.legId === legId)
    .map((stretch) => {
      const run = worked.foundRuns.get(legId);
      const part = run === undefined ? path : partOfPath(run, path, stretch);
      return part.length < 2 ? path : part;
    })
    .flatMap((part) => [line('halo-line', part), line('removed', part)]);
}

function newShapes(run: Run, path: readonly SheetPoint[], free: LabelPlacer): readonly Shape[] {
  if (path.length < 2) return [];
  const text = run.lengthMm === null ? '?' : `${(run.lengthMm / 1000).toFixed(2)} m`;
  const at = free.placeOnCable(text, 2.5, labelSpots(path));
  const box = textBox(at, text, 2.5);
  const corners = [
    sheetPoint(box.leftMm, box.topMm),
    sheetPoint(box.rightMm, box.topMm),
    sheetPoint(box.rightMm, box.bottomMm),
    sheetPoint(box.leftMm, box.bottomMm),
  ];
  return [
    line('halo-line', path),
    line('new', path),
    line('halo', corners, true),
    words('text-new', sheetPoint(at[0], at[1] + 0.9), text, { sizeMm: 2.5, anchor: 'middle', strong: true }),
  ];
}

const middleOf = (path: readonly SheetPoint[]): SheetPoint | undefined => labelSpots(path)[0] ?? path[0];

/** A cable with its path on the sheet, in its lane. */
export interface DrawnCable {
  readonly run: Run;
  readonly path: readonly SheetPoint[];
  readonly isFound: boolean;
}

/** A storey's cables, those found first; those that share a way side by side. */
export function drawnCables(worked: Worked, storeyId: string, layout: SheetLayout): readonly DrawnCable[] {
  const found = [...worked.foundRuns.values()].filter((run) => isOn(run, storeyId));
  const all = [...found, ...worked.runs.filter((run) => isOn(run, storeyId))];
  const paths = inLanes(all.map((run) => sheetPath(layout.frame, run)));
  return all.map((run, i) => ({ run, path: paths[i] ?? [], isFound: i < found.length }));
}

/** Draws a storey's cables: as found, taken out, new with their lengths. */
export function cableLayer(worked: Worked, cables: readonly DrawnCable[], free: LabelPlacer): CableLayer {
  const shapes: Shape[] = [];
  const middles = new Map<string, SheetPoint>();
  for (const { run, path, isFound } of cables) {
    const drawn = isFound
      ? [...foundShapes(worked, run, path, free), ...removedShapes(worked, run.legId ?? run.id, path)]
      : newShapes(run, path, free);
    const middle = middleOf(path);
    if (drawn.length === 0 || middle === undefined) continue;
    const title = `${nodeLabel(worked, run.from.nodeId)} to ${nodeLabel(worked, run.to.nodeId)}`;
    shapes.push({ kind: 'group', subject: run.id, title, shapes: drawn });
    middles.set(run.id, middle);
  }
  const fresh = cables.filter((cable) => !cable.isFound);
  return { shapes, middles, drawnRuns: fresh.map(({ run }) => drawnRun(worked, run)) };
}

function drawnRun(worked: Worked, run: Run): DrawnRun {
  return {
    id: run.id,
    fromLabel: nodeLabel(worked, run.from.nodeId),
    toLabel: nodeLabel(worked, run.to.nodeId),
    words: wayInWords(run),
    lengthMm: run.lengthMm,
  };
}
