import type { Job } from '#model/job.ts';
import type { Connection, Remedy, Scheme } from '#model/scheme.ts';
import type { JobChange } from '../job-events.ts';

/** What a scheme is called that joins nothing. */
const BLANK_NAME = 'Nothing joined yet';

interface WayWords {
  readonly is: (connection: Connection) => boolean;
  readonly one: string;
  readonly many: string;
}

const isOpening = (way: Connection): boolean => way.kind === 'ring-extension';

/** What kinds of way a scheme can be made of, one and several, in the order in which a name tells them. */
const ways: readonly WayWords[] = [
  { is: (way) => way.kind === 'spur' && !('leg' in way.from), one: 'a spur', many: 'spurs' },
  {
    is: (way) => way.kind === 'spur' && 'leg' in way.from,
    one: 'a spur from a joint',
    many: 'spurs from joints',
  },
  {
    is: (way) => way.kind === 'fused-spur' && way.feeds.length <= 1,
    one: 'a fused spur',
    many: 'fused spurs',
  },
  {
    is: (way) => way.kind === 'fused-spur' && way.feeds.length > 1,
    one: 'a fused branch',
    many: 'fused branches',
  },
  { is: isOpening, one: 'a leg opened', many: 'legs opened' },
  { is: (way) => way.kind === 'radial', one: 'a new radial', many: 'new radials' },
  { is: (way) => way.kind === 'fuse-down', one: 'a spur fused down', many: 'spurs fused down' },
  {
    is: (way) => way.kind === 'close-spur',
    one: 'a spur closed into the ring',
    many: 'spurs closed into the ring',
  },
];

/** The same as names used to tell it, when rings alone were opened: jobs are stored with such names. */
const oldWays = ways.map((words) =>
  words.is === isOpening ? { ...words, one: 'the ring carried on', many: 'ring extensions' } : words,
);

/** What kinds of remedy a scheme can bring along, one and several, in the order in which a name tells them. */
const remedies: Readonly<Record<Remedy['kind'], readonly [one: string, many: string]>> = {
  rcbo: ['an RCBO', 'RCBOs'],
  'rcd-enclosure': ['an RCD beside the board', 'RCDs beside the board'],
  'rcd-unit': ['a fused unit with RCD', 'fused units with RCD'],
  'rcd-outlet': ['an outlet with RCD', 'outlets with RCD'],
  'lower-device': ['a smaller protective device', 'smaller protective devices'],
  'new-board': ['a new board', 'new boards'],
  'bond-upgrade': ['a new main bond', 'new main bonds'],
  're-box': ['a deeper box', 'deeper boxes'],
  'single-to-twin': ['a single made twin', 'singles made twin'],
};

const tell = (count: number, one: string, many: string): readonly string[] => {
  if (count === 0) return [];
  return [count === 1 ? one : `${count} ${many}`];
};

/** What of a scheme its name tells. */
export interface NamedBy {
  readonly connections: readonly Connection[];
  readonly remedies: readonly Remedy[];
}

/** A scheme's name by all that it does: "2 spurs, a fused branch and an RCBO". */
export const plainSchemeName = (named: NamedBy): string => nameBy(ways, named);

function nameBy(words: readonly WayWords[], { connections, remedies: taken }: NamedBy): string {
  const parts = [
    ...words.flatMap(({ is, one, many }) => tell(connections.filter(is).length, one, many)),
    ...Object.entries(remedies).flatMap(([kind, [one, many]]) =>
      tell(taken.filter((remedy) => remedy.kind === kind).length, one, many),
    ),
  ];
  const last = parts.pop();
  if (last === undefined) return BLANK_NAME;
  const name = parts.length === 0 ? last : `${parts.join(', ')} and ${last}`;
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** What a plain name may be followed by and still be nobody's own. */
const plainEnding = /^( \(copy\))*( \d+)?$/;

/** What follows a scheme's plain name; null where the name is another. */
function endingOf(name: string, named: NamedBy, words = ways): string | null {
  const plain = nameBy(words, named);
  const ending = name.slice(plain.length);
  return name.startsWith(plain) && plainEnding.test(ending) ? ending : null;
}

/** True where a scheme is called by what it does. */
export const isPlainlyNamed = (scheme: NamedBy & Pick<Scheme, 'name'>): boolean =>
  endingOf(scheme.name, scheme) !== null;

/** True where a name tells what the scheme does, and perhaps what for: "A fused branch for the lounge". */
export function tellsAll(scheme: NamedBy & Pick<Scheme, 'name'>): boolean {
  const plain = plainSchemeName(scheme);
  return scheme.name.startsWith(plain) && !/^(,| and )/.test(scheme.name.slice(plain.length));
}

/** The same for a scheme as it was; names used to tell connections alone, and jobs are stored with such names. */
const oldEndingOf = ({ name, connections, remedies }: Scheme): string | null =>
  [ways, oldWays]
    .flatMap((words) => [remedies, []].map((told) => endingOf(name, { connections, remedies: told }, words)))
    .find((ending) => ending !== null) ?? null;

/** A name that no other has: "A spur", "A spur 2", "A spur 3". */
export function freeName(name: string, taken: readonly string[]): string {
  if (!taken.includes(name)) return name;
  let count = 2;
  while (taken.includes(`${name} ${count}`)) count++;
  return `${name} ${count}`;
}

/**
 * Lets the names that nobody has chosen follow what an edit makes of their schemes; a name of somebody's own stays.
 *
 * @param before the job that the edit is made to.
 */
export const withTrueNames =
  (before: Job, change: JobChange): JobChange =>
  (draft) => {
    change(draft);
    for (const scheme of draft.schemes) {
      const old = before.schemes.find(({ id }) => id === scheme.id);
      if (old === undefined || old.name !== scheme.name) continue;
      const ending = oldEndingOf(old);
      if (ending === null || isPlainlyNamed(scheme)) continue;
      const plain = plainSchemeName(scheme);
      const copied = ending.replace(/ \d+$/, '');
      const others = draft.schemes.filter(({ id }) => id !== scheme.id).map(({ name }) => name);
      scheme.name = freeName(`${plain}${copied}`, others);
    }
  };
