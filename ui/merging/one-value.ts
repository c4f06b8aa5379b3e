/** Groups and lists that are one value: half of mine with half of theirs would say what nobody meant. */
const wholeFields: ReadonlySet<string> = new Set([
  'address',
  'at',
  'box',
  'cable',
  'from',
  'load',
  'outline',
  'place',
  'rcd',
  'runs',
  'to',
  'underlay',
  'via',
]);

/** Lists of which each entry is one value. */
const wholeEntries: ReadonlySet<string> = new Set([
  'answers',
  'done',
  'instead',
  'instruments',
  'packFor',
  'remedies',
  'stock',
]);

/** How deep the fields of a connection lie: `schemes`, its scheme, `connections`, itself, the field. */
const CONNECTION_FIELD = 5;

/** Whether what is at a path of the job file is merged as one value. */
export function isOneValue(path: readonly string[]): boolean {
  const [top, , part] = path;
  if (top === 'schemes' && part === 'connections' && path.length === CONNECTION_FIELD) return true;
  return path.length > 1 && (wholeFields.has(path.at(-1) ?? '') || wholeEntries.has(path.at(-2) ?? ''));
}

/** Groups in which no field must be there: one that is absent is the same as one without fields. */
const openGroups: ReadonlySet<string> = new Set([
  'asFound',
  'certainty',
  'channel',
  'quoting',
  'takes',
  'testing',
]);

/** Whether a group at a path can be made of one side's fields and the other's although one of them has no such group. */
export const isOpenGroup = (path: readonly string[]): boolean => openGroups.has(path.at(-1) ?? '');

/** Whether a group that both sides began is made of what either put into it. */
export const isGathered = (path: readonly string[]): boolean =>
  isOpenGroup(path) || path.at(-1) === 'actuals';

/** The field that says of what kind a thing of this list is, where another kind has other fields altogether. */
export const kindFieldIn = (list: string | undefined): string | null =>
  list === 'connections' || list === 'readings' ? 'kind' : null;
