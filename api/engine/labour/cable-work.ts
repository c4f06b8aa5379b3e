import type { Medium } from '#model/cable.ts';
import type { Worked } from '../connections/worked.ts';
import type { Plan } from '../plan/plan.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import { unseenDrops } from '../takeoff/making-good-lines.ts';
import { ownHoles } from '../takeoff/own-holes.ts';
import { lengthRatios } from '../takeoff/run-length.ts';
import type { Run, Segment } from '../ways/run.ts';
import { type Amount, certain, possible } from './amount.ts';
import type { TaskId } from './known-tasks.ts';
import { pathMetres } from './stretch-metres.ts';

/** Laying the cable itself, by the metre; a medium without a word here is worked on another way. */
const layingTask: Partial<Readonly<Record<Medium, TaskId>>> = {
  'void-along': 'thread-cable',
  'void-across': 'thread-cable',
  'void-open': 'thread-cable',
  'stud-cavity': 'thread-cable',
  riser: 'thread-cable',
  loft: 'thread-cable',
  'surface-clipped': 'clip-cable',
  outside: 'clip-cable',
};

/** In mini-trunking or conduit on the surface: the cable goes in with it. */
function isSurfaceContained({ medium, containment, inChannelOf }: Segment): boolean {
  if (inChannelOf !== undefined) return false;
  if (medium === 'surface-channel') return true;
  return (
    (medium === 'surface-clipped' || medium === 'outside') &&
    (containment === 'channel' || containment === 'conduit')
  );
}

/** What every cable takes, also beside others. Pinned stretches are as long as they were drawn. */
function layingWork(run: Run): readonly Amount[] {
  const { lowRatio, highRatio } = lengthRatios(run);
  return run.segments.flatMap((segment): readonly Amount[] => {
    const task = segment.inChannelOf === undefined ? layingTask[segment.medium] : 'lay-in-channel';
    if (task === undefined || isSurfaceContained(segment)) return [];
    const quantity = segment.lengthMm / 1000;
    const pinned = segment.certainty === 'pinned';
    return [
      {
        task,
        quantity,
        low: pinned ? quantity : quantity * lowRatio,
        high: pinned ? quantity : quantity * highRatio,
        causes: [run.id],
      },
    ];
  });
}

/** A cable is fished once for every drop in a stud wall. */
function fishing(run: Run): readonly Amount[] {
  const drops = run.segments.filter(
    ({ medium, direction }) => medium === 'stud-cavity' && direction === 'vertical',
  );
  const unseen = unseenDrops(run);
  return [
    ...drops.map(() => certain('fish-stud', run.id)),
    // A noggin that nobody knows of: the board is opened there and patched.
    ...(unseen > 0 ? [possible('patch-board', run.id, unseen)] : []),
  ];
}

/** Holes, once a bundle. */
function holes(runs: readonly Run[]): readonly Amount[] {
  return ownHoles(runs).flatMap(({ runId, segment, holes: placed, notches }) => {
    // Nobody drills these: they are settled first, and that is what is reckoned.
    const barred = placed.filter(({ judged }) => judged === 'neither').length;
    const drilled = segment.joistsCrossed - notches - barred;
    return [
      ...(segment.medium === 'through-wall' ? [certain('drill-wall', runId)] : []),
      ...(drilled > 0 ? [certain('drill-joist', runId, drilled)] : []),
      ...(barred > 0 ? [certain('barred-joist', runId, barred)] : []),
      ...(notches > 0 ? [certain('notch-joist', runId, notches)] : []),
      ...(segment.studsCrossed > 0 ? [certain('drill-stud', runId, segment.studsCrossed)] : []),
    ];
  });
}

/** Cables through voids, studs and walls, on surfaces and in the ground; a run without a way is one lump. */
export function cableWork({ runs, plan }: Worked): readonly Amount[] {
  return workOnRuns(runs, plan);
}

/** Remedies leave the cables where they are: their work is counted once. */
const workOnRuns = rememberedOfTwo((runs: readonly Run[], plan: Plan): readonly Amount[] => [
  ...runs.flatMap((run) => [...layingWork(run), ...fishing(run)]),
  ...holes(runs),
  ...pathMetres({ runs, plan }, 'fit-channel', isSurfaceContained),
  ...pathMetres({ runs, plan }, 'dig-trench', ({ medium }) => medium === 'buried'),
  ...runs.filter((run) => run.segments.length === 0).map((run) => certain('unsurveyed-run', run.id)),
]);
