import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EditHistory } from '../../../ui/controllers/edit-history.ts';

interface Doc {
  name: string;
  list: { id: number; at: number }[];
}

const start = (): Doc => ({ name: 'a', list: [{ id: 1, at: 0 }] });

describe('an edit history', () => {
  it('takes a whole drag back in one step, and names it', () => {
    const history = new EditHistory<Doc>(start());
    for (const at of [10, 20, 30])
      history.edit({
        label: 'Move 1',
        group: 'drag-1',
        change: (doc) => {
          for (const one of doc.list) one.at = at;
        },
      });
    expect(history.undoLabel).toBe('Move 1');
    history.undo();
    expect(history.now).toEqual(start());
    expect(history.undoLabel).toBeNull();
    history.redo();
    expect(history.now.list[0]?.at).toBe(30);
  });

  it('begins a new step with another group', () => {
    const history = new EditHistory<Doc>(start());
    const rename = (name: string): void => {
      history.edit({
        label: name,
        group: `to ${name}`,
        change: (doc) => {
          doc.name = name;
        },
      });
    };
    rename('b');
    rename('c');
    history.undo();
    expect(history.now.name).toBe('b');
  });

  it('leaves no step for an edit that changes nothing', () => {
    const history = new EditHistory<Doc>(start());
    expect(
      history.edit({
        label: 'none',
        change: (doc) => {
          doc.name = 'a';
        },
      }),
    ).toBe(false);
    expect(history.undoLabel).toBeNull();
  });

  it('agrees with a list of whole states, whatever is edited, undone and done again', () => {
    const act = fc.oneof(
      fc.record({
        act: fc.constant('edit' as const),
        name: fc.string(),
        add: fc.boolean(),
        drop: fc.boolean(),
      }),
      fc.record({ act: fc.constant('undo' as const) }),
      fc.record({ act: fc.constant('redo' as const) }),
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 60 }), (acts) => {
        const history = new EditHistory<Doc>(start());
        let states = [start()];
        let at = 0;
        acts.forEach((one, i) => {
          if (one.act === 'undo') {
            expect(history.undo()).toBe(at > 0);
            at = Math.max(0, at - 1);
          } else if (one.act === 'redo') {
            expect(history.redo()).toBe(at < states.length - 1);
            at = Math.min(states.length - 1, at + 1);
          } else {
            const changed = history.edit({
              label: `edit ${i}`,
              change: (doc) => {
                doc.name = one.name;
                if (one.drop) doc.list.shift();
                if (one.add) doc.list.push({ id: i, at: i });
              },
            });
            if (changed) {
              states = [...states.slice(0, at + 1), structuredClone(history.now)];
              at++;
            }
          }
          expect(history.now).toEqual(states[at]);
        });
      }),
    );
  });
});
