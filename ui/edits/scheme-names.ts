import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import type { JobChange } from '../job-events.ts';

/** What a scheme is called that joins nothing. */
const BLANK_NAME = 'Nothing joined yet';

/** What kinds of way a scheme can be made of, one and several, in the order in which a name tells them. */
const ways: readonly {
  readonly is: (connection: Connection) => boolean;
  readonly one: string;
  readonly many: string;
}[] = [
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
  { is: (way) => way.kind === 'ring-extension', one: 'the ring carried on', many: 'ring extensions' },
  { is: (way) => way.kind === 'radial', one: 'a new radial', many: 'new radials' },
  { is: (way) => way.kind === 'fuse-down', one: 'a spur fused down', many: 'spurs fused down' },
  {
    is: (way) => way.kind === 'close-spur',
    one: 'a spur closed into the ring',
    many: 'spurs closed into the ring',
  },
];

/** A scheme's name by what it does: "2 spurs and a fused branch". */
export function plainSchemeName(connections: readonly Connection[]): string {
  const parts = ways.flatMap(({ is, one, many }) => {
    const count = connections.filter(is).length;
    if (count === 0) return [];
    return [count === 1 ? one : `${count} ${many}`];
  });
  const last = parts.pop();
  if (last === undefined) return BLANK_NAME;
  const name = parts.length === 0 ? last : `${parts.join(', ')} and ${last}`;
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** What a plain name may be followed by and still be nobody's own. */
const plainEnding = /^( \(copy\))*( \d+)?$/;

/** What follows a scheme's plain name; null where somebody has named the scheme. */
function endingOf(name: string, connections: readonly Connection[]): string | null {
  const plain = plainSchemeName(connections);
  const ending = name.slice(plain.length);
  return name.startsWith(plain) && plainEnding.test(ending) ? ending : null;
}

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
      const ending = endingOf(old.name, old.connections);
      const plain = plainSchemeName(scheme.connections);
      if (ending === null || endingOf(scheme.name, scheme.connections) !== null) continue;
      const copied = ending.replace(/ \d+$/, '');
      const others = draft.schemes.filter(({ id }) => id !== scheme.id).map(({ name }) => name);
      scheme.name = freeName(`${plain}${copied}`, others);
    }
  };
