import { bondsNotTold } from '#engine/rules/bonds.ts';
import { serviceWords } from '#engine/rules/fitted-devices.ts';
import type { Supply } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { earthings } from './found-words.ts';

/** Something that is not known and that checks wait for, whatever it is worth in the price. */
export interface OtherQuestion {
  readonly words: string;
  readonly subjectId: string;
  /** The field that answers it. */
  readonly fact: string;
}

function earthingWords({ earthing, certainty }: Supply): string | null {
  if (earthing === undefined || certainty?.earthing === 'unknown')
    return 'Look at the intake: what kind of earthing is it?';
  const label = earthings.find(({ value }) => value === earthing)?.label ?? earthing;
  return certainty?.earthing === 'assumed'
    ? `Look at the intake: the earthing is assumed to be ${label}`
    : null;
}

function sourcesWords({ otherSources, certainty }: Supply): string | null {
  if (certainty?.otherSources === 'unknown')
    return 'Ask, and look at the intake: solar panels, a battery, a vehicle charger?';
  return certainty?.otherSources === 'assumed' && otherSources.length === 0
    ? 'Look at the intake: that there are no solar panels, battery or charger is assumed'
    : null;
}

/** What checks of the supply wait for, in the order in which it is met at the intake. */
export function otherQuestions({ supply }: Pick<Job, 'supply'>): readonly OtherQuestion[] {
  const asked = (words: string | null, fact: string): readonly OtherQuestion[] =>
    words === null ? [] : [{ words, subjectId: 'supply', fact }];
  return [
    ...asked(earthingWords(supply), 'earthing'),
    ...asked(sourcesWords(supply), 'otherSources'),
    ...bondsNotTold(supply).flatMap((service) =>
      asked(`Look for the main bond to ${serviceWords(service)}`, `bond-${service}`),
    ),
  ];
}
