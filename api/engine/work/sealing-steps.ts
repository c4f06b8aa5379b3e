import type { Worked } from '../connections/worked.ts';
import { entersFloor, mayPartDwellings } from '../rules/fire-stopping.ts';
import { openingsToSeal } from '../takeoff/sealant-lines.ts';
import { step, type TestStep } from './test-step.ts';

/**
 * What is closed again where cable, tube and boxes go through: party walls, the outside, then floors, ceilings and walls within the house.
 * The sealant that the kit has for it is counted by the same openings. Source: BS 7671 527.2 (openings that remain are sealed).
 */
export const sealingSteps = (worked: Worked): readonly TestStep[] => [
  ...partySealed(worked),
  ...outsideSealed(worked),
  ...insideSealed(worked),
];

/** A step at closing up that is about the places where something is sealed; none where there is none. */
const sealed = (
  id: string,
  words: string,
  subjects: readonly string[],
  hold: string | null = null,
): readonly TestStep[] =>
  subjects.length === 0 ? [] : [step(id, 'close', words, { hold, subjects, isFirst: true })];

const partySealed = (worked: Worked): readonly TestStep[] =>
  sealed(
    'seal-party-walls',
    'Party wall: close the gaps round boxes, tube and cable through their whole depth with sealant that swells in a fire, to the rating of the wall; photograph it.',
    openingsToSeal(worked).party.map(({ cause }) => cause),
    'Closed, and no light or draught through it? Else it is not covered.',
  );

const outsideSealed = (worked: Worked): readonly TestStep[] =>
  sealed(
    'seal-outside',
    'Holes to the outside: sleeved, falling outwards, weather sealant round and inside the sleeve at both ends.',
    openingsToSeal(worked).outside.map(({ cause }) => cause),
  );

/** Cable that leaves a room by its floor, its ceiling or a wall within the house. */
function insideSealed(worked: Worked): readonly TestStep[] {
  const { runs, job } = worked;
  const elsewhere = new Set(openingsToSeal(worked).all.map(({ cause }) => cause));
  const subjects = runs
    .filter(
      (run) =>
        entersFloor(run) ||
        (!elsewhere.has(run.id) && run.segments.some(({ medium }) => medium === 'through-wall')),
    )
    .map(({ id }) => id);
  const parting = mayPartDwellings(job)
    ? ' A floor that may part dwellings is closed to its rating, and recorded.'
    : '';
  return sealed(
    'seal-openings',
    `Close the hole round each cable and tube where it goes through a floor, a ceiling or a wall, and the open end of each tube: fire, smoke and sound go where the cable does.${parting}`,
    subjects,
  );
}
