import type { TemplateResult } from 'lit';
import type { Plan } from '#engine/plan/plan.ts';
import { remembered } from '#engine/plan/remembered.ts';
import type { Wall } from '#model/building.ts';
import { setWallCores, setWallCoresCertainty } from '../../edits/survey.ts';
import type { JobView } from '../../job-view.ts';
import { choiceFact } from './fact-fields.ts';
import { wallCores } from './found-words.ts';
import { wallChoices } from './wall-choices.ts';

/** The names of walls by id: of each the first of its faces that looks into a room. */
export const wallNames = remembered((plan: Plan): ReadonlyMap<string, string> => {
  const names = new Map<string, string>();
  for (const { wallId, label } of wallChoices(plan)) if (!names.has(wallId)) names.set(wallId, label);
  return names;
});

/** What a wall is built of, and how sure that is; null for a wall that is not there any more. */
export function wallCoreField(
  { job, estimate }: Pick<JobView, 'job' | 'estimate'>,
  wallId: string,
): TemplateResult | null {
  const wall = job.storeys.flatMap(({ walls }) => walls).find(({ id }) => id === wallId);
  if (wall === undefined) return null;
  return choiceFact(
    {
      thing: wall,
      certainty: wall.certainty,
      set: (_: 'core', core: Wall['core'] | null) => setWallCores([wallId], core ?? wall.core),
      sure: (_: 'core', certainty) => setWallCoresCertainty([wallId], certainty),
    },
    'core',
    {
      label: wallNames(estimate.asFound.worked.plan).get(wallId) ?? 'A wall',
      options: wallCores,
      empty: 'Not known',
    },
  );
}
