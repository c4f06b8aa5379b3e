import type { Reply, Turn } from '../found-ways/search-asks.ts';
import { type PackAnswer, type PackAsk, packAnswers } from '../outcomes/pack-answers.ts';

// The thread on which outcomes are worked out: a question comes in, plain data goes out.
const thread = globalThis as unknown as {
  onmessage: (event: MessageEvent<Turn<PackAsk>>) => void;
  postMessage: (reply: Reply<PackAnswer>) => void;
};

const answer = packAnswers();

thread.onmessage = ({ data: { turn, ask } }) => {
  try {
    thread.postMessage({ turn, is: 'answer', answer: answer(ask) });
  } catch (error) {
    thread.postMessage({ turn, is: 'trouble', message: String(error) });
  }
};
