import { connectionKindWords } from '#drawing/connection-kind-words.ts';
import { endWords } from '#drawing/end-words.ts';
import { connectedPoints, remedyWords } from '#drawing/label-of.ts';
import { checklist, type Question } from '#engine/rules/checklist.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import type { Fixture, Opening, Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { readingName } from '../elements/as-found/reading-words.ts';
import type { Wording } from './difference-words.ts';

/** Names of things by id. */
export type ThingNames = ReadonlyMap<string, string>;

/** The parts of a job that are no lists of things. */
const partNames: Readonly<Record<string, string>> = {
  site: 'House',
  supply: 'Supply',
  terms: 'Terms',
  quoting: 'Quotation',
  actuals: 'What the job took',
  built: 'The work as done',
  testing: 'What it was tested with',
};

const openingWords: Readonly<Record<Opening['kind'], string>> = {
  door: 'Door',
  window: 'Window',
  opening: 'Opening',
  breast: 'Chimney breast',
};

/** A fixture as people call it: "Gas meter". */
const fixtureWords = ({ kind }: Fixture): string =>
  `${kind.charAt(0).toUpperCase()}${kind.slice(1).replaceAll('-', ' ')}`;

function nameDrawn({ name, rooms, walls, fixtures }: Storey, names: Map<string, string>): void {
  const storey = name.toLowerCase();
  for (const room of rooms) names.set(room.id, room.name);
  for (const { id, openings } of walls) {
    const beside = rooms
      .filter((room) => room.walls.some(({ wall }) => wall === id))
      .map((room) => room.name);
    const where = beside.length === 0 ? storey : beside.join(' and ');
    names.set(id, beside.length === 0 ? `A wall, ${storey}` : `Wall of ${where}`);
    for (const opening of openings) names.set(opening.id, `${openingWords[opening.kind]}, ${where}`);
  }
  for (const fixture of fixtures) names.set(fixture.id, `${fixtureWords(fixture)}, ${storey}`);
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

/** Names of all things of two states of a job by id; what both have goes by its name here. */
export function namesOf(mine: Job, theirs: Job): ThingNames {
  const names = new Map<string, string>();
  for (const job of [theirs, mine]) {
    for (const { id, label } of [...job.points, ...job.boards]) names.set(id, label);
    for (const { id, name } of [...job.circuits, ...job.schemes, ...job.storeys, ...job.assets])
      names.set(id, name);
    for (const { label, rcds } of job.boards)
      for (const { id, mA } of rcds) names.set(id, `${label}: RCD, ${mA} mA`);
    for (const { id, words } of job.extras ?? []) names.set(id, `Not on the drawing: ${words}`);
    for (const storey of job.storeys) nameDrawn(storey, names);
    nameJoined(job, names);
  }
  return names;
}

const questions: readonly Question[] = checklist;

/** A remedy by what it is known by: its kind and what it is done to. */
function remedyName(key: string, names: ThingNames): string {
  const [kind = '', at = ''] = key.split(' ');
  const words = remedyWords[kind as Remedy['kind']] ?? kind;
  return at === '' ? words : `${words}, ${names.get(at) ?? at}`;
}

/** Lists within a thing whose things go by names of their own. */
const ownNames: ReadonlySet<string> = new Set(['rooms', 'walls', 'fixtures', 'rcds']);

/** A thing within a thing: a wall of a storey, a connection of a scheme; null where the path leads to none. */
function innerThing(path: readonly string[], names: ThingNames): ReturnType<Wording['thing']> | null {
  const [, key = '', inner = '', innerKey = '', deeper, deeperKey = ''] = path;
  const opening = deeper === 'openings' ? names.get(deeperKey) : undefined;
  if (opening !== undefined) return { name: opening, steps: 6 };
  if (inner === 'remedies' && innerKey !== '')
    return { name: `${names.get(key) ?? key}: ${remedyName(innerKey, names)}`, steps: 4 };
  const name = names.get(innerKey);
  if (name === undefined) return null;
  if (inner === 'connections') return { name: `${names.get(key) ?? key}: ${name}`, steps: 4 };
  return ownNames.has(inner) ? { name, steps: 4 } : null;
}

/** The name of the thing that a path begins with, and how many steps of the path name it. */
export function thingAt(path: readonly string[], names: ThingNames): ReturnType<Wording['thing']> {
  const [part = '', key = ''] = path;
  const partName = partNames[part];
  if (partName !== undefined) return { name: partName, steps: 1 };
  if (path.length < 2) return { name: 'Job', steps: 0 };
  if (part === 'answers') return { name: questions.find(({ id }) => id === key)?.words ?? key, steps: 2 };
  if (part === 'done') return { name: 'Tasks ticked', steps: path.length };
  if (part === 'packFor') return { name: 'What is bought in case', steps: path.length };
  if (part === 'stock')
    return { name: `In stock: ${knownItems.find(({ id }) => id === key)?.description ?? key}`, steps: 2 };
  return innerThing(path, names) ?? { name: names.get(key) ?? key, steps: 2 };
}
