import type { Fault } from '#model/fault.ts';

/** A fault of a file as somebody reads it who has never seen the inside of one. */
export interface PlainFault {
  /** In which thing, and in which entry of it. */
  readonly place: string;
  /** What is wrong there. */
  readonly what: string;
}

const whats: Readonly<Record<Fault['code'], string>> = {
  'not-json': 'the file breaks off or was damaged here',
  missing: 'this entry is missing',
  'wrong-type': 'what stands here cannot be read',
  'unknown-key': 'this entry does not belong here',
  'unknown-value': 'this is none of the words that can stand here',
  'out-of-range': 'this number cannot be',
  'not-whole': 'only a whole number can stand here',
  'wrong-count': 'there are too few or too many of these',
  'wrong-length': 'this text is empty or too long',
  'bad-id': 'the name by which the file knows this thing cannot be read',
  'bad-date': 'this is no day of the calendar',
  'unclear-shape': 'what stands here cannot be read',
  'not-allowed': 'this cannot be so',
  'duplicate-id': 'two things go by one name inside the file',
  'dangling-reference': 'it names a thing that is not in the file',
  'wrong-format': 'this is another kind of file',
  'newer-version': 'it was made by a newer version of the program',
  'no-upgrade': 'no version of the program has ever made such a file',
  'upgrade-failed': 'it is of an older version and could not be brought up to date',
};

/** What messages go on with after the thing that they are about. */
const SUBJECT = /^(\p{Lu}.*?): (?=found |"|the id |nothing |this |the job )/u;

/** `cableType` as "cable type"; a unit at its end is left out. */
const entryWords = (key: string): string =>
  key === 'id'
    ? 'its name inside the file'
    : key
        .replace(/(Mm2|Mm|Ohm|Pence|Min|Percent|Deg|Ma|Ka|M2)$/, '')
        .replace(/([a-z\d])([A-Z])/g, '$1 $2')
        .toLowerCase();

/** `points[3].place.wall` as "points, the 4th: place, wall". */
function wholePath(path: string): string {
  return path
    .split('.')
    .map((part) => {
      const [, key = part, index] = /^([^[]*)\[(\d+)\]/.exec(part) ?? [];
      return index === undefined ? entryWords(key) : `${entryWords(key)}, number ${Number(index) + 1}`;
    })
    .join(', ');
}

/** The entries of a path below the last thing of a list on it. */
const belowThing = (path: string): string =>
  path
    .slice(path.lastIndexOf(']') + 1)
    .split('.')
    .filter((key) => key !== '')
    .map(entryWords)
    .join(', ');

/** Things that have no label of their own: a person counts them. */
const UNNAMED = /^(Leg|Wall|Opening|Fixture|Reading|Connection|Asset) \S+?(?=,|$)/;

/** A thing as people know it: one without a label by its number in the list, not by its name inside the file. */
function thingWords(subject: string, path: string): string {
  const [named, kind] = UNNAMED.exec(subject) ?? [];
  if (named === undefined || kind === undefined) return subject;
  const [, index] = new RegExp(`${kind.toLowerCase()}s\\[(\\d+)\\]`).exec(path) ?? [];
  return index === undefined ? subject : subject.replace(named, `${kind} number ${Number(index) + 1}`);
}

function placeOf({ path, code, message }: Pick<Fault, 'path' | 'code' | 'message'>): string {
  if (path === 'file') return 'The whole file';
  if (code === 'not-json') return `${path.charAt(0).toUpperCase()}${path.slice(1)}`;
  const [, about] = SUBJECT.exec(message) ?? [];
  const subject = about === undefined ? undefined : thingWords(about, path);
  // Without a thing, the entry stands as the file spells it.
  if (subject === undefined) return wholePath(path);
  return [subject, belowThing(path)].filter((part) => part !== '').join(', ');
}

/** Says where a fault is and what is wrong, without the file's own language. */
export const plainFault = (fault: Pick<Fault, 'path' | 'code' | 'message'>): PlainFault => ({
  place: placeOf(fault),
  what: whats[fault.code],
});
