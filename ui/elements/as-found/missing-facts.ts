import type { SurveyAsk } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import { type FoundSection, sectionOfThing } from './section-of-thing.ts';

/** What nobody has told yet, by its short name, in the part of the survey that its thing is told in; a view of the survey's list. */
export function missingFacts(
  job: Job,
  asks: readonly SurveyAsk[],
): ReadonlyMap<FoundSection, readonly string[]> {
  const missing = new Map<FoundSection, readonly string[]>();
  for (const { fields, short, state } of asks) {
    if (state !== 'open' && state !== 'put-off') continue;
    const sections = fields
      .filter((field) => field.state === 'open')
      .flatMap(({ subjectId }) => sectionOfThing(job, subjectId) ?? []);
    for (const section of new Set(sections)) missing.set(section, [...(missing.get(section) ?? []), short]);
  }
  return missing;
}

/** Few words for what is missing: the first ones by name, the others counted; empty where nothing is. */
export function missingWords(missing: readonly string[]): string {
  const named = missing.slice(0, missing.length > 3 ? 2 : 3);
  const others = missing.length - named.length;
  return [...named, ...(others > 0 ? [`${others} more`] : [])].join(', ');
}
