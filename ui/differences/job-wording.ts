import { endWords } from '#drawing/end-words.ts';
import { pointKindWords } from '#drawing/point-kind-words.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { checklist, type Question } from '#engine/rules/checklist.ts';
import type { Cable, End } from '#model/cable.ts';
import type { Place, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { cableWords } from '../elements/as-found/cable-choices.ts';
import { wallChoices } from '../elements/as-found/wall-choices.ts';
import { placeInWords } from '../elements/plan/point-movement.ts';
import type { Wording } from './difference-words.ts';
import { namesOf, type ThingNames, thingAt } from './thing-names.ts';

const questions: readonly Question[] = checklist;

const statusWords: Readonly<Record<Point['status'], string>> = {
  existing: 'found',
  wanted: 'wanted',
  removed: 'to be removed',
  replaced: 'to be replaced',
};

/** Where something is: "Living room, wall to the hall, 1080 mm from the left corner, …". */
function placeWordsIn(job: Job): (place: Place) => string {
  const plan = buildPlan(job);
  const faces = wallChoices(plan);
  return (place) => {
    const label =
      'wall' in place
        ? faces.find(({ wallId, side }) => wallId === place.wall && side === place.side)?.label
        : plan.storeyById.get(place.storey)?.storey.name;
    const on = 'wall' in place ? '' : `, at ${place.at.join(', ')} mm`;
    return [label, `${placeInWords(plan, place)}${on}`].filter((part) => part !== undefined).join(', ');
  };
}

function valueWording(mine: Job, theirs: Job, names: ThingNames): Wording['value'] {
  const placeWords = { mine: placeWordsIn(mine), theirs: placeWordsIn(theirs) };
  const labelOf = (id: string): string => names.get(id) ?? id;
  return (path, value, whose) => {
    const [field = '', within] = [...path].reverse();
    if (within === 'certainty') return value === undefined ? 'seen' : null;
    if (value === undefined) return null;
    // What the reader has read has the type that its field has.
    if (field === 'place') return placeWords[whose](value as Place);
    if (field === 'cable') return cableWords(value as Cable);
    if ((field === 'from' || field === 'to') && path[0] === 'legs') return endWords(value as End, labelOf);
    if (field === 'kind' && path[0] === 'points') return pointKindWords[value as Point['kind']];
    if (field === 'status' && path[0] === 'points') return statusWords[value as Point['status']];
    if (field === 'value' && path[0] === 'answers') {
      const question = questions.find(({ id }) => id === path[1]);
      return question?.answers.find((answer) => answer.value === value)?.words ?? null;
    }
    if (field === 'address' && Array.isArray(value)) return value.join(', ') || null;
    return typeof value === 'string' ? (names.get(value) ?? null) : null;
  };
}

/** How the words of two states of a job are found: things by their names, values as the screen writes them. */
export function jobWording(mine: Job, theirs: Job): Wording {
  const names = namesOf(mine, theirs);
  return { thing: (path) => thingAt(path, names), value: valueWording(mine, theirs, names) };
}
