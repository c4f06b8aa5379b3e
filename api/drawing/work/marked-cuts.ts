import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { referencesOf } from '#engine/work/references.ts';
import { type Cut, type CutList, cutListsOf } from '../shopping/cut-lists.ts';

/** How the lengths of a cut list are to be read. */
export const CUTS_SAID =
  'Lengths have ends, slack and waste in them, so they are longer than the cables on the plan. Measure on site before you cut.';

/** The cut lists of a scheme with the marks that all papers of the work name cables by before the names of their ends. */
export function markedCuts(scheme: SchemeEstimate): readonly CutList[] {
  const { cables } = referencesOf(scheme.worked);
  const markOf = new Map(cables.map(({ id, mark }) => [id, mark]));
  const marked = (cut: Cut): Cut => {
    const mark = markOf.get(cut.cause);
    return mark === undefined ? cut : { ...cut, label: `${mark} ${cut.label}` };
  };
  return cutListsOf(scheme).map((list) => ({
    ...list,
    bars: list.bars.map((bar) => ({ ...bar, cuts: bar.cuts.map(marked) })),
    without: list.without.map(marked),
  }));
}
