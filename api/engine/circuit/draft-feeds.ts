import type { Feed } from '#model/scheme.ts';
import type { LayCable } from './draft-cables.ts';
import { departureNode, nodeToFeed } from './draft-terminals.ts';
import type { NodeId } from './network.ts';
import { draftLinks, type NetworkDraft, reportProblem } from './network-draft.ts';
import { reachedFrom } from './network-graph.ts';

/** Where a connection's feeds begin, and the words that mean that place in a feed's `from`. */
interface FeedStart {
  readonly node: NodeId;
  readonly words: readonly string[];
}

/**
 * Lays the cables of a connection's feeds in their order. Each feed's start must be reached from where the
 * feeds begin; one that is not is laid and reported.
 */
export function layFeeds(
  draft: NetworkDraft,
  connectionId: string,
  { start, feeds, lay }: { start: FeedStart; feeds: readonly Feed[]; lay: LayCable },
): void {
  const laid: { readonly from: NodeId; readonly name: string }[] = [];
  for (const feed of feeds) {
    const from = start.words.includes(feed.from) ? start.node : departureNode(draft, feed.from, feed.to);
    if (from === null) reportProblem(draft, connectionId, 'no-existing-point', feed.from);
    const to = nodeToFeed(draft, connectionId, feed.to);
    if (from === null || to === null) continue;
    lay(from, to);
    laid.push({ from, name: feed.from });
  }
  reportStrayFeeds(draft, connectionId, start.node, laid);
}

function reportStrayFeeds(
  draft: NetworkDraft,
  connectionId: string,
  start: NodeId,
  laid: readonly { from: NodeId; name: string }[],
): void {
  // Not back through the fuse to the supply side: the whole house can be reached from there.
  const links = draftLinks(draft, 'cables-and-fuses');
  const reached = reachedFrom([start], links, ({ edge, other }) => edge.kind !== 'fuse' || edge.to === other);
  const stray = new Set(laid.filter(({ from }) => !reached.has(from)).map(({ name }) => name));
  for (const name of stray) reportProblem(draft, connectionId, 'feed-not-reached', name);
}
