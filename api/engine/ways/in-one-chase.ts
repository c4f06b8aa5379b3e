import { type BesideInWall, besideInWalls, type CableInWalls, type OnLine } from './beside-in-walls.ts';
import { chaseSlots, type SlotGate, type WhyApart } from './chase-slots.ts';
import { withinSegment } from './position-in-leg.ts';
import type { ChasedApart, Run, Segment } from './run.ts';
import { cutsOf } from './run-cuts.ts';
import { stepsOf } from './steps.ts';

/** Which of several new cables are chased together, and which are not though they lie beside each other. */
export interface ChasesTogether {
  /** Parts of walls in which those named lie in one chase, cut and filled once; also the one tube of it where that leads on into a floor. */
  readonly together: readonly BesideInWall[];
  readonly apart: readonly { readonly ids: readonly [string, string]; readonly why: WhyApart }[];
}

/** What is decided of several cables; their order does not matter. */
export function chasesTogether(cables: readonly CableInWalls[], gate: SlotGate): ChasesTogether {
  const decided = besideInWalls(cables).map((beside) => ({ beside, ...chaseSlots(beside, gate) }));
  return {
    together: decided.flatMap(({ beside, slots }) =>
      slots.filter(({ length }) => length > 1).map((stretches) => ({ ...beside, stretches })),
    ),
    apart: decided.flatMap(({ apart }) =>
      apart.map(({ stretches: [one, other], why }) => ({ ids: [one.of.id, other.of.id] as const, why })),
    ),
  };
}

/**
 * New cables of a scheme, their chases cut once wherever they lie beside each other and all that would be in one may: a stretch is
 * parted where another cable comes to it or leaves it, and what lies together goes by one name (`bundle`), so that it is counted once
 * and carries less. Those that had to stay apart say why (`chasedApart`).
 *
 * @param mustCarryA by run id; a cable of which that is not told lies by itself.
 */
export function inOneChase(
  runs: readonly Run[],
  gate: SlotGate,
  mustCarryA: ReadonlyMap<string, number>,
): readonly Run[] {
  const cables = runs.map((run) => ({ ...run, mustCarryA: mustCarryA.get(run.id) ?? null }));
  const { together, apart } = chasesTogether(cables, gate);
  if (together.length === 0 && apart.length === 0) return runs;
  return runs.map((run) => withApart(partedRun(run, together, gate), apart));
}

function withApart(run: Run, apart: ChasesTogether['apart']): Run {
  const others = new Map<string, ChasedApart>();
  for (const { ids, why } of apart) {
    const [runId] = ids.filter((id) => id !== run.id);
    if (runId === undefined || !ids.includes(run.id) || others.has(runId)) continue;
    others.set(runId, { runId, why });
  }
  return others.size === 0 ? run : { ...run, chasedApart: [...others.values()] };
}

/** A part of a stretch that lies in one chase with others, mm from its start. */
interface Piece {
  readonly fromMm: number;
  readonly toMm: number;
  readonly bundle: string;
  readonly cables: number;
}

function partedRun(run: Run, together: readonly BesideInWall[], { plan, deeperMm }: SlotGate): Run {
  const pieces = new Map<number, Piece[]>();
  for (const chase of together)
    for (const stretch of chase.stretches)
      if (stretch.of.id === run.id)
        pieces.set(stretch.index, [...(pieces.get(stretch.index) ?? []), pieceOf(stretch, chase)]);
  if (pieces.size === 0) return run;
  const segments = run.segments.flatMap((segment, index) => {
    const own = pieces.get(index);
    return own === undefined ? [segment] : partedSegment(segment, own, deeperMm);
  });
  const cuts = cutsOf(plan, segments);
  return { ...run, segments, cuts, steps: stepsOf(plan, segments, { cuts, cable: run.cable }) };
}

function pieceOf({ segment, fromMm, toMm, isBackwards }: OnLine, chase: BesideInWall): Piece {
  // Lines may lie askew by a hair: along the stretch itself it is as much longer.
  const ratio = toMm > fromMm ? segment.lengthMm / (toMm - fromMm) : 1;
  const [near, far] = isBackwards
    ? [toMm - chase.toMm, toMm - chase.fromMm]
    : [chase.fromMm - fromMm, chase.toMm - fromMm];
  const ids = chase.stretches.map(({ of }) => of.id).toSorted();
  return {
    fromMm: Math.max(0, near * ratio),
    toMm: Math.min(segment.lengthMm, far * ratio),
    bundle: `one-chase/${ids.join('+')}`,
    cables: ids.length,
  };
}

/** An end by itself that is shorter than this goes with what it leads to, mm: the slot is as long as the longest in it. */
const REST_MM = 100;

/** A stretch in its parts, in its order: those with others, and what lies by itself before, between and after them. */
function partedSegment(segment: Segment, pieces: readonly Piece[], deeperMm: number): readonly Segment[] {
  const parts: Segment[] = [];
  let doneMm = 0;
  const part = (toMm: number, piece?: Piece): void => {
    if (toMm - doneMm < 1) return;
    parts.push(partOf(segment, [doneMm, toMm], piece && { ...piece, deeperMm }));
    doneMm = toMm;
  };
  for (const piece of joinedPieces(segment, pieces)) {
    part(piece.fromMm);
    part(piece.toMm, piece);
  }
  part(segment.lengthMm);
  return parts;
}

/** In order, those of one name that follow one another as one, and what is short between them taken in. */
function joinedPieces({ lengthMm }: Segment, pieces: readonly Piece[]): readonly Piece[] {
  const joined: Piece[] = [];
  for (const piece of pieces.toSorted((a, b) => a.fromMm - b.fromMm)) {
    const before = joined.at(-1);
    const fromMm = piece.fromMm - (before?.toMm ?? 0) < REST_MM ? (before?.toMm ?? 0) : piece.fromMm;
    if (before?.bundle === piece.bundle && fromMm === before.toMm)
      joined.splice(-1, 1, { ...before, toMm: piece.toMm });
    else joined.push({ ...piece, fromMm });
  }
  const last = joined.at(-1);
  if (last !== undefined && lengthMm - last.toMm < REST_MM) joined.splice(-1, 1, { ...last, toMm: lengthMm });
  return joined;
}

function partOf(
  segment: Segment,
  [fromMm, toMm]: readonly [number, number],
  shared: (Piece & { readonly deeperMm: number }) | undefined,
): Segment {
  const isWhole = fromMm < 1 && segment.lengthMm - toMm < 1;
  const place = isWhole
    ? {}
    : {
        from: fromMm < 1 ? segment.from : withinSegment(segment, fromMm),
        to: segment.lengthMm - toMm < 1 ? segment.to : withinSegment(segment, toMm),
        lengthMm: toMm - fromMm,
      };
  if (shared === undefined) return { ...segment, ...place };
  const { bundle, cables, deeperMm } = shared;
  return { ...segment, ...place, bundle, oneChase: { cables, deeperMm } };
}
