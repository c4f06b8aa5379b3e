import type { Worked } from '../connections/worked.ts';
import { asbestosIsOpen } from '../rules/asbestos.ts';
import type { Ask } from './ask.ts';
import { checklistAsk } from './checklist-ask.ts';
import { askOf, fieldOf } from './fields.ts';

/** What money hangs on a word that work waits for. */
const ONLY_BEGINS = 'It moves nothing in the price, only whether work may begin.';

/** What is told on the way in: how old the house is, whose it is, where one parks. */
export function outsideAsks({ job }: Worked): readonly Ask[] {
  const { site } = job;
  const age = askOf({
    id: 'house-age',
    short: 'age of the house',
    words: 'Ask when the house was built: before 2000?',
    why: 'Until then asbestos was used in coatings, boards and tiles: where one drills it has to be looked for.',
    source: 'Control of Asbestos Regulations 2012, 5',
    stage: 'outside',
    when: 'visit',
    fields: [fieldOf('site', site, 'builtBefore2000')],
    rules: ['SC3'],
    ...(asbestosIsOpen(job) ? { closing: { settles: ['asbestos'] } } : {}),
  });
  const tenure = askOf({
    id: 'tenure',
    short: 'owner',
    words: 'Ask who owns the home',
    why: 'Who does not own it needs the owner’s word before walls are cut.',
    money: ONLY_BEGINS,
    source: null,
    stage: 'outside',
    when: 'visit',
    fields: [fieldOf('site', site, 'tenure')],
    rules: ['PR4'],
  });
  const isOwned = site.tenure === 'owner' && tenure.subjects.length === 0;
  return [
    age,
    tenure,
    ...(isOwned
      ? []
      : [
          checklistAsk(job, 'consent', {
            stage: 'outside',
            rules: ['PR4'],
            why: 'Work on a home that is rented or leased waits for it.',
            money: ONLY_BEGINS,
          }),
        ]),
    checklistAsk(job, 'parking-at-the-house', {
      stage: 'outside',
      rules: [],
      why: 'The customer’s paper says whether parking is in the price.',
    }),
  ];
}
