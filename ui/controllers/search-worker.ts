import { engineSearcher } from '../found-ways/engine-searcher.ts';
import type { QuestionAsk, Reply, SearchAsk } from '../found-ways/search-asks.ts';
import { answerAsk } from '../found-ways/searcher.ts';

// The thread on which ways are searched: a question comes in, plain data goes out.
const thread = globalThis as unknown as {
  onmessage: (event: MessageEvent<SearchAsk | QuestionAsk>) => void;
  postMessage: (reply: Reply<unknown>) => void;
};

thread.onmessage = ({ data }) => {
  try {
    thread.postMessage({ ok: true, answer: answerAsk(engineSearcher, data) });
  } catch (error) {
    thread.postMessage({ ok: false, message: error instanceof Error ? error.message : String(error) });
  }
};
