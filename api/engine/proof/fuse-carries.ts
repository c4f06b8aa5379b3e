import { plugFuses } from '#data/standards/plug-fuses.ts';
import { NOMINAL_V } from './spur-load.ts';

/**
 * Whether a plug fuse carries these watts: `within` its rating by arithmetic at 230 V, `by-practice` where the
 * trade still fits the smallest one (3 A up to 700 W), or `over`.
 * Source: BS 1362 ratings; the 700 W are common practice.
 */
export function fuseCarries(watts: number, fuseA: number): 'within' | 'by-practice' | 'over' {
  if (watts / NOMINAL_V <= fuseA) return 'within';
  const [small] = plugFuses.rows;
  return fuseA === small.ratingA && watts <= small.practiceUpToW ? 'by-practice' : 'over';
}
