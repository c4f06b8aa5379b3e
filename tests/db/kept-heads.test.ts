import { describe, expect, it } from 'vitest';
import { KeptHeads } from '../../api/db/kept-heads.ts';
import type { StoredText } from '../../api/db/stores.ts';

const stored = (text: string, revision = 1): StoredText => ({
  text,
  revision,
  tag: 't',
  savedAt: '2026-11-25T09:00:00Z',
});

/** A store's state and texts, and how often one was fetched. */
function store() {
  const texts = new Map<string, StoredText>();
  const heads = new KeptHeads({ state: () => Promise.resolve(now.state) });
  const now = { state: 'first' as string | null, fetched: 0 };
  const read = (id: string): Promise<StoredText | null> =>
    heads.read(id, async () => {
      now.fetched += 1;
      return texts.get(id) ?? null;
    });
  return { texts, now, read };
}

describe('the texts last read', () => {
  it('are fetched once for as long as nothing is written, and anew after that', async () => {
    const { texts, now, read } = store();
    texts.set('a', stored('one'));
    expect([(await read('a'))?.text, (await read('a'))?.text, now.fetched]).toEqual(['one', 'one', 1]);
    texts.set('a', stored('two', 2));
    now.state = 'second';
    expect([(await read('a'))?.text, now.fetched]).toEqual(['two', 2]);
    texts.delete('a');
    now.state = 'third';
    expect([await read('a'), await read('a'), now.fetched]).toEqual([null, null, 4]);
  });

  it('do not hold where something was written while they were fetched', async () => {
    const now = { state: 'before' };
    const heads = new KeptHeads({ state: () => Promise.resolve(now.state) });
    await heads.read('a', async () => {
      now.state = 'after';
      return stored('old');
    });
    expect((await heads.read('a', async () => stored('new')))?.text).toBe('new');
  });

  it('are fetched each time where nobody can tell what others write', async () => {
    const { texts, now, read } = store();
    now.state = null;
    texts.set('a', stored('one'));
    await read('a');
    await read('a');
    expect(now.fetched).toBe(2);
  });

  it('take no more room than they may: the oldest goes, and what is larger than all', async () => {
    const { texts, now, read } = store();
    texts.set('a', stored('a'.repeat(5_000_000)));
    texts.set('b', stored('b'.repeat(5_000_000)));
    texts.set('c', stored('c'.repeat(9_000_000)));
    for (const id of ['a', 'b', 'b', 'a']) await read(id);
    expect(now.fetched).toBe(3);
    await read('c');
    await read('c');
    expect(now.fetched).toBe(5);
  });
});
