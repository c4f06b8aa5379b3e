import type { Job } from '#model/job.ts';
import type { Connection, Remedy, Scheme } from '#model/scheme.ts';
import { remedyKey } from '../../circuit/remedy-key.ts';
import { remedyNames } from '../../circuit/remedy-names.ts';
import { listed } from '../said.ts';
import { idOf, listDifference, type MoveStep, withoutThing, withThing } from './move-step.ts';
import { withScheme } from './priced-state.ts';

/** The points that a connection joins on, its own fused unit among them. */
function pointsOf(connection: Connection): readonly string[] {
  switch (connection.kind) {
    case 'spur':
      return [connection.to];
    case 'ring-extension':
      return connection.through;
    case 'close-spur':
      return [connection.point];
    case 'radial':
      return connection.feeds.map(({ to }) => to);
    case 'fused-spur':
    case 'fuse-down': {
      const unit = typeof connection.unit === 'string' ? [connection.unit] : [];
      return [...unit, ...connection.feeds.map(({ to }) => to)];
    }
  }
}

/** Connections that go, change or come, with the points that they share: one cannot be told from the other. */
interface Bundle {
  readonly points: ReadonlySet<string>;
  readonly out: readonly Connection[];
  readonly put: readonly Connection[];
}

const shares = (a: Bundle, b: Bundle): boolean =>
  [...a.points].some((point) => b.points.has(point)) ||
  a.out.some(({ id }) => b.put.some((one) => one.id === id));

const together = (a: Bundle, b: Bundle): Bundle => ({
  points: new Set([...a.points, ...b.points]),
  out: [...a.out, ...b.out],
  put: [...a.put, ...b.put],
});

/** Bundles of one connection each, those that share a point made one; in the order of their first. */
function bundled(single: readonly Bundle[]): readonly Bundle[] {
  let bundles: readonly Bundle[] = [];
  for (const one of single) {
    const same = bundles.filter((bundle) => shares(bundle, one));
    const whole = [...same, one].reduce(together);
    const [first, ...others] = same;
    bundles =
      first === undefined
        ? bundles.concat(whole)
        : bundles
            .filter((bundle) => !others.includes(bundle))
            .map((bundle) => (bundle === first ? whole : bundle));
  }
  return bundles;
}

function bundleWords({ points, out, put }: Bundle, labelOf: (id: string) => string): string {
  const words = points.size === 0 ? 'A connection' : listed([...points].map(labelOf));
  if (out.length === 0) return `${words}: connected`;
  return put.length === 0 ? `${words}: no longer connected` : `${words}: connected in another way`;
}

function connectionChanges(
  before: Scheme,
  after: Scheme,
  labelOf: (id: string) => string,
): readonly MoveStep[] {
  const { added, changed, removed } = listDifference(before.connections, after.connections, idOf);
  const of = (out: readonly Connection[], put: readonly Connection[]): Bundle => ({
    points: new Set([...out, ...put].flatMap(pointsOf)),
    out,
    put,
  });
  const single = [
    ...removed.map((one) => of([one], [])),
    ...changed.map((one) => of([one.before], [one.after])),
    ...added.map((one) => of([], [one])),
  ];
  return bundled(single).map((bundle) => ({
    cause: 'connection',
    words: bundleWords(bundle, labelOf),
    detail: '',
    subjects: [...bundle.points],
    apply: (state) => {
      const putIds = new Set(bundle.put.map(idOf));
      const left = state.scheme.connections.filter(
        (one) => putIds.has(one.id) || !bundle.out.some(({ id }) => id === one.id),
      );
      const connections = bundle.put.reduce((list, one) => withThing(list, one, idOf), left);
      return withScheme(state, { ...state.scheme, connections });
    },
  }));
}

/** Remedies by their key; what is there twice over is numbered, so that each is one thing. */
function keyed(remedies: readonly Remedy[]): readonly (Remedy & { readonly key: string })[] {
  const seen = new Map<string, number>();
  return remedies.map((remedy) => {
    const key = remedyKey(remedy);
    const times = seen.get(key) ?? 0;
    seen.set(key, times + 1);
    return { ...remedy, key: `${key} ${times}` };
  });
}

const plain = ({ key: _, ...remedy }: Remedy & { readonly key: string }): Remedy => remedy;

function remedySteps(
  before: Scheme,
  after: Scheme,
  labelOf: (id: string) => string,
): { readonly out: readonly MoveStep[]; readonly put: readonly MoveStep[] } {
  const keyOf = ({ key }: { readonly key: string }): string => key;
  const { added, changed, removed } = listDifference(keyed(before.remedies), keyed(after.remedies), keyOf);
  const words = ({ kind, at }: Remedy, how: string): string =>
    `Putting right: ${remedyNames[kind]}${at === undefined ? '' : ` at ${labelOf(at)}`}, ${how}`;
  const step = (remedy: Remedy & { readonly key: string }, how: string, put: boolean): MoveStep => ({
    cause: 'remedy',
    words: words(remedy, how),
    detail: '',
    subjects: remedy.at === undefined ? [] : [remedy.at],
    apply: (state) => {
      const list = keyed(state.scheme.remedies);
      const remedies = put ? withThing(list, remedy, keyOf) : withoutThing(list, remedy.key, keyOf);
      return withScheme(state, { ...state.scheme, remedies: remedies.map(plain) });
    },
  });
  return {
    out: removed.map((one) => step(one, 'taken out', false)),
    put: [
      ...added.map((one) => step(one, 'added', true)),
      ...changed.map((one) => step(one.after, 'changed', true)),
    ],
  };
}

/** What people call things by id; what both jobs have goes by its name afterwards. */
function labelsOf(before: Job, after: Job): (id: string) => string {
  const labels = new Map<string, string>();
  for (const job of [before, after]) {
    for (const { id, label } of [...job.points, ...job.boards]) labels.set(id, label);
    for (const { id, name } of job.circuits) labels.set(id, name);
  }
  return (id) => labels.get(id) ?? id;
}

/** The changes of the scheme: remedies that go, connections (those that share points at once), remedies that come. */
export function connectionSteps(before: Job, after: Job): readonly MoveStep[] {
  const [was] = before.schemes;
  const [is] = after.schemes;
  if (was === undefined || is === undefined) return [];
  const labelOf = labelsOf(before, after);
  const { out, put } = remedySteps(was, is, labelOf);
  return [...out, ...connectionChanges(was, is, labelOf), ...put];
}
