import type { Wall } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import type { Worked } from '../../connections/worked.ts';
import { wallsToSettle } from '../../rules/walls-to-settle.ts';
import { layInWall } from '../../ways/lay-in-wall.ts';
import type { Run, Segment } from '../../ways/run.ts';
import type { House } from '../work-scheme.ts';
import type { PriceTurn, TurnChange } from './price-turn.ts';

type Core = Wall['core'];

/**
 * What a wall may turn out to be that takes more work than what was assumed, and less. Concrete takes cable on its surface, so
 * that neither is worked out of it. Common practice, no source.
 */
const harder: Partial<Record<Core, Core>> = {
  brick: 'hard-brick',
  block: 'hard-brick',
  'aerated-block': 'hard-brick',
  'timber-stud': 'block',
  'metal-stud': 'block',
};
const softer: Partial<Record<Core, Core>> = { 'hard-brick': 'block' };

const wallIn = (job: Job, id: string): Wall | undefined =>
  job.storeys.flatMap(({ walls }) => walls).find((wall) => wall.id === id);

function builtOf(cores: ReadonlyMap<string, Core>): TurnChange {
  const built = (wall: Wall): Wall => {
    const core = cores.get(wall.id);
    return core === undefined ? wall : { ...wall, core };
  };
  return {
    job: (job) => ({
      ...job,
      storeys: job.storeys.map((storey) =>
        storey.walls.some(({ id }) => cores.has(id)) ? { ...storey, walls: storey.walls.map(built) } : storey,
      ),
    }),
    runs: (runs, house) => runs.map((run) => relaid(run, house, cores)),
  };
}

const liesInWall = ({ medium }: Segment): boolean => medium === 'wall-chase' || medium === 'stud-cavity';

/** The same way, lying as cable lies in what the walls are now built of. */
function relaid(run: Run, { plan, tariff }: House, cores: ReadonlyMap<string, Core>): Run {
  const segments = run.segments.map((segment) =>
    segment.wallId !== null && cores.has(segment.wallId) && liesInWall(segment)
      ? {
          ...segment,
          ...layInWall(plan.wallById.get(segment.wallId), 'flush', tariff.chased),
          studsCrossed: 0,
        }
      : segment,
  );
  return { ...run, segments };
}

/** The walls that cable or boxes go into and that nobody has knocked at: all of them harder than assumed, or all softer. */
export function wallTurns(worked: Worked): readonly PriceTurn[] {
  const asked = wallsToSettle(worked).flatMap((id) => wallIn(worked.job, id) ?? []);
  const change = (to: Partial<Record<Core, Core>>): readonly TurnChange[] => {
    const cores = new Map(
      asked.flatMap(({ id, core }): readonly (readonly [string, Core])[] => {
        const other = to[core];
        return other === undefined ? [] : [[id, other]];
      }),
    );
    return cores.size === 0 ? [] : [builtOf(cores)];
  };
  const [first] = asked;
  if (first === undefined) return [];
  const turn = { cheaper: change(softer), dearer: change(harder) };
  return turn.cheaper.length + turn.dearer.length === 0
    ? []
    : [{ question: 'wall-build', subjectId: first.id, ...turn }];
}
