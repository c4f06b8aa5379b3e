import { describe, expect, it } from 'vitest';
import { WriteQueue } from '../../api/db/write-queue.ts';

const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('WriteQueue', () => {
  it('runs one task at a time, in the order in which they were asked for', async () => {
    const queue = new WriteQueue();
    const order: string[] = [];
    const task = (name: string) => async (): Promise<void> => {
      order.push(`${name} begins`);
      await turn();
      order.push(`${name} ends`);
    };
    await Promise.all([queue.run(task('a')), queue.run(task('b')), queue.run(task('c'))]);
    expect(order).toEqual(['a begins', 'a ends', 'b begins', 'b ends', 'c begins', 'c ends']);
  });

  it('tells who asked that a task failed, and goes on with the next', async () => {
    const queue = new WriteQueue();
    const failing = queue.run(async () => {
      throw new Error('no');
    });
    const next = queue.run(async () => 'yes');
    await expect(failing).rejects.toThrow('no');
    expect(await next).toBe('yes');
  });

  it('is idle once everything asked for is done, failed or not', async () => {
    const queue = new WriteQueue();
    let done = 0;
    const failing = queue.run(async () => {
      await turn();
      done += 1;
      throw new Error('no');
    });
    const caught = expect(failing).rejects.toThrow('no');
    void queue.run(async () => {
      await turn();
      done += 1;
    });
    await queue.idle();
    expect(done).toBe(2);
    await caught;
  });
});
