import type { Worked } from '#engine/connections/worked.ts';
import type { Point } from '#model/installation.ts';
import type { Connection, Scheme, Tap } from '#model/scheme.ts';
import { type JoinContext, radialThrough, ringExtension } from './join-point.ts';
import { sourceLegs } from './join-sources.ts';

/** How a point might be joined, when somebody asks why it is not. */
export type AskedHow = 'spur' | 'fused' | 'ring' | 'radial';

/** What is asked after. */
export interface Asked {
  readonly point: Point;
  /** Further points joined on by the same connection, in their order; a spur without a fuse has none. */
  readonly also: readonly string[];
  readonly how: AskedHow;
  /** Where a spur begins. */
  readonly tap: Tap | null;
  /** The leg that a ring is opened at. */
  readonly legId: string | null;
}

const ASKED_ID = 'asked';

/** The connection that is asked after, as the job file would have it; null while something of it is not told. */
export function askedConnection(worked: Worked, asked: Asked): Connection | null {
  const { point, also, how, tap, legId } = asked;
  const points = [point.id, ...also];
  const scheme: Scheme = { id: ASKED_ID, name: ASKED_ID, connections: [], remedies: [], locks: [] };
  const context: JoinContext = { worked, scheme, makeId: () => ASKED_ID };
  if (how === 'radial') return radialThrough(context, points);
  if (how === 'ring') {
    const leg = sourceLegs(worked, point.id).find((one) => one.legId === legId);
    return leg === undefined ? null : ringExtension(context, leg, points);
  }
  if (tap === null) return null;
  if (point.kind === 'fused-unit')
    return { id: ASKED_ID, kind: 'fused-spur', from: tap, unit: point.id, feeds: [] };
  if (how === 'spur') return { id: ASKED_ID, kind: 'spur', from: tap, to: point.id };
  return {
    id: ASKED_ID,
    kind: 'fused-spur',
    from: tap,
    unit: { fuseA: 13 },
    feeds: points.map((to, i) => ({ from: points[i - 1] ?? 'unit', to })),
  };
}
