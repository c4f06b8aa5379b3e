import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { rehearse } from '../../../ui/elements/plan/rehearsal.ts';

describe('a movement gone through before a hand makes it', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('is gone through time after time, never in the call that asks for it, and comes to an end', () => {
    const times: number[] = [];
    rehearse(
      (time) => times.push(time),
      () => false,
    );
    expect(times).toEqual([]);
    vi.advanceTimersToNextTimer();
    expect(times).toEqual([0]);
    vi.runAllTimers();
    expect(times).toEqual(Array.from({ length: times.length }, (_, i) => i));
    expect(times.length).toBeGreaterThan(5);
    expect(vi.getTimerCount()).toBe(0);
  });

  it('is left off when its tool is put away, also between two times', () => {
    const times: number[] = [];
    const leaveOff = rehearse(
      (time) => times.push(time),
      () => false,
    );
    vi.advanceTimersToNextTimer();
    leaveOff();
    vi.runAllTimers();
    expect(times).toEqual([0]);
  });

  it('is left off for good once a hand is at work', () => {
    const times: number[] = [];
    let isAtWork = false;
    rehearse(
      (time) => times.push(time),
      () => isAtWork,
    );
    vi.advanceTimersToNextTimer();
    isAtWork = true;
    vi.advanceTimersToNextTimer();
    isAtWork = false;
    vi.runAllTimers();
    expect(times).toEqual([0]);
    expect(vi.getTimerCount()).toBe(0);
  });
});
