import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CopyWriter } from '../../../ui/device/copy-writer.ts';
import { type DeviceStore, memoryStore } from '../../../ui/device/device-store.ts';
import type { Held } from '../../../ui/device/kept-copy.ts';

interface Doc {
  readonly text: string;
}

const heldOf = (text: string): Held<Doc> => ({
  now: { text },
  base: { text: 'start' },
  revision: 1,
  etag: '"1-a"',
  sent: [],
  done: [],
  undone: [],
  unsent: true,
});

const writerOn = (store: DeviceStore, told = (): void => {}): CopyWriter<Doc> =>
  new CopyWriter<Doc>({ store: Promise.resolve(store), name: 'job/a', owner: 'tab' }, told);

async function textsOn(store: DeviceStore): Promise<string[]> {
  const copies = await Promise.all((await store.heads()).map(({ key }) => store.read(key)));
  return copies.flatMap((copy) => (copy === null ? [] : [(copy.held.now as Doc).text]));
}

describe('what writes a document down on the device', () => {
  it('says that it is there only once it is', async () => {
    const store = memoryStore(true);
    const writer = writerOn(store);
    expect(writer.isHeld).toBe(false);
    writer.hold(heldOf('one'));
    expect(writer.isHeld).toBe(false);
    await writer.settled();
    expect(writer.isHeld).toBe(true);
    writer.hold(heldOf('two'));
    expect(writer.isHeld).toBe(false);
    await writer.settled();
    expect(await textsOn(store)).toEqual(['two']);
  });

  it('never says so of a store that goes with the page', async () => {
    const writer = writerOn(memoryStore());
    writer.hold(heldOf('one'));
    await writer.settled();
    expect(writer.isHeld).toBe(false);
  });

  it('says nothing is there when the device refuses, and tries with the next change', async () => {
    const inner = memoryStore(true);
    let full = true;
    const store: DeviceStore = {
      ...inner,
      write: async (copy) => {
        if (full) throw new DOMException('full', 'QuotaExceededError');
        return inner.write(copy);
      },
    };
    let told = 0;
    const writer = writerOn(store, () => {
      told++;
    });
    writer.hold(heldOf('one'));
    await writer.settled();
    expect([writer.isHeld, told]).toEqual([false, 1]);
    full = false;
    writer.hold(heldOf('two'));
    await writer.settled();
    expect([writer.isHeld, told]).toEqual([true, 2]);
    expect(await textsOn(store)).toEqual(['two']);
  });

  it('writes a copy of its own where another tab has taken over the one it wrote', async () => {
    const store = memoryStore(true);
    const writer = writerOn(store);
    writer.hold(heldOf('one'));
    await writer.settled();
    const [head] = await store.heads();
    expect(await store.claim(head?.key ?? '', 'tab', 'other')).toBe(true);
    writer.hold(heldOf('two'));
    await writer.settled();
    expect(writer.isHeld).toBe(true);
    expect((await textsOn(store)).toSorted()).toEqual(['one', 'two']);
  });

  it('is gone from the device with the document, whatever is being written', async () => {
    const store = memoryStore(true);
    const writer = writerOn(store);
    writer.hold(heldOf('one'));
    const dropped = writer.drop();
    writer.hold(heldOf('two'));
    await dropped;
    await writer.settled();
    expect(await textsOn(store)).toEqual([]);
  });

  it('has the newest there in the end, however writing and changing come together, one write at a time', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.nat(3), { minLength: 1, maxLength: 30 }), async (rests) => {
        const inner = memoryStore(true);
        let underWay = 0;
        let most = 0;
        const store: DeviceStore = {
          ...inner,
          write: async (copy) => {
            most = Math.max(most, ++underWay);
            for (let i = 0; i < 3; i++) await Promise.resolve();
            underWay--;
            return inner.write(copy);
          },
        };
        const writer = writerOn(store);
        for (const [i, rest] of rests.entries()) {
          writer.hold(heldOf(`${i}`));
          for (let turn = 0; turn < rest; turn++) await Promise.resolve();
        }
        await writer.settled();
        expect(most).toBe(1);
        expect(writer.isHeld).toBe(true);
        expect(await textsOn(store)).toEqual([`${rests.length - 1}`]);
      }),
    );
  });
});
