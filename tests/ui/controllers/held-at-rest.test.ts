import { describe, expect, it } from 'vitest';
import { DocumentSession } from '../../../ui/controllers/document-session.ts';
import type { Held } from '../../../ui/device/kept-copy.ts';

interface Doc {
  readonly at: number;
}

/** A session whose device takes whatever it is given, and a timer that a test lets go off. */
function begin() {
  const held: number[] = [];
  let goOff = (): void => {};
  const device = {
    isHeld: true,
    hold: ({ now }: Held<Doc>) => {
      held.push(now.at);
    },
  };
  let told = 0;
  const session = new DocumentSession<Doc>(
    { value: { at: 0 }, revision: 1, etag: 'one' },
    {
      read: () => Promise.reject(new Error('nobody asks')),
      look: () => Promise.resolve(null),
      save: () => Promise.resolve({ revision: 2, etag: 'two' }),
      device,
    },
    () => {
      told += 1;
    },
    (_, then) => {
      goOff = then;
      return () => {};
    },
  );
  held.length = 0;
  const bring = (at: number, moving: boolean): void =>
    session.edit({
      label: 'Move it',
      group: 'move',
      moving,
      change: (doc) => {
        doc.at = at;
      },
    });
  return { session, held, bring, told: () => told, goOff: () => goOff() };
}

describe('what moves under the hand', () => {
  it('is told at every place, and written down where it comes to rest', () => {
    const { session, held, bring, told } = begin();
    for (const at of [1, 2, 3]) bring(at, true);
    expect([held, told(), session.isHeld]).toEqual([[], 3, false]);
    bring(4, false);
    expect([held, told(), session.isHeld]).toEqual([[4], 4, true]);
    session.undo();
    expect(held.at(-1)).toBe(0);
  });

  it('is written down, too, where it rests at the last place that it was brought to', () => {
    const { session, held, bring } = begin();
    bring(1, true);
    bring(1, false);
    expect([held, session.isHeld, session.undoLabel]).toEqual([[1], true, 'Move it']);
  });

  it('is written down before it is sent where the hand holds still for so long', async () => {
    const { held, bring, goOff } = begin();
    bring(1, true);
    goOff();
    expect(held).toEqual([1]);
  });

  it('is written down where it is taken back while it moves', () => {
    const { session, held, bring } = begin();
    bring(1, true);
    session.undo();
    expect([held, session.isHeld]).toEqual([[0], true]);
  });
});
