import { connectionKindWords } from '#drawing/connection-kind-words.ts';
import { endWords } from '#drawing/end-words.ts';
import { connectedPoints } from '#drawing/label-of.ts';
import { pointKindWords } from '#drawing/point-kind-words.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { isSameData } from '#engine/plan/same-data.ts';
import { checklist, type Question } from '#engine/rules/checklist.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import type { Cable, End } from '#model/cable.ts';
import type { Place, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { cableWords } from '../elements/as-found/cable-choices.ts';
import { readingName } from '../elements/as-found/reading-words.ts';
import { wallChoices } from '../elements/as-found/wall-choices.ts';
import { placeInWords } from '../elements/plan/point-movement.ts';
import { dataDifferences } from './data-differences.ts';
import { type Difference, differenceWords, type Wording } from './difference-words.ts';

/** Fields that are told as one value, whatever they are made of. */
const wholeFields = new Set(['place', 'cable', 'from', 'to', 'via', 'runs', 'outline', 'at', 'address']);

/** The parts of a job that are no lists of things. */
const partNames: Readonly<Record<string, string>> = {
  site: 'House',
  supply: 'Supply',
  terms: 'Terms',
  actuals: 'What the job took',
};

/** Names of all things of two states of a job by id; what both have goes by its name here. */
function namesOf(mine: Job, theirs: Job): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const job of [theirs, mine]) {
    for (const { id, label } of [...job.points, ...job.boards]) names.set(id, label);
    for (const { id, name } of [...job.circuits, ...job.schemes, ...job.storeys]) names.set(id, name);
    for (const { name, rooms, walls } of job.storeys) {
      for (const room of rooms) names.set(room.id, room.name);
      for (const { id } of walls) names.set(id, `A wall, ${name.toLowerCase()}`);
    }
    nameJoined(job, names);
  }
  return names;
}

/** Names what goes by the names of others: legs, readings, connections. */
function nameJoined(job: Job, names: Map<string, string>): void {
  const labelOf = (id: string): string => names.get(id) ?? id;
  for (const { id, from, to } of job.legs)
    names.set(id, `Leg ${endWords(from, labelOf)}–${endWords(to, labelOf)}`);
  for (const reading of job.readings) names.set(reading.id, `Reading: ${readingName(reading, labelOf)}`);
  for (const connection of job.schemes.flatMap(({ connections }) => connections))
    names.set(connection.id, connectionName(connection, labelOf));
}

function connectionName(connection: Connection, labelOf: (id: string) => string): string {
  const points = connectedPoints(connection).map(labelOf).join(', ');
  return `${connectionKindWords[connection.kind]} ${points}`.trimEnd();
}

const questions: readonly Question[] = checklist;

/** The name of the thing that a path begins with. */
function thingAt(path: readonly string[], names: ReadonlyMap<string, string>): ReturnType<Wording['thing']> {
  const [part = '', key = '', inner = '', innerKey = ''] = path;
  const partName = partNames[part];
  if (partName !== undefined) return { name: partName, steps: 1 };
  if (path.length < 2) return { name: 'Job', steps: 0 };
  if (part === 'answers') return { name: questions.find(({ id }) => id === key)?.words ?? key, steps: 2 };
  if (part === 'packFor') return { name: 'What is bought in case', steps: path.length };
  if (part === 'stock')
    return { name: `In stock: ${knownItems.find(({ id }) => id === key)?.description ?? key}`, steps: 2 };
  const name = names.get(key) ?? key;
  // A thing within a thing: a wall of a storey, a connection of a scheme.
  const innerName = names.get(innerKey);
  if (innerName === undefined || (inner !== 'connections' && inner !== 'rooms' && inner !== 'walls'))
    return { name, steps: 2 };
  return inner === 'connections'
    ? { name: `${name}: ${innerName}`, steps: 4 }
    : { name: innerName, steps: 4 };
}

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

function valueWording(mine: Job, theirs: Job, names: ReadonlyMap<string, string>): Wording['value'] {
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

/**
 * What differs between a job as it was changed here and as somebody else saved it, thing by thing and field by field.
 *
 * @param base what both began with: it tells whose each change is.
 */
export function jobDifferences(mine: Job, theirs: Job, base: Job): readonly Difference[] {
  const names = namesOf(mine, theirs);
  const wording: Wording = {
    thing: (path) => thingAt(path, names),
    value: valueWording(mine, theirs, names),
  };
  const isWhole = (path: readonly string[]): boolean => path.length > 1 && wholeFields.has(path.at(-1) ?? '');
  return dataDifferences({ mine, theirs, base }, isWhole).map((one) => {
    const changed = { here: !isSameData(one.mine, one.base), there: !isSameData(one.theirs, one.base) };
    const by = changed.here && changed.there ? 'both' : changed.here ? 'me' : 'them';
    return differenceWords(one, by, wording);
  });
}
