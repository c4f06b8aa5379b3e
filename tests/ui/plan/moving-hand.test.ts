import { afterEach, describe, expect, it, vi } from 'vitest';
import { planPoint } from '#engine/plan/plane.ts';
import type { Place } from '#model/installation.ts';
import { MovingHand } from '../../../ui/elements/plan/moving-hand.ts';

const place = (alongMm: number): Place => ({ wall: 'a-wall', side: 'left', alongMm, heightMm: 450 });

function hand() {
  const frames = new Map<number, () => void>();
  vi.stubGlobal('requestAnimationFrame', (then: () => void) => {
    const id = frames.size + 1;
    frames.set(id, then);
    return id;
  });
  vi.stubGlobal('cancelAnimationFrame', (id: number) => frames.delete(id));
  const told: (readonly [string, number, string])[] = [];
  const moving = new MovingHand((pointId, at, phase) =>
    told.push([pointId, 'wall' in at ? at.alongMm : Number.NaN, phase]),
  );
  const drawFrame = (): void => {
    const due = [...frames.values()];
    frames.clear();
    for (const then of due) then();
  };
  return { moving, told, drawFrame };
}

describe('a point that is moved', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('is told once a picture, by its newest place', () => {
    const { moving, told, drawFrame } = hand();
    moving.take({ pointId: 'w1', from: planPoint(0, 0), place: place(100) });
    moving.bring(place(110));
    moving.bring(place(120));
    moving.bring(place(130));
    expect(told).toEqual([]);
    drawFrame();
    expect(told).toEqual([['w1', 130, 'move']]);
    drawFrame();
    expect(told).toHaveLength(1);
  });

  it('is told where it was let go, and nothing after that', () => {
    const { moving, told, drawFrame } = hand();
    moving.take({ pointId: 'w1', from: planPoint(0, 0), place: place(100) });
    moving.bring(place(140));
    moving.letGo();
    drawFrame();
    moving.bring(place(150));
    drawFrame();
    moving.letGo();
    expect(told).toEqual([['w1', 140, 'end']]);
    expect(moving.moving).toBeNull();
  });
});
