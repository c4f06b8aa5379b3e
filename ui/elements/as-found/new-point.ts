import type { Job } from '#model/job.ts';
import { nextLabel } from '../../edits/next-label.ts';
import type { NewPoint } from '../../edits/points.ts';

/** A point that was found, as it begins: a twin socket-outlet, of the house's circuit where there is but one. */
export function newPoint({ points, circuits }: Job, id: string): NewPoint {
  const point = { id, label: nextLabel(points, false), status: 'existing', kind: 'socket-twin' } as const;
  const [circuit] = circuits;
  return circuits.length === 1 && circuit !== undefined ? { ...point, circuit: circuit.id } : point;
}
