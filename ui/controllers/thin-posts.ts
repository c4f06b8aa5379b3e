import { ChangeSender } from '../moved/data-changes.ts';
import type { WorkerLike } from './worker-lane.ts';

/**
 * A thread that is posted only what changed since it was posted something last: a job and a library are large, and one
 * move changes a point of them. On the other side a `ChangeTaker` gives the messages back.
 */
export function thinPosts(worker: WorkerLike): WorkerLike {
  let sender = new ChangeSender();
  return {
    postMessage: (message) => {
      try {
        worker.postMessage(sender.changeTo(message));
      } catch (error) {
        // What did not go out is not known on the other side: the next message goes out whole.
        sender = new ChangeSender();
        throw error;
      }
    },
    terminate: () => worker.terminate(),
    get onmessage() {
      return worker.onmessage;
    },
    set onmessage(then) {
      worker.onmessage = then;
    },
    get onerror() {
      return worker.onerror;
    },
    set onerror(then) {
      worker.onerror = then;
    },
  };
}
