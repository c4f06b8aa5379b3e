import type { Worked } from '#engine/connections/worked.ts';
import type { Point } from '#model/installation.ts';
import { listed } from '../written.ts';
import type { FirstTry } from './schemes.ts';

const names: Readonly<Record<FirstTry, string>> = {
  spurs: 'A spur for each, from the nearest point',
  'fused-branch': 'All behind one fused unit',
  ring: 'The ring carried out and back through all',
  radial: 'All on a new radial',
};

/** A spur cannot be said to begin at the nearest point where nobody knows where the points are. */
const SPURS_UNPLACED = 'A spur for each, from a point not used yet: how near is not known';

const isUnit = ({ kind }: Point): boolean => kind === 'fused-unit';

/** True where every wanted point has a place, and any point that it may be joined on at has. */
function nearnessIsKnown({ job, plan }: Worked): boolean {
  const isPlaced = ({ id }: Point): boolean => plan.positionOfPoint.has(id);
  const found = job.points.filter(({ status, circuit }) => status === 'existing' && circuit !== undefined);
  return job.points.every((point) => point.status !== 'wanted' || isPlaced(point)) && found.some(isPlaced);
}

/** What a first try does with the wanted points: fused units among them are joined each by a fused spur all the same. */
export function firstTryWords(worked: Worked, which: FirstTry): string {
  const words = which === 'spurs' && !nearnessIsKnown(worked) ? SPURS_UNPLACED : names[which];
  const wanted = worked.job.points.filter(({ status }) => status === 'wanted');
  const units = wanted.filter(isUnit).map(({ label }) => label);
  if (units.length === 0) return words;
  return `${words}; ${listed(units)} by a fused spur${units.length === 1 ? '' : ' each'}`;
}
