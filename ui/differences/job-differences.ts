import { isSameData } from '#engine/plan/same-data.ts';
import type { Job } from '#model/job.ts';
import { dataDifferences } from './data-differences.ts';
import { type Difference, differenceWords } from './difference-words.ts';
import { jobWording } from './job-wording.ts';

/** Fields that are told as one value, whatever they are made of. */
const wholeFields = new Set(['place', 'cable', 'from', 'to', 'via', 'runs', 'outline', 'at', 'address']);

/**
 * What differs between a job as it was changed here and as somebody else saved it, thing by thing and field by field.
 *
 * @param base what both began with: it tells whose each change is.
 */
export function jobDifferences(mine: Job, theirs: Job, base: Job): readonly Difference[] {
  const wording = jobWording(mine, theirs);
  const isWhole = (path: readonly string[]): boolean => path.length > 1 && wholeFields.has(path.at(-1) ?? '');
  return dataDifferences({ mine, theirs, base }, isWhole).map((one) => {
    const changed = { here: !isSameData(one.mine, one.base), there: !isSameData(one.theirs, one.base) };
    const by = changed.here && changed.there ? 'both' : changed.here ? 'me' : 'them';
    return differenceWords(one, by, wording);
  });
}
