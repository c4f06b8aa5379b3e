import type { Norms } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';

/** What of a scheme nobody has looked at that its quantities hang on. */
type CountedGap = 'circuits' | 'lengths' | 'ways' | 'boxes' | 'floors';

/** What of a scheme nobody has looked at and may make it dearer: its quantities, or what would have to be fitted or done besides. */
export type OpenGap = CountedGap | 'walls' | 'bonds' | 'rcds' | 'rcbos' | 'spare-ways' | 'surge' | 'asbestos';

/** The order in which gaps are told. */
export const gapOrder = [
  ...(['circuits', 'lengths', 'ways', 'boxes', 'floors'] as const),
  ...(['walls', 'bonds', 'rcds', 'rcbos', 'spare-ways', 'surge', 'asbestos'] as const),
] satisfies readonly OpenGap[];

/** The gaps in words, as the price tells them. */
export const surveyGapWords: Readonly<Record<OpenGap, string>> = {
  circuits: 'A circuit is known by its label only',
  lengths: 'The length of a new cable is not known',
  ways: 'Half or more of the new cable’s way is assumed',
  boxes: 'The depth of a back box is not known',
  floors: 'Nobody has said whether a floor with cable under it lifts',
  walls: 'Nobody has said what a wall is built of that cable or boxes go into',
  bonds: 'A main bond, or its size, has not been seen',
  rcds: 'Nobody knows whether a circuit is behind an RCD',
  rcbos: 'Nobody knows whether an RCBO is sold for the board',
  'spare-ways': 'The spare ways of a board have not been counted',
  surge: 'Nobody has asked whether surge protection is wanted on the new board',
  asbestos: 'Nobody has looked for asbestos',
};

/** What each gap adds, and the most that is set aside by the survey, percent. From memory: the firm may have its own. */
export const usualGapPercents = { gapPercent: 5, mostGapsPercent: 15 } as const;

/** What is set aside for what may turn up, by how many gaps the survey has, percent: a default that the terms replace. */
export function contingencyPercentOf(
  gaps: readonly OpenGap[],
  { counts = {} }: Pick<Norms, 'counts'>,
): number {
  const each = counts.gapPercent ?? usualGapPercents.gapPercent;
  return Math.min(counts.mostGapsPercent ?? usualGapPercents.mostGapsPercent, each * gaps.length);
}

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

/** The gaps that the survey has for a scheme's quantities, in the order of the words. */
export function surveyGapsOf(worked: Worked): readonly CountedGap[] {
  const isOpen: Readonly<Record<CountedGap, boolean>> = {
    circuits: circuitsUnknown(worked),
    lengths: worked.runs.some((run) => run.lengthMm === null),
    ways: mostlyAssumed(worked),
    boxes: worked.things.boxes.some((box) => box.action === 'unknown'),
    floors: floorsUnknown(worked),
  };
  return (['circuits', 'lengths', 'ways', 'boxes', 'floors'] as const).filter((gap) => isOpen[gap]);
}
