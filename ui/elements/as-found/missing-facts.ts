import { bondsNotTold } from '#engine/rules/bonds.ts';
import { checklist } from '#engine/rules/checklist.ts';
import type { Circuit, Supply } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { type Conductor, endToEnd } from '../../edits/readings.ts';
import { counted } from '../../written.ts';
import type { FoundSection } from './section-of-thing.ts';

/** What is not known yet, in a few words each, by the part of the survey that asks for it. */
export type MissingFacts = Readonly<Record<FoundSection, readonly string[]>>;

const supplyNames = {
  earthing: 'earthing',
  mainFuseA: 'main fuse',
  zeOhm: 'Ze',
  pfcKA: 'fault current',
  tailsMm2: 'tails',
  earthingMm2: 'earthing conductor',
} as const satisfies Partial<Record<keyof Supply, string>>;

const conductorNames: readonly (readonly [Conductor, string])[] = [
  ['L', 'r1'],
  ['N', 'rn'],
  ['cpc', 'r2'],
];

/** "2 places", "1 device"; nothing of none. */
const some = (count: number, one: string, many?: string): readonly string[] =>
  count === 0 ? [] : [counted(count, one, many)];

/** All bonds in a word where nothing is told of any, else those of which nothing is. */
function missingBonds(supply: Supply): readonly string[] {
  const isBare = supply.bonding.length === 0 && (supply.absentServices ?? []).length === 0;
  return isBare ? ['main bonds'] : bondsNotTold(supply).map((service) => `bond to ${service}`);
}

/** The supply's facts that are not given, or of which somebody said that they are not known. */
function missingOfSupply({ supply, boards }: Job): readonly string[] {
  const names = Object.entries(supplyNames);
  const open = names.filter(
    ([fact]) => !Object.hasOwn(supply, fact) || supply.certainty?.[fact] === 'unknown',
  );
  return [
    ...open.map(([, name]) => name),
    ...missingBonds(supply),
    ...(supply.certainty?.otherSources === 'unknown' ? ['other sources'] : []),
    ...some(boards.filter(({ place }) => place === undefined).length, 'place of a board', 'places of boards'),
    ...(boards.some(({ spareWays }) => spareWays === undefined) ? ['spare ways'] : []),
  ];
}

/** Storeys without a wall, and walls of which only is assumed what they are built of. */
function missingOfRooms({ storeys }: Job): readonly string[] {
  const bare = storeys.filter(({ walls }) => walls.length === 0).length;
  const walls = storeys.flatMap((storey) => storey.walls);
  if (walls.length === 0) return ['walls'];
  const assumed = walls.filter(
    ({ core, certainty }) => core !== 'open' && certainty?.core === 'assumed',
  ).length;
  return [
    ...some(bare, 'storey without walls', 'storeys without walls'),
    ...some(assumed, 'wall’s build', 'walls’ build'),
  ];
}

function missingOfHouse({ site }: Job): readonly string[] {
  return [
    ...(site.customer === '' ? ['customer'] : []),
    ...(site.address.length === 0 ? ['address'] : []),
    ...(site.builtBefore2000 === undefined ? ['age of the house'] : []),
  ];
}

/** Rings whose conductors were not all read from end to end. */
function missingOfReadings({ circuits, readings }: Job): readonly string[] {
  const unread = ({ id }: Circuit): readonly string[] =>
    conductorNames.flatMap(([conductor, name]) => (endToEnd(readings, id, conductor) === null ? [name] : []));
  const names = circuits.filter(({ shape }) => shape === 'ring').flatMap(unread);
  return conductorNames.flatMap(([, name]) => (names.includes(name) ? [name] : []));
}

/** All that the survey asks for and does not have, part by part. */
export function missingFacts(job: Job): MissingFacts {
  const found = job.points.filter(({ status }) => status !== 'wanted');
  const { circuits, legs, answers } = job;
  const answered = new Set(answers.filter(({ value }) => value !== null).map(({ question }) => question));
  return {
    house: missingOfHouse(job),
    rooms: missingOfRooms(job),
    supply: missingOfSupply(job),
    circuits: [
      ...some(circuits.filter(({ device }) => device === undefined).length, 'device'),
      ...some(circuits.filter(({ shape }) => shape === undefined).length, 'shape'),
    ],
    points: [
      ...some(found.filter(({ place }) => place === undefined).length, 'place'),
      ...some(found.filter(({ circuit }) => circuit === undefined).length, 'circuit'),
    ],
    cables: [
      ...some(
        circuits.filter(({ id }) => !legs.some(({ circuit }) => circuit === id)).length,
        'circuit without cables',
        'circuits without cables',
      ),
      ...some(legs.filter(({ cable }) => cable === undefined).length, 'size'),
    ],
    readings: missingOfReadings(job),
    questions: some(checklist.filter(({ id }) => !answered.has(id)).length, 'answer'),
  };
}

/** Few words for what is missing: the first ones by name, the others counted; empty where nothing is. */
export function missingWords(missing: readonly string[]): string {
  const named = missing.slice(0, missing.length > 3 ? 2 : 3);
  const others = missing.length - named.length;
  return [...named, ...(others > 0 ? [`${others} more`] : [])].join(', ');
}
