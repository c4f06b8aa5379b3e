import type { PlanPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, type SheetPoint, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { Run } from '#engine/ways/run.ts';

/** A cable's way on plan as drawn: corners on paper, without the uprights (they are points on plan). */
export function planPath(run: Pick<Run, 'segments'>): readonly PlanPoint[] {
  const corners: PlanPoint[] = [];
  for (const segment of run.segments) {
    for (const at of [segment.from.at, segment.to.at]) {
      const last = corners.at(-1);
      if (last === undefined || Math.hypot(last[0] - at[0], last[1] - at[1]) > 1) corners.push(at);
    }
  }
  return corners;
}

/** Which storeys a cable shows on: those of its ends and those in whose floor or rooms it lies. */
export function storeysOf(run: Run): ReadonlySet<string> {
  const ids = new Set<string>();
  for (const end of [run.from, run.to]) if (end.position !== null) ids.add(end.position.storeyId);
  for (const segment of run.segments) if (segment.lengthMm > 1) ids.add(segment.storeyId);
  return ids;
}

/** Shifts a path sideways on paper, corner by corner, so that cables that share a way are told apart. */
export function shifted(path: readonly SheetPoint[], byMm: number): readonly SheetPoint[] {
  if (byMm === 0 || path.length < 2) return path;
  return path.map((at, i) => {
    const before = path[i - 1] ?? at;
    const after = path[i + 1] ?? at;
    const normals = [normalOf(before, at), normalOf(at, after)].filter((n) => n !== null);
    const x = normals.reduce((sum, n) => sum + n[0], 0);
    const y = normals.reduce((sum, n) => sum + n[1], 0);
    const length = Math.hypot(x, y);
    if (length < 0.1) return at;
    // A mitred corner reaches further than the shift itself: by 1 / cos of half the turn.
    const reach = normals.length === 2 ? Math.min(2, 2 / length) : 1;
    return sheetPoint(at[0] + (x / length) * byMm * reach, at[1] + (y / length) * byMm * reach);
  });
}

function normalOf(a: SheetPoint, b: SheetPoint): readonly [number, number] | null {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return length < 1e-6 ? null : [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
}

/** A run's path on paper. */
export const sheetPath = (frame: SheetFrame, run: Run): readonly SheetPoint[] =>
  planPath(run).map((at) => toSheet(frame, at));

interface Stretch {
  readonly a: SheetPoint;
  readonly b: SheetPoint;
  readonly lengthMm: number;
}

function stretchesOf(path: readonly SheetPoint[]): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1];
    const b = path[i];
    if (a !== undefined && b !== undefined) stretches.push({ a, b, lengthMm: stepMm(a, b) });
  }
  return stretches.sort((one, other) => other.lengthMm - one.lengthMm);
}

/** A place for a label on a cable; turned by a quarter where the cable goes up the sheet. */
export interface LabelSpot {
  readonly at: SheetPoint;
  readonly isTurned: boolean;
}

/**
 * Places for a label along a path, turned with it: on its longest stretch that has this length first, then on the
 * others, then so far beside them.
 */
export function spotsAlong(
  path: readonly SheetPoint[],
  lengthMm: number,
  besideMm: number,
): readonly LabelSpot[] {
  const stretches = stretchesOf(path);
  const on = (some: readonly Stretch[], aside: number): readonly LabelSpot[] =>
    some.flatMap(({ a, b }) =>
      [0.5, 0.35, 0.65, 0.2, 0.8].map((part) => {
        const [x, y] = between(a, b, part);
        const isTurned = Math.abs(b[0] - a[0]) < Math.abs(b[1] - a[1]);
        return { at: isTurned ? sheetPoint(x + aside, y) : sheetPoint(x, y + aside), isTurned };
      }),
    );
  const long = stretches.filter((stretch) => stretch.lengthMm >= lengthMm);
  return [...on(long, 0), ...on(stretches, besideMm), ...on(stretches, -besideMm), ...on(stretches, 0)];
}

/** The middles of a path's stretches, longest first: candidate places for its label. */
export function labelSpots(path: readonly SheetPoint[]): readonly SheetPoint[] {
  return stretchesOf(path).flatMap(({ a, b }) =>
    [0.5, 0.35, 0.65, 0.2, 0.8].flatMap((part) => {
      const x = a[0] + (b[0] - a[0]) * part;
      const y = a[1] + (b[1] - a[1]) * part;
      return [0, 2.6, -2.6, 5.2, -5.2].map((aside) =>
        Math.abs(b[0] - a[0]) > Math.abs(b[1] - a[1])
          ? sheetPoint(x, y + aside)
          : sheetPoint(x + aside * 1.7, y),
      );
    }),
  );
}

/**
 * The part of a drawn path that a stretch of the leg covers, by share of the leg's length; the whole path
 * where the stretch or the length is not known.
 */
export function partOfPath(
  run: Run,
  path: readonly SheetPoint[],
  stretch: { readonly fromMm: number | null; readonly toMm: number | null },
): readonly SheetPoint[] {
  const lengthMm = run.lengthMm;
  if (lengthMm === null || lengthMm <= 0 || stretch.fromMm === null || stretch.toMm === null) return path;
  const total = path.reduce((sum, at, i) => sum + stepMm(path[i - 1] ?? at, at), 0);
  const from = (stretch.fromMm / lengthMm) * total;
  const to = (stretch.toMm / lengthMm) * total;
  const out: SheetPoint[] = [];
  let walked = 0;
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1];
    const b = path[i];
    if (a === undefined || b === undefined) continue;
    const step = stepMm(a, b);
    const enter = Math.max(from, walked);
    const leave = Math.min(to, walked + step);
    if (leave > enter && step > 0) {
      for (const at of [enter, leave]) out.push(between(a, b, (at - walked) / step));
    }
    walked += step;
  }
  return out;
}

const stepMm = (a: SheetPoint, b: SheetPoint): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
const between = (a: SheetPoint, b: SheetPoint, part: number): SheetPoint =>
  sheetPoint(a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part);
