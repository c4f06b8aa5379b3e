import type { Point } from '#model/installation.ts';
import type { Things } from './things.ts';

/** The flex of a fixed appliance that a scheme connects. */
export interface ApplianceFlex {
  /** The unit, or the outlet plate, that it comes out of. */
  readonly id: string;
  /** What protects it; null where no fuse is before it, or nobody knows which. */
  readonly fuseA: number | null;
  /** Of each core, mm². */
  readonly areaMm2: number;
  /** What it feeds, where the job says so. */
  readonly load: Point['load'] | null;
}

/**
 * The flexes of a scheme: of new fused units with an outlet for one, then of outlet plates, each by id. All are three-core and
 * heat-resistant, as the kit has them: what it feeds may be hot where the flex comes in.
 */
export function applianceFlexes(
  { fusedUnits, accessories }: Pick<Things, 'fusedUnits' | 'accessories'>,
  points: readonly Pick<Point, 'id' | 'load'>[],
): readonly ApplianceFlex[] {
  const flexOf = (id: string, pointId: string | null, fuseA: number | null): ApplianceFlex => ({
    id,
    fuseA,
    areaMm2: flexAreaMm2(fuseA),
    load: points.find((point) => point.id === pointId)?.load ?? null,
  });
  return [
    ...fusedUnits
      .filter((unit) => unit.state === 'new' && unit.flexOutlet)
      .map(({ id, pointId, fuseA }) => flexOf(id, pointId, fuseA)),
    ...accessories
      .filter(({ kind }) => kind === 'flex-outlet')
      .map(({ id, pointId }) => {
        const unit = fusedUnits.find((candidate) => candidate.accessories.includes(id));
        return flexOf(id, pointId, unit?.fuseA ?? null);
      }),
  ];
}

/**
 * The flex that a fuse protects, mm²: 0.75 up to 6 A, 1 up to 10 A, 1.5 above or where no fuse is known.
 * Source: BS 7671 Table 4F3A (current-carrying capacity of flexible cables), from memory.
 */
export function flexAreaMm2(fuseA: number | null): number {
  if (fuseA === null || fuseA > 10) return 1.5;
  return fuseA > 6 ? 1 : 0.75;
}
