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

function partySealed(worked: Worked): readonly TestStep[] {
  const subjects = openingsToSeal(worked).party.map(({ cause }) => cause);
  if (subjects.length === 0) return [];
  return [
    step(
      'seal-party-walls',
      'close',
      'Party wall: close the gaps round boxes, tube and cable through their whole depth with sealant that swells in a fire, to the rating of the wall; photograph it.',
      {
        hold: 'Closed, and no light or draught through it? Else it is not covered.',
        subjects,
        isFirst: true,
      },
    ),
  ];
}

function outsideSealed(worked: Worked): readonly TestStep[] {
  const subjects = openingsToSeal(worked).outside.map(({ cause }) => cause);
  if (subjects.length === 0) return [];
  return [
    step(
      'seal-outside',
      'close',
      'Holes to the outside: sleeved, falling outwards, weather sealant round and inside the sleeve at both ends.',
      { subjects, isFirst: true },
    ),
  ];
}

/** Cable that leaves a room by its floor, its ceiling or a wall within the house. */
function insideSealed(worked: Worked): readonly TestStep[] {
  const { runs, job } = worked;
  const sealed = new Set(openingsToSeal(worked).all.map(({ cause }) => cause));
  const subjects = runs
    .filter(
      (run) =>
        entersFloor(run) ||
        (!sealed.has(run.id) && run.segments.some(({ medium }) => medium === 'through-wall')),
    )
    .map(({ id }) => id);
  if (subjects.length === 0) return [];
  const parting = mayPartDwellings(job)
    ? ' A floor that may part dwellings is closed to its rating, and recorded.'
    : '';
  return [
    step(
      'seal-openings',
      'close',
      `Close the hole round each cable and tube where it goes through a floor, a ceiling or a wall, and the open end of each tube: fire, smoke and sound go where the cable does.${parting}`,
      { subjects, isFirst: true },
    ),
  ];
}
