import type { Worked } from '../connections/worked.ts';

/** How much of a scheme rests on what nobody has looked at: nothing, little, some, much. */
export type SurveyOpenness = 'closed' | 'slightly-open' | 'open' | 'wide-open';

/**
 * What is set aside for what may turn up, by how open the survey is, percent. Common practice, no source:
 * a default that the terms replace.
 */
export const contingencyPercentOf: Readonly<Record<SurveyOpenness, number>> = {
  closed: 0,
  'slightly-open': 5,
  open: 10,
  'wide-open': 15,
};

const voids: readonly string[] = ['void-along', 'void-across', 'void-open'];

/** Half or more of the new cable's way is assumed. */
function mostlyAssumed(worked: Worked): boolean {
  let assumedMm = 0;
  let totalMm = 0;
  for (const segment of worked.runs.flatMap((run) => run.segments)) {
    totalMm += segment.lengthMm;
    if (segment.certainty === 'assumed') assumedMm += segment.lengthMm;
  }
  return totalMm > 0 && 2 * assumedMm >= totalMm;
}

/** A new cable lies under a floor of which nobody has said whether it lifts. */
function floorsUnknown(worked: Worked): boolean {
  return worked.runs.some((run) =>
    run.segments.some(
      ({ medium, storeyId }) =>
        voids.includes(medium) && worked.plan.storeyById.get(storeyId)?.storey.floor.liftable === undefined,
    ),
  );
}

/** A circuit that the scheme touches is known by its label only. */
function circuitsUnknown(worked: Worked): boolean {
  return worked.circuitIds.some((id) => {
    const evidence = worked.foundShapes.get(id)?.evidence;
    return evidence === 'claimed' || evidence === 'none';
  });
}

/** How open the survey is for a scheme: by how many of its five usual gaps there are. */
export function surveyOpenness(worked: Worked): SurveyOpenness {
  const gaps = [
    circuitsUnknown(worked),
    worked.runs.some((run) => run.lengthMm === null),
    mostlyAssumed(worked),
    worked.things.boxes.some((box) => box.action === 'unknown'),
    floorsUnknown(worked),
  ].filter((gap) => gap).length;
  if (gaps === 0) return 'closed';
  if (gaps === 1) return 'slightly-open';
  return gaps === 2 ? 'open' : 'wide-open';
}
