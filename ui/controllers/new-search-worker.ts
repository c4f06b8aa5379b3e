import { thinPosts } from './thin-posts.ts';
import type { WorkerLike } from './worker-lane.ts';

/** A thread that searches ways, from a file of its own: the content policy allows no other. */
export const newSearchWorker = (): WorkerLike =>
  thinPosts(new Worker(new URL('./search-worker.ts', import.meta.url), { type: 'module', name: 'search' }));
