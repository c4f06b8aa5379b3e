import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { PointerReader } from '../../../ui/elements/plan/plan-gestures.ts';

/** A pointer's event as far as the reader looks at it; the plan's box begins at 100, 50 on the page. */
const event = (pointerId: number, x: number, y: number): PointerEvent =>
  ({
    pointerId,
    button: 0,
    clientX: 100 + x,
    clientY: 50 + y,
    currentTarget: null,
  }) as unknown as PointerEvent;

/** A reader on a plan with W1, which may be moved, left of x = 50, and R1, which may not, up to x = 100. */
function reader() {
  const told: string[] = [];
  const box = { left: 100, top: 50 } as DOMRect;
  const pointers = new PointerReader(() => box, {
    thingAt: ({ clientX }) => (clientX < 150 ? 'w1' : clientX < 200 ? 'r1' : null),
    isMovable: (subject) => subject === 'w1',
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

  it('leaves what is dragged where it is when the pointer is taken away', () => {
    const { pointers, told } = reader();
    pointers.down(event(1, 20, 0));
    pointers.move(event(1, 40, 0));
    pointers.cancelled(event(1, 0, 0));
    pointers.move(event(1, 60, 0));
    expect(told).toEqual(['begin w1 0 0', 'move w1 20 0', 'end w1 20 0', 'hover 60 0']);
  });

  it('does not tap when the pointer is taken away', () => {
    const { pointers, told } = reader();
    pointers.down(event(1, 20, 0));
    pointers.cancelled(event(1, 20, 0));
    expect(told).toEqual([]);
  });
});
