import type { Job } from '#model/job.ts';
import type { Worked } from '../connections/worked.ts';
import { asbestosIsOpen } from '../rules/asbestos.ts';
import { wallsToSettle, wallsWorkedAt } from '../rules/walls-to-settle.ts';
import type { Run } from '../ways/run.ts';
import { runLength } from '../ways/run-length.ts';
import type { Ask } from './ask.ts';
import { checklistAsk } from './checklist-ask.ts';
import { askOf, factState } from './fields.ts';

/** What is told in the rooms by looking and knocking: what may be in the walls, and what they are built of. */
export function roomAsks(worked: Worked): readonly Ask[] {
  const { job, scheme } = worked;
  return [
    checklistAsk(job, 'asbestos', {
      stage: 'rooms',
      why: 'Where it is suspected, it is sampled before anything is drilled, lifted or moved.',
      source: 'Control of Asbestos Regulations 2012, 5; HSE guidance',
      rules: ['SC3'],
      ...(asbestosIsOpen(job) ? { closing: { settles: ['asbestos'] } } : {}),
    }),
    ...(scheme === null ? [] : wallAsks(worked)),
    checklistAsk(job, 'decorated-recently', {
      stage: 'rooms',
      why: 'New wallpaper and tiles are worth going round; the customer is told what is made good, and what is not.',
      rules: [],
    }),
    checklistAsk(job, 'hidden-services', {
      stage: 'rooms',
      why: 'Pipes and cables in the way are found before walls and floors are cut.',
      rules: ['RT13'],
    }),
  ];
}

function wallAsks(worked: Worked): readonly Ask[] {
  const walls = wallsWorkedAt(worked);
  const open = wallsToSettle(worked);
  if (walls.length === 0) return [];
  const known = new Map(worked.job.storeys.flatMap((storey) => storey.walls.map((wall) => [wall.id, wall])));
  return [
    askOf({
      id: 'wall-build',
      short: 'wall build',
      words: 'Knock at the walls that cables or boxes go into: what are they built of?',
      why: 'Hard brick takes longer to chase than block, studs are not chased at all.',
      source: null,
      stage: 'rooms',
      when: 'visit',
      fields: walls.map((id) => ({
        subjectId: id,
        fact: 'core',
        state: factState(known.get(id)?.core, known.get(id)?.certainty?.core),
      })),
      rules: [],
      ...(open.length > 0
        ? {
            closing: {
              job: (job) => withWallsSeen(job, open),
              runs: (runs, allowances) => runs.map((run) => withStretchesSeen(run, open, allowances)),
            },
          }
        : {}),
    }),
  ];
}

const withWallsSeen = (job: Job, wallIds: readonly string[]): Job => ({
  ...job,
  storeys: job.storeys.map((storey) => ({
    ...storey,
    walls: storey.walls.map((wall) =>
      wallIds.includes(wall.id) ? { ...wall, certainty: { ...wall.certainty, core: 'seen' } } : wall,
    ),
  })),
});

/** A run whose stretches in these walls are as certain as those of a full survey. */
function withStretchesSeen(
  run: Run,
  wallIds: readonly string[],
  allowances: Parameters<typeof runLength>[2],
): Run {
  const isOf = ({ wallId, medium }: Run['segments'][number]): boolean =>
    wallId !== null && wallIds.includes(wallId) && medium !== 'through-wall';
  const segments = run.segments.map((segment) =>
    segment.certainty === 'assumed' && isOf(segment)
      ? { ...segment, certainty: 'derived' as const }
      : segment,
  );
  if (run.lengthMm === null) return { ...run, segments };
  return { ...run, segments, ...runLength(segments, [run.from, run.to], allowances) };
}
