import type { Connection } from '#model/scheme.ts';
import { cableLayer } from './draft-cables.ts';
import { layFeeds } from './draft-feeds.ts';
import { tapNode } from './draft-taps.ts';
import { isFed, unitNodes } from './draft-terminals.ts';
import { type NetworkDraft, reportProblem } from './network-draft.ts';

type FusedSpur = Extract<Connection, { kind: 'fused-spur' }>;

/**
 * Joins a fused unit on by one cable and lays what lies behind it. A unit that is there already keeps its
 * supply: named as its own tap it is simply carried on from, otherwise the second supply is reported and
 * left out.
 */
export function editFusedSpur(draft: NetworkDraft, connection: FusedSpur): void {
  const { id, unit, feeds } = connection;
  const nodes = unitNodes(draft, connection, null);
  if (!nodes) return;
  const lay = cableLayer(draft, connection);
  joinUnit(draft, connection, nodes.supply, lay);
  const words = typeof unit === 'string' ? ['unit', unit] : ['unit'];
  layFeeds(draft, id, { start: { node: nodes.load, words }, feeds, lay });
}

function joinUnit(
  draft: NetworkDraft,
  { id, from, unit }: FusedSpur,
  supply: string,
  lay: (from: string, to: string) => void,
): void {
  const isOwnTap = 'point' in from && from.point === unit;
  if (isFed(draft, supply)) {
    if (!isOwnTap) reportProblem(draft, id, 'already-connected', supply);
    return;
  }
  if (isOwnTap) {
    reportProblem(draft, id, 'nothing-to-connect', supply);
    return;
  }
  const source = tapNode(draft, id, { from, towards: typeof unit === 'string' ? unit : null });
  if (source === null) return;
  draft.fed.add(supply);
  lay(source, supply);
}
