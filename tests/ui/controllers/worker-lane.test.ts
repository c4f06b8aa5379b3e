import { describe, expect, it } from 'vitest';
import { WorkerLane, type WorkerLike } from '../../../ui/controllers/worker-lane.ts';
import { TestClock } from './test-clock.ts';

class TestWorker implements WorkerLike {
  static made: TestWorker[] = [];
  asked: unknown[] = [];
  ended = false;
  onmessage: ((event: MessageEvent) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  constructor() {
    TestWorker.made.push(this);
  }
  postMessage(message: unknown): void {
    this.asked.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  answer(data: unknown): void {
    this.onmessage?.({ data } as MessageEvent);
  }
  fail(message: string): void {
    this.onerror?.({ message, preventDefault: () => {} } as ErrorEvent);
  }
}

function lane() {
  TestWorker.made = [];
  const clock = new TestClock();
  const one = new WorkerLane<string, string>(
    () => new TestWorker(),
    clock,
    () => {},
  );
  return { clock, one, workers: TestWorker.made };
}

describe('a lane to another thread', () => {
  it('ends a running question for a newer one, whose answer alone is taken', () => {
    const { one, workers } = lane();
    one.ask('first');
    one.ask('second');
    expect(workers.map(({ ended }) => ended)).toEqual([true, false]);
    workers[0]?.answer({ ok: true, answer: 'stale' });
    expect(one.state.answer).toBeNull();
    workers[1]?.answer({ ok: true, answer: 'new' });
    expect(one.state).toEqual({ status: 'done', answer: 'new', trouble: null });
  });

  it('goes on with one thread where nothing runs, so that it needs no connection', () => {
    const { one, workers } = lane();
    one.warm();
    one.ask('first');
    workers[0]?.answer({ ok: true, answer: 'one' });
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
    workers[0]?.answer({ ok: true, answer: 'one' });
    clock.pass(1000);
    expect(one.state.status).toBe('done');
  });

  it('keeps the last answer when a thread fails, says why, and can be asked again', () => {
    const { one, workers } = lane();
    one.ask('first');
    workers[0]?.answer({ ok: true, answer: 'one' });
    one.ask('second');
    workers[0]?.answer({ ok: false, message: 'no such point' });
    expect(one.state).toEqual({ status: 'failed', answer: 'one', trouble: 'no such point' });
    one.ask('third');
    workers[0]?.fail('out of memory');
    expect(one.state).toEqual({ status: 'failed', answer: 'one', trouble: 'out of memory' });
    one.ask('fourth');
    expect(workers).toHaveLength(2);
    workers[1]?.answer({ ok: true, answer: 'four' });
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
    workers[1]?.answer({ ok: true, answer: 'one' });
    expect(one.state.answer).toBe('one');
  });
});
