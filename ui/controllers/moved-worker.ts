import type { DataChange } from '../moved/data-changes.ts';
import { MovedTurns } from '../moved/moved-turns.ts';

// The thread on which what follows the hand is worked out and drawn: what changed comes in, what changed goes out.
const thread = globalThis as unknown as {
  onmessage: (event: MessageEvent<DataChange>) => void;
  postMessage: (reply: unknown) => void;
};

const turns = new MovedTurns();

thread.onmessage = ({ data }) => thread.postMessage(turns.take(data));
