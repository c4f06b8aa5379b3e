import { describe, expect, it } from 'vitest';
import { pointerWork, type TraceEvent } from '../../scripts/bench/trace-work.ts';

/** An event of the main thread; times in milliseconds of the thread's own work. */
const event = (name: string, fromMs: number, forMs: number, more: Partial<TraceEvent> = {}): TraceEvent => ({
  name,
  ph: 'X',
  pid: 1,
  tid: 1,
  // By the clock everything takes twice as long: the machine does something else as well.
  ts: fromMs * 2000,
  tts: fromMs * 1000,
  tdur: forMs * 1000,
  ...more,
});
const move = (fromMs: number, forMs: number, more: Partial<TraceEvent> = {}): TraceEvent =>
  event('EventDispatch', fromMs, forMs, { args: { data: { type: 'pointermove' } }, ...more });

describe('the work of a movement of the pointer', () => {
  it('is what the thread itself worked from the event to the end of the next commit, by its parts', () => {
    const trace = [
      event('Commit', 18, 1),
      move(10, 2),
      event('FunctionCall', 10.5, 1),
      event('UpdateLayoutTree', 13, 0.5),
      event('Layout', 14, 0.25),
      event('PrePaint', 15, 1),
      event('Paint', 16, 1.5),
    ];
    const [work] = pointerWork(trace);
    expect(work).toEqual({
      wholeMs: 9,
      scriptMs: 2,
      styleMs: 0.5,
      layoutMs: 0.25,
      paintMs: 2.5,
      commitMs: 1,
    });
  });

  it('gives style to the script that asked for it', () => {
    const [work] = pointerWork([move(0, 4), event('Layout', 1, 2), event('Commit', 5, 1)]);
    expect(work).toMatchObject({ wholeMs: 6, scriptMs: 4, layoutMs: 0 });
  });

  it('is none where no commit follows before the next movement, and ends with the first that does', () => {
    const works = pointerWork([
      move(0, 1),
      move(2, 1),
      event('Commit', 4, 1),
      event('Commit', 7, 1),
      move(20, 1),
    ]);
    expect(works.map(({ wholeMs }) => wholeMs)).toEqual([3]);
  });

  it('reads only the thread that the movements are on', () => {
    const works = pointerWork([
      move(0, 1),
      event('Commit', 1.5, 1, { tid: 2 }),
      event('Commit', 3, 1),
      move(50, 1, { pid: 9 }),
      move(10, 1),
      event('Commit', 11, 2),
    ]);
    expect(works.map(({ wholeMs }) => wholeMs)).toEqual([4, 3]);
  });

  it('is nothing in a trace without movements, or without the thread’s own time', () => {
    expect(pointerWork([event('Commit', 0, 1)])).toEqual([]);
    const { tts, tdur, ...bare } = move(0, 1);
    expect([tts, tdur]).toEqual([0, 1000]);
    expect(pointerWork([bare, event('Commit', 2, 1)])).toEqual([]);
  });
});
