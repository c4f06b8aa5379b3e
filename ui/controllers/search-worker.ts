import { engineSearcher } from '../found-ways/engine-searcher.ts';
import type { QuestionAsk, SearchAsk, Turn } from '../found-ways/search-asks.ts';
import { SearchTurns } from '../found-ways/search-turns.ts';
import { ChangeTaker, type DataChange } from '../moved/data-changes.ts';

// The thread on which ways are searched: what changed of a question comes in, plain data goes out.
const thread = globalThis as unknown as {
  onmessage: (event: MessageEvent<DataChange>) => void;
  postMessage: (reply: unknown) => void;
};

// A message to itself comes after those that are waiting; a timer would rest 4 ms each time.
const { port1, port2 } = new MessageChannel();
port1.start();

const turns = new SearchTurns(engineSearcher(), {
  post: (reply) => thread.postMessage(reply),
  letIn: () =>
    new Promise((then) => {
      port1.addEventListener('message', () => then(), { once: true });
      port2.postMessage(null);
    }),
  nowMs: () => performance.now(),
});

const asked = new ChangeTaker();

thread.onmessage = ({ data }) => void turns.take(asked.take(data) as Turn<SearchAsk | QuestionAsk>);
