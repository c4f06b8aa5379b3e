import type { Worked } from '../connections/worked.ts';

/** What of a scheme nobody has looked at: the survey's five usual gaps. */
export type OpenGap = 'circuits' | 'lengths' | 'ways' | 'boxes' | 'floors';

/** The gaps in words, as the price tells them. */
export const surveyGapWords: Readonly<Record<OpenGap, string>> = {
  circuits: 'A circuit is known by its label only',
  lengths: 'The length of a new cable is not known',
  ways: 'Half or more of the new cable’s way is assumed',
  boxes: 'The depth of a back box is not known',
  floors: 'Nobody has said whether a floor with cable under it lifts',
};

/** What each gap adds, and the most that is set aside by the survey, percent. */
const PERCENT_A_GAP = 5;
const MOST_PERCENT = 15;

/**
 * What is set aside for what may turn up, by how many gaps the survey has, percent: 0, 5, 10 or 15. Common practice, no
 * source: a default that the terms replace.
 */
export const contingencyPercentOf = (gaps: readonly OpenGap[]): number =>
  Math.min(MOST_PERCENT, PERCENT_A_GAP * gaps.length);

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

/** The gaps that the survey has for a scheme, in the order of the words. */
export function surveyGapsOf(worked: Worked): readonly OpenGap[] {
  const isOpen: Readonly<Record<OpenGap, boolean>> = {
    circuits: circuitsUnknown(worked),
    lengths: worked.runs.some((run) => run.lengthMm === null),
    ways: mostlyAssumed(worked),
    boxes: worked.things.boxes.some((box) => box.action === 'unknown'),
    floors: floorsUnknown(worked),
  };
  return (['circuits', 'lengths', 'ways', 'boxes', 'floors'] as const).filter((gap) => isOpen[gap]);
}
