import type { Worked } from '../connections/worked.ts';
import { isGuess } from '../plan/is-guess.ts';

const inWall: readonly string[] = ['wall-chase', 'stud-cavity', 'surface-channel'];

/** The walls that a scheme's new cables lie in or on, or that its boxes go into, sorted. */
export function wallsWorkedAt({ runs, things, plan }: Worked): readonly string[] {
  const laid = runs.flatMap(({ segments }) =>
    segments.flatMap(({ wallId, medium }) => (wallId !== null && inWall.includes(medium) ? [wallId] : [])),
  );
  const boxed = things.boxes
    .filter(({ action, build }) => action !== 'keep' && build !== 'surface')
    .flatMap(({ id, pointId }) => plan.positionOfPoint.get(pointId ?? id)?.onWall?.wallId ?? []);
  return [...new Set([...laid, ...boxed])].sort();
}

/** Those of them of which only is assumed what they are built of, sorted. */
export function wallsToSettle(worked: Worked): readonly string[] {
  const guessed = new Set(
    worked.job.storeys.flatMap(({ walls }) =>
      walls.filter(({ certainty }) => isGuess(certainty?.core)).map(({ id }) => id),
    ),
  );
  return wallsWorkedAt(worked).filter((id) => guessed.has(id));
}
