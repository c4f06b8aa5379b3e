import { thinPosts } from './thin-posts.ts';
import type { WorkerLike } from './worker-lane.ts';

/** A thread that works out what follows the hand, from a file of its own: the content policy allows no other. */
export const newMovedWorker = (): WorkerLike =>
  thinPosts(new Worker(new URL('./moved-worker.ts', import.meta.url), { type: 'module', name: 'moved' }));
