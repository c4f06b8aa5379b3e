import type { Connection } from '#model/scheme.ts';
import { cableLayer } from './draft-cables.ts';
import { tapNode } from './draft-taps.ts';
import { nodeToFeed, standingPoint } from './draft-terminals.ts';
import { type NetworkDraft, reportProblem } from './network-draft.ts';

/**
 * Joins a point on by one cable. A wanted fused unit joined so is reported, since a fused spur is the
 * connection that says what lies behind it; its cable is laid all the same.
 */
export function editSpur(draft: NetworkDraft, connection: Extract<Connection, { kind: 'spur' }>): void {
  const { id, from, to } = connection;
  const point = standingPoint(draft, to);
  if (point?.kind === 'fused-unit' && point.status === 'wanted') reportProblem(draft, id, 'unit-by-spur', to);
  const target = nodeToFeed(draft, id, to);
  if (target === null) return;
  const source = tapNode(draft, id, { from, towards: to });
  if (source !== null) cableLayer(draft, connection)(source, target);
}
