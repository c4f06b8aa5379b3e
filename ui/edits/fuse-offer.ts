import type { Connection, Scheme } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';
import { fuseBefore, spursBehind } from './fuse-before.ts';
import { type FoundSpur, mendingOf, mendSpur, spurWith, whyNotMend } from './mend-spur.ts';

/** A fused unit that would come before a spur with too much on it. */
export interface FuseOffer {
  /** Points behind it, the nearest to the unit first; the first names it. */
  readonly pointIds: readonly string[];
  readonly edit: JobEdit;
}

type Spur = Extract<Connection, { kind: 'spur' }>;

/** The spur that a chain of the scheme's spurs begins with. */
function headOf(scheme: Scheme, spur: Spur): Spur {
  const passed = new Set<string>();
  let head = spur;
  while ('point' in head.from && !passed.has(head.id)) {
    passed.add(head.id);
    const { point } = head.from;
    const before = scheme.connections.find((one): one is Spur => one.kind === 'spur' && one.to === point);
    if (before === undefined) return head;
    head = before;
  }
  return head;
}

/**
 * The fused unit that puts right a spur with more than one outlet on it: before the first of the scheme's spurs where
 * they hang on one another, before the old outlet where they hang on an existing spur.
 *
 * @param spurs the spurs as found.
 * @returns null for what is no such spur, and where the old spur's cable is not recorded.
 */
export function fuseOffer(
  scheme: Scheme,
  connection: Connection,
  { spurs, labelOf }: { readonly spurs: readonly FoundSpur[]; readonly labelOf: (id: string) => string },
): FuseOffer | null {
  if (connection.kind !== 'spur') return null;
  const head = headOf(scheme, connection);
  const behind = [head.to, ...spursBehind(scheme, head.to).map(({ to }) => to)];
  const old = 'point' in head.from ? spurWith(spurs, head.from.point) : null;
  if (old !== null && mendingOf(scheme, old) === null) {
    if (whyNotMend(old, 'fuse') !== null) return null;
    const name = old.pointIds.map(labelOf).join(', ');
    return { pointIds: [...old.pointIds, ...behind], edit: mendSpur(scheme, old, 'fuse', name) };
  }
  if (behind.length < 2) return null;
  return { pointIds: behind, edit: fuseBefore(scheme, head.id, labelOf(head.to)) };
}
