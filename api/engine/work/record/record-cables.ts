import type { Cable } from '#model/cable.ts';
import type { Certainty } from '#model/primitives.ts';
import { territories } from '../../circuit/circuit-territory.ts';
import type { Worked } from '../../connections/worked.ts';
import { installedMethod } from '../../proof/installed-method.ts';
import type { Run } from '../../ways/run.ts';
import type { References } from '../references.ts';

/** Cables of one circuit that are of one make and were laid at one time, as the form asks for them. */
export interface RecordCable {
  readonly state: 'new' | 'found';
  /** By their marks, in order. */
  readonly marks: readonly string[];
  /** Null where nobody has looked. */
  readonly type: Cable['type'] | null;
  readonly liveMm2: number | null;
  /** Nought: it has no protective conductor. */
  readonly cpcMm2: number | null;
  /** Reference methods along them, each once, in order of their names; empty where none is told. */
  readonly methods: readonly string[];
  /** Whether of some stretch of them the way is assumed, or the method not told. */
  readonly isMethodOpen: boolean;
  /** Of what they are; that of new ones is as designed until somebody has seen them. */
  readonly certainty: Certainty;
}

/** The cables of a circuit as it is once the work is done, new ones first; of one make each. */
export function recordCables(
  worked: Worked,
  references: References,
  circuitId: string,
): readonly RecordCable[] {
  const own = territories(worked.job, worked.proposed).find((each) => each.circuitId === circuitId);
  const each = (own?.cables ?? []).map(
    (edge): RecordCable => ({
      state: edge.state,
      marks: [references.cable(edge.id)],
      type: edge.cable?.type ?? null,
      liveMm2: edge.cable?.lineMm2 ?? null,
      cpcMm2: edge.cable?.cpcMm2 ?? null,
      ...methodsOf(worked, runOf(worked, edge)),
      certainty: certaintyOf(worked, edge),
    }),
  );
  const kinds = new Map<string, RecordCable>();
  for (const cable of each) {
    const kind = [cable.state, cable.type, cable.liveMm2, cable.cpcMm2, cable.certainty].join(' ');
    const before = kinds.get(kind);
    kinds.set(kind, before === undefined ? cable : together(before, cable));
  }
  return [...kinds.values()].toSorted(
    (a, b) => order[a.state] - order[b.state] || (b.liveMm2 ?? 0) - (a.liveMm2 ?? 0),
  );
}

const order = { new: 0, found: 1 } as const;

const together = (one: RecordCable, other: RecordCable): RecordCable => ({
  ...one,
  marks: [...one.marks, ...other.marks],
  methods: [...new Set([...one.methods, ...other.methods])].toSorted(),
  isMethodOpen: one.isMethodOpen || other.isMethodOpen,
});

const runOf = (
  { runs, foundRuns }: Worked,
  { id, legId }: { readonly id: string; readonly legId: string | null },
): Run | undefined => runs.find((run) => run.id === id) ?? foundRuns.get(legId ?? '');

/** By how the whole of a run is thought to lie; where the survey leaves several methods open, the strictest. */
function methodsOf({ plan }: Worked, run: Run | undefined): Pick<RecordCable, 'methods' | 'isMethodOpen'> {
  const segments = run?.segments ?? [];
  const installed = segments.map((segment) => installedMethod(segment, plan));
  const told = installed.flatMap((each) => (each === null ? [] : [each.method]));
  return {
    methods: [...new Set(told)].toSorted(),
    isMethodOpen:
      segments.length === 0 ||
      segments.some(({ certainty }) => certainty === 'assumed') ||
      installed.some((each) => each === null || each.kindest !== undefined),
  };
}

function certaintyOf(
  { job }: Worked,
  { state, legId, cable }: Pick<Worked['proposed']['edges'][number], 'state' | 'legId' | 'cable'>,
): Certainty {
  if (cable === null) return 'unknown';
  if (state === 'new') return 'assumed';
  return job.legs.find(({ id }) => id === legId)?.certainty?.cable ?? 'seen';
}
