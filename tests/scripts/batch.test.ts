import { describe, expect, it } from 'vitest';
import type { BatchLine } from '../../scripts/batch/batch-line.ts';
import { standingOf } from '../../scripts/batch/batch-line.ts';
import { inOrder } from '../../scripts/batch/in-order.ts';
import { counted, noneYet, progressWords } from '../../scripts/batch/tally.ts';

const soon = (turns: number): Promise<void> =>
  turns === 0 ? Promise.resolve() : Promise.resolve().then(() => soon(turns - 1));

describe('work in order', () => {
  it('hands on in the order given, whichever is done first, and never takes more than it may ahead', async () => {
    let [taken, handedOn, most] = [0, 0, 0];
    function* numbers(): Generator<number> {
      for (let i = 0; i < 40; i += 1) {
        taken += 1;
        most = Math.max(most, taken - handedOn);
        yield i;
      }
    }
    const done: number[] = [];
    const work = async (i: number): Promise<number> => {
      await soon((i * 7) % 11);
      return i;
    };
    for await (const one of inOrder(numbers(), work, 5)) {
      done.push(one);
      handedOn += 1;
    }
    expect(done).toEqual(Array.from({ length: 40 }, (_, i) => i));
    expect(most).toBe(5);
  });

  it('throws in the turn of what failed, with all before it handed on', async () => {
    const done: number[] = [];
    const all = (async () => {
      const work = async (i: number): Promise<number> => {
        if (i === 3) throw new Error('the fourth');
        await soon(20);
        return i;
      };
      for await (const one of inOrder([0, 1, 2, 3, 4], work, 4)) done.push(one);
    })();
    await expect(all).rejects.toThrow('the fourth');
    expect(done).toEqual([0, 1, 2]);
  });
});

describe('how far a batch has got', () => {
  it('is told with what was there before, what is faulty, the speed and what is left', () => {
    let tally = noneYet;
    for (let i = 0; i < 1000; i += 1) tally = counted(tally, 'goes-ahead', i < 400);
    tally = counted(counted(tally, 'faulty'), 'held');
    expect(progressWords(tally, 4012, 6020)).toBe(
      '1,002 of 4,012 jobs, 400 of an earlier run, 1 faulty, 100 a second, about 30 s left',
    );
    expect(progressWords(counted(noneYet, 'held'), null, 0)).toBe('1 job');
  });

  it('tells jobs apart: one that may go ahead, one that is held, one that cannot be read', () => {
    const head = { at: 'a.json', sha256: '0', by: 'x', date: '2026-11-25' };
    const job = (complies: readonly string[]): BatchLine =>
      ({ ...head, schemes: complies.map((each) => ({ complies: each })) }) as unknown as BatchLine;
    expect([job(['no', 'not-proven']), job(['no']), job([])].map(standingOf)).toEqual([
      'goes-ahead',
      'held',
      'held',
    ]);
    expect(standingOf({ ...head, faults: [] })).toBe('faulty');
  });
});
