import type { Face, Wall } from '#model/building.ts';

/** What walls are drawn as until somebody looks: common practice, no source; all of it is marked assumed. */
export interface WallKind {
  readonly thicknessMm: number;
  readonly core: Wall['core'];
  readonly external: boolean;
}

/** An outer wall of a house as most are: brick, plaster inside. */
export const usualOuter: WallKind = { thicknessMm: 300, core: 'brick', external: true };
/** A wall between rooms as most are. */
export const usualInner: WallKind = { thicknessMm: 100, core: 'block', external: false };

const plastered = (): Face => ({ finish: 'plaster', lining: 'none' });

/** A new wall of a kind from one place to another; what nobody has looked at is assumed. */
export function newWall(
  kind: WallKind,
  at: { readonly id: string; readonly from: [number, number]; readonly to: [number, number] },
): Wall {
  return {
    id: at.id,
    from: at.from,
    to: at.to,
    ...kind,
    // The room is on the left of the walls that are drawn round it.
    faces: { left: plastered(), right: kind.external ? { finish: 'bare', lining: 'none' } : plastered() },
    openings: [],
    certainty: { thicknessMm: 'assumed', core: 'assumed', external: 'assumed', faces: 'assumed' },
  };
}

/** Whether a wall is drawn as usual and nobody has said what it is. */
export const isAsUsual = ({ certainty }: Pick<Wall, 'certainty'>): boolean =>
  certainty?.thicknessMm === 'assumed' && certainty.core === 'assumed';
