import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { HOLD_MS, PointerReader } from '../../../ui/elements/plan/plan-gestures.ts';

/** A pointer's event as far as the reader looks at it; the plan's box begins at 100, 50 on the page. */
const event = (pointerId: number, x: number, y: number, pointerType = 'touch'): PointerEvent =>
  ({
    pointerId,
    pointerType,
    button: 0,
    clientX: 100 + x,
    clientY: 50 + y,
    currentTarget: null,
  }) as unknown as PointerEvent;

/**
 * A reader on a plan with W1, which may be moved, left of x = 50, R1, which may not, up to x = 100, and F1, which a finger has to
 * hold first, from x = 300.
 */
function reader() {
  const told: string[] = [];
  const box = { left: 100, top: 50 } as DOMRect;
  const pointers = new PointerReader(() => box, {
    thingAt: ({ clientX }) => (clientX < 150 ? 'w1' : clientX < 200 ? 'r1' : clientX < 400 ? null : 'f1'),
    gripOf: (subject) => (subject === 'w1' ? 'at-once' : subject === 'f1' ? 'by-hold' : 'none'),
    tapped: (subject, x, y) => told.push(`tap ${subject} ${x} ${y}`),
    panned: (dx, dy) => told.push(`pan ${dx} ${dy}`),
    pinched: (factor, x, y) => told.push(`pinch ${factor.toFixed(2)} ${x} ${y}`),
    dragged: (subject, dx, dy, phase) => told.push(`${phase} ${subject} ${dx} ${dy}`),
    hovered: (x, y) => told.push(`hover ${x} ${y}`),
  });
  return { pointers, told };
}

describe('what a hand does on the plan', () => {
  beforeEach(() => vi.stubGlobal('Element', class {}));
  afterEach(() => vi.unstubAllGlobals());

  it('taps, though it trembles', () => {
    const { pointers, told } = reader();
    pointers.down(event(1, 20, 30));
    pointers.move(event(1, 22, 31));
    pointers.up(event(1, 22, 31));
    pointers.down(event(1, 200, 30));
    pointers.up(event(1, 200, 30));
    expect(told).toEqual(['tap w1 22 31', 'tap null 200 30']);
  });

  it('drags what may be moved, told from where it was taken', () => {
    const { pointers, told } = reader();
    pointers.down(event(1, 20, 30));
    pointers.move(event(1, 30, 30));
    pointers.move(event(1, 45, 20));
    pointers.up(event(1, 45, 20));
    expect(told).toEqual(['begin w1 0 0', 'move w1 10 0', 'move w1 25 -10', 'end w1 25 -10']);
  });

  it('pulls the house along by everything else', () => {
    for (const x of [70, 200]) {
      const { pointers, told } = reader();
      pointers.down(event(1, x, 30));
      pointers.move(event(1, x + 10, 30));
      pointers.move(event(1, x + 12, 33));
      pointers.up(event(1, x + 12, 33));
      expect(told).toEqual(['pan 10 0', 'pan 2 3']);
    }
  });

  it('comes nearer with two fingers, and what was dragged by one stays where it is', () => {
    const { pointers, told } = reader();
    pointers.down(event(1, 20, 0));
    pointers.move(event(1, 40, 0));
    pointers.down(event(2, 140, 0));
    pointers.move(event(2, 240, 0));
    pointers.up(event(2, 240, 0));
    pointers.up(event(1, 40, 0));
    expect(told).toEqual(['begin w1 0 0', 'move w1 20 0', 'end w1 20 0', 'pan 50 0', 'pinch 2.00 140 0']);
  });

  describe('with a thing that a finger has to hold first', () => {
    beforeEach(() => void vi.useFakeTimers());
    afterEach(() => void vi.useRealTimers());

    it('pulls the house along by a swipe over it, however long that takes', () => {
      const { pointers, told } = reader();
      pointers.down(event(1, 320, 30));
      vi.advanceTimersByTime(HOLD_MS - 1);
      pointers.move(event(1, 330, 30));
      vi.advanceTimersByTime(5 * HOLD_MS);
      pointers.move(event(1, 340, 30));
      pointers.up(event(1, 340, 30));
      expect(told).toEqual(['pan 10 0', 'pan 10 0']);
    });

    it('lifts it once it was held, and it goes with the finger', () => {
      const { pointers, told } = reader();
      pointers.down(event(1, 320, 30));
      pointers.move(event(1, 322, 30));
      vi.advanceTimersByTime(HOLD_MS);
      pointers.move(event(1, 350, 30));
      pointers.up(event(1, 350, 30));
      expect(told).toEqual(['begin f1 0 0', 'move f1 30 0', 'end f1 30 0']);
    });

    it('taps it when it was held for less, and lifts nothing later', () => {
      const { pointers, told } = reader();
      pointers.down(event(1, 320, 30));
      vi.advanceTimersByTime(HOLD_MS - 1);
      pointers.up(event(1, 320, 30));
      vi.advanceTimersByTime(HOLD_MS);
      expect(told).toEqual(['tap f1 320 30']);
    });

    it('comes nearer with two fingers, one of them on it, and lifts nothing', () => {
      const { pointers, told } = reader();
      pointers.down(event(1, 320, 0));
      pointers.down(event(2, 220, 0));
      vi.advanceTimersByTime(HOLD_MS);
      pointers.up(event(2, 220, 0));
      pointers.up(event(1, 320, 0));
      expect(told).toEqual([]);
    });

    it('goes with a mouse at once', () => {
      const { pointers, told } = reader();
      pointers.down(event(1, 320, 30, 'mouse'));
      pointers.move(event(1, 330, 30, 'mouse'));
      pointers.up(event(1, 330, 30, 'mouse'));
      expect(told).toEqual(['begin f1 0 0', 'move f1 10 0', 'end f1 10 0']);
    });
  });

  it('leaves what is dragged where it is when the pointer is taken away', () => {
    const { pointers, told } = reader();
    pointers.down(event(1, 20, 0));
    pointers.move(event(1, 40, 0));
    pointers.cancelled(event(1, 0, 0));
    pointers.move(event(1, 60, 0));
    expect(told).toEqual(['begin w1 0 0', 'move w1 20 0', 'end w1 20 0', 'hover 60 0']);
  });

  it('heeds no finger while a pen is down: the hand rests on the glass', () => {
    const { pointers, told } = reader();
    pointers.down(event(1, 20, 0, 'pen'));
    pointers.down(event(2, 200, 80));
    pointers.move(event(2, 220, 90));
    pointers.move(event(1, 40, 0, 'pen'));
    pointers.up(event(2, 220, 90));
    pointers.up(event(1, 40, 0, 'pen'));
    expect(told).toEqual(['begin w1 0 0', 'move w1 20 0', 'end w1 20 0']);
  });

  it('forgets a palm that came before its pen, until it is lifted', () => {
    const { pointers, told } = reader();
    pointers.down(event(2, 200, 80));
    pointers.down(event(1, 20, 0, 'pen'));
    pointers.move(event(2, 260, 80));
    pointers.up(event(1, 20, 0, 'pen'));
    pointers.move(event(2, 280, 80));
    pointers.up(event(2, 280, 80));
    expect(told).toEqual(['tap w1 20 0']);
    pointers.down(event(3, 200, 30));
    pointers.up(event(3, 200, 30));
    expect(told).toEqual(['tap w1 20 0', 'tap null 200 30']);
  });

  it('does not tap when the pointer is taken away', () => {
    const { pointers, told } = reader();
    pointers.down(event(1, 20, 0));
    pointers.cancelled(event(1, 20, 0));
    expect(told).toEqual([]);
  });
});
