import { describe, expect, it } from 'vitest';
import { type Running, WorkerLane, type WorkerLike } from '../../../ui/controllers/worker-lane.ts';
import { TestClock } from './test-clock.ts';

class TestWorker implements WorkerLike {
  static made: TestWorker[] = [];
  asked: { readonly turn: number; readonly ask: string }[] = [];
  ended = false;
  onmessage: ((event: MessageEvent) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  constructor() {
    TestWorker.made.push(this);
  }
  postMessage(message: unknown): void {
    this.asked.push(message as { turn: number; ask: string });
  }
  terminate(): void {
    this.ended = true;
  }
  /** Sends a reply to the question that it was asked last, or to another. */
  answer(reply: object, turn = this.asked.at(-1)?.turn): void {
    this.onmessage?.({ data: { turn, ...reply } } as MessageEvent);
  }
  fail(message: string): void {
    this.onerror?.({ message, preventDefault: () => {} } as ErrorEvent);
  }
}

function lane(running: Running = 'ended') {
  TestWorker.made = [];
  const clock = new TestClock();
  const one = new WorkerLane<string, string, string>(
    () => new TestWorker(),
    clock,
    () => {},
    running,
  );
  return { clock, one, workers: TestWorker.made };
}

describe('a lane to another thread', () => {
  it('ends a running question for a newer one, whose answer alone is taken', () => {
    const { one, workers } = lane();
    one.ask('first');
    one.ask('second');
    expect(workers.map(({ ended }) => ended)).toEqual([true, false]);
    workers[0]?.answer({ is: 'answer', answer: 'stale' });
    expect(one.state.answer).toBeNull();
    workers[1]?.answer({ is: 'answer', answer: 'new' });
    expect(one.state).toEqual({ status: 'done', answer: 'new', first: null, trouble: null });
  });

  it('goes on with one thread where nothing runs, so that it needs no connection', () => {
    const { one, workers } = lane();
    one.warm();
    one.ask('first');
    workers[0]?.answer({ is: 'answer', answer: 'one' });
    one.ask('second');
    expect(workers).toHaveLength(1);
    expect(one.state).toMatchObject({ status: 'working', answer: 'one' });
  });

  it('says after half a second that it takes a while, and not before', () => {
    const { clock, one, workers } = lane();
    one.ask('first');
    clock.pass(499);
    expect(one.state.status).toBe('working');
    clock.pass(1);
    expect(one.state.status).toBe('slow');
    workers[0]?.answer({ is: 'answer', answer: 'one' });
    clock.pass(1000);
    expect(one.state.status).toBe('done');
  });

  it('keeps the last answer when a thread fails, says why, and can be asked again', () => {
    const { one, workers } = lane();
    one.ask('first');
    workers[0]?.answer({ is: 'answer', answer: 'one' });
    one.ask('second');
    workers[0]?.answer({ is: 'trouble', message: 'no such point' });
    expect(one.state).toEqual({ status: 'failed', answer: 'one', first: null, trouble: 'no such point' });
    one.ask('third');
    workers[0]?.fail('out of memory');
    expect(one.state).toEqual({ status: 'failed', answer: 'one', first: null, trouble: 'out of memory' });
    one.ask('fourth');
    expect(workers).toHaveLength(2);
    workers[1]?.answer({ is: 'answer', answer: 'four' });
    expect(one.state.answer).toBe('four');
  });

  it('made in advance and not starting is made again when it is wanted', () => {
    const { one, workers } = lane();
    one.warm();
    workers[0]?.fail('');
    expect(one.state.status).toBe('idle');
    one.warm();
    expect(workers).toHaveLength(1);
    one.ask('first');
    workers[1]?.answer({ is: 'answer', answer: 'one' });
    expect(one.state.answer).toBe('one');
  });
});

describe('a lane whose thread leaves what is overtaken by itself', () => {
  const asks = (worker: TestWorker | undefined) => worker?.asked.map(({ ask }) => ask);

  it('asks the newest once the thread has said something to the last, and no question in between', () => {
    const { one, workers } = lane('overtaken');
    for (const ask of ['first', 'second', 'third']) one.ask(ask);
    expect(asks(workers[0])).toEqual(['first']);
    workers[0]?.answer({ is: 'first', first: 'ahead' });
    expect(one.state).toMatchObject({ status: 'working', answer: null, first: 'ahead' });
    expect(asks(workers[0])).toEqual(['first', 'third']);
    expect(workers).toHaveLength(1);
  });

  it('takes nothing that comes to an older question, and keeps its thread', () => {
    const { one, workers } = lane('overtaken');
    one.ask('first');
    workers[0]?.answer({ is: 'first', first: 'ahead' });
    one.ask('second');
    workers[0]?.answer({ is: 'answer', answer: 'stale' }, workers[0].asked[0]?.turn);
    expect(one.state).toMatchObject({ status: 'working', answer: null });
    workers[0]?.answer({ is: 'answer', answer: 'new' });
    expect(one.state).toEqual({ status: 'done', answer: 'new', first: null, trouble: null });
    expect(workers.map(({ ended }) => ended)).toEqual([false]);
  });

  it('shows an answer that a newer question waits for, and goes on working', () => {
    const { clock, one, workers } = lane('overtaken');
    one.ask('first');
    clock.pass(300);
    one.ask('second');
    workers[0]?.answer({ is: 'answer', answer: 'one' });
    expect(one.state).toMatchObject({ status: 'working', answer: 'one' });
    clock.pass(200);
    expect(one.state.status).toBe('slow');
    workers[0]?.answer({ is: 'answer', answer: 'two' });
    expect(one.state).toMatchObject({ status: 'done', answer: 'two' });
  });

  it('asks the newest where the one before failed, and says so only of the newest', () => {
    const { one, workers } = lane('overtaken');
    one.ask('first');
    one.ask('second');
    workers[0]?.answer({ is: 'trouble', message: 'no such point' });
    expect(one.state).toMatchObject({ status: 'working', trouble: null });
    workers[0]?.answer({ is: 'trouble', message: 'nor such' });
    expect(one.state).toMatchObject({ status: 'failed', trouble: 'nor such' });
  });
});
