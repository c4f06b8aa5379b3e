import type { Worked } from '#engine/connections/worked.ts';
import type { SheetPoint } from '#engine/plan/sheet-frame.ts';
import { metres } from '#engine/quotation/said.ts';
import type { Run } from '#engine/ways/run.ts';
import { nodeLabel } from '../node-label.ts';
import { type Ink, line, type Shape } from '../scene.ts';
import { labelSpots, partOfPath, planPath, sheetPath, storeysOf } from './cable-shapes.ts';
import { inLanes } from './lanes.ts';
import type { SheetLayout } from './sheet-layout.ts';

/** A storey's cables as drawn. */
export interface CableLayer {
  readonly shapes: readonly Shape[];
  readonly middles: ReadonlyMap<string, SheetPoint>;
}

const isOn = (run: Run, storeyId: string): boolean =>
  storeysOf(run).has(storeyId) && planPath(run).length > 0;

/** True for a found cable that somebody followed; of the others the way is assumed. */
export function isFoundAsSeen(worked: Worked, run: Run): boolean {
  const certainty = worked.job.legs.find((leg) => leg.id === run.legId)?.certainty;
  const route = certainty?.route ?? certainty?.via;
  return run.pinned && (route === undefined || route === 'seen' || route === 'measured');
}

const foundInk = (worked: Worked, run: Run): Ink => (isFoundAsSeen(worked, run) ? 'found' : 'found-assumed');

function foundShapes(
  worked: Worked,
  run: Run,
  path: readonly SheetPoint[],
  label: LabelCable,
): readonly Shape[] {
  const ink = foundInk(worked, run);
  const isAsked = ink === 'found-assumed' && path.length > 1;
  return [line('halo-line', path), line(ink, path), ...(isAsked ? label('?', path) : [])];
}

/** Draws a label of a cable where there is room for it: "?" for an assumed way, or the length of a new cable. */
export type LabelCable = (text: string, path: readonly SheetPoint[]) => readonly Shape[];

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

/** A new cable's length as its label says it. */
const lengthSaid = ({ lengthMm }: Run): string => (lengthMm === null ? '?' : metres(lengthMm));

function newShapes(
  run: Run,
  path: readonly SheetPoint[],
  { label, saidOf }: { readonly label: LabelCable; readonly saidOf: (run: Run) => string },
): readonly Shape[] {
  const text = saidOf(run);
  // A cable that only goes up or down is a spot on plan: it has its label all the same.
  if (path.length < 2) return label(text, path);
  return [line('halo-new', path), line('new', path), ...label(text, path)];
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

/** Draws a storey's cables: as found, taken out, new with their lengths, or what else is to be said of them. */
export function cableLayer(
  worked: Worked,
  cables: readonly DrawnCable[],
  label: LabelCable,
  saidOf: (run: Run) => string = lengthSaid,
): CableLayer {
  const shapes: Shape[] = [];
  const middles = new Map<string, SheetPoint>();
  for (const { run, path, isFound } of cables) {
    const drawn = isFound
      ? [...foundShapes(worked, run, path, label), ...removedShapes(worked, run.legId ?? run.id, path)]
      : newShapes(run, path, { label, saidOf });
    const middle = middleOf(path);
    if (drawn.length === 0 || middle === undefined) continue;
    const title = `${nodeLabel(worked, run.from.nodeId)} to ${nodeLabel(worked, run.to.nodeId)}`;
    shapes.push({ kind: 'group', subject: run.id, title, shapes: drawn });
    middles.set(run.id, middle);
  }
  return { shapes, middles };
}
