import type { End } from '#model/cable.ts';
import type { Circuit, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Choice } from '../fields/choice-field.ts';

/** A cable's end as one may choose it. */
export interface EndChoice extends Choice {
  readonly end: End;
}

/** An end as one word, for a list. */
export const endValue = (end: End): string =>
  'point' in end ? `point/${end.point}/${end.side ?? ''}` : `origin/${end.origin}/${end.end ?? ''}`;

function pointEnds({ id, label, kind }: Point): readonly EndChoice[] {
  const ends: readonly (readonly [End, string])[] = [
    [{ point: id }, label],
    ...(kind === 'fused-unit'
      ? ([
          [{ point: id, side: 'supply' }, `${label}, supply side`],
          [{ point: id, side: 'load' }, `${label}, load side`],
        ] as const)
      : []),
  ];
  return ends.map(([end, words]) => ({ value: endValue(end), label: words, end }));
}

function originEnds({ id, shape }: Circuit): readonly EndChoice[] {
  const plain = { end: { origin: id }, label: 'Board' };
  const ends: readonly { readonly end: End; readonly label: string }[] =
    shape === 'radial'
      ? [plain]
      : [
          { end: { origin: id, end: 'A' }, label: 'Board, end A' },
          { end: { origin: id, end: 'B' }, label: 'Board, end B' },
          plain,
        ];
  return ends.map(({ end, label }) => ({ value: endValue(end), label, end }));
}

/** The points that were found, those of a circuit first, each by label. */
export function foundPoints({ points }: Pick<Job, 'points'>, circuitId: string): readonly Point[] {
  const isOther = (point: Point): number => (point.circuit === circuitId ? 0 : 1);
  return points
    .filter(({ status }) => status !== 'wanted')
    .toSorted((a, b) => isOther(a) - isOther(b) || a.label.localeCompare(b.label, 'en', { numeric: true }));
}

/**
 * Where a cable of a circuit can end: at the board, or at a point that was found.
 *
 * @param now an end that is recorded already stays in the list whatever it is.
 */
export function endChoices(job: Job, circuitId: string, now: End | null): readonly EndChoice[] {
  const circuit = job.circuits.find(({ id }) => id === circuitId);
  const found = [
    ...(circuit === undefined ? [] : originEnds(circuit)),
    ...foundPoints(job, circuitId).flatMap(pointEnds),
  ];
  if (now === null || found.some(({ value }) => value === endValue(now))) return found;
  const label =
    'point' in now
      ? (job.points.find(({ id }) => id === now.point)?.label ?? now.point)
      : `Board, ${job.circuits.find(({ id }) => id === now.origin)?.name ?? now.origin}`;
  return [{ value: endValue(now), label, end: now }, ...found];
}
