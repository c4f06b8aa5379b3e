import type { Job } from '#model/job.ts';
import { frameDepthMm } from '../connections/box-depth.ts';
import type { BackBox } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import type { PricedBefore } from './consequences.ts';
import { grossPenceAt } from './price-worked.ts';
import { sameHouse, workScheme } from './work-scheme.ts';

/** A box found too shallow, and what its other remedy would be: a spacer frame over it, or a deeper box. */
export interface ShallowBox {
  readonly pointId: string;
  readonly foundMm: number;
  /** What the accessory and its cables want. */
  readonly wantedMm: number;
  /** The frame that would do, or does. */
  readonly frameMm: number;
  readonly isFramed: boolean;
  /** What the scheme would cost more with the other remedy, VAT included. */
  readonly otherPence: number;
}

/**
 * The boxes found too shallow that a spacer frame would make deep enough, sorted by point, each worked and priced whole with
 * its other remedy. Boxes that something else is wrong with, or that no frame is deep enough for, are not among them.
 */
export function shallowBoxes(before: PricedBefore & { readonly worked: Worked }): readonly ShallowBox[] {
  return before.worked.things.boxes.flatMap((box) => shallowBox(before, box) ?? []);
}

function shallowBox(
  { house, scheme, worked, library, ...before }: PricedBefore & { readonly worked: Worked },
  { pointId, action, cause, frameMm, foundDepthMm: foundMm, minimumDepthMm: wantedMm }: BackBox,
): ShallowBox | null {
  const lacksDepth = cause === 'third-cable' || cause === 'too-shallow';
  if (pointId === null || foundMm === null || !lacksDepth) return null;
  const wouldDoMm = frameMm ?? frameDepthMm(foundMm, wantedMm);
  if (foundMm + wouldDoMm < wantedMm) return null;
  const isFramed = action === 'frame';
  const other = workScheme(sameHouse(house, withFrame(worked.job, pointId, !isFramed)), scheme, before.runs);
  return {
    ...{ pointId, foundMm, wantedMm, isFramed },
    frameMm: wouldDoMm,
    otherPence: grossPenceAt(other, library, before.contingencyPercent) - before.grossPence,
  };
}

/** The job with a spacer frame decided on at a point, and at the one whose place it takes; or with none. */
function withFrame(job: Job, pointId: string, isFramed: boolean): Job {
  const replaces = job.points.find(({ id }) => id === pointId)?.replaces;
  return {
    ...job,
    points: job.points.map((point) => {
      if (point.id !== pointId && point.id !== replaces) return point;
      const { shallowBox: _, ...rest } = point;
      return isFramed ? { ...rest, shallowBox: 'frame' } : rest;
    }),
  };
}
