import { describe, expect, it } from 'vitest';
import { tinyPng, tinyWebp } from '#tests/http/photos.ts';
import { DRAFT_PHOTOS_NOTE, DraftPhotos } from '../../../ui/controllers/draft-photos.ts';
import { Pictures } from '../../../ui/controllers/pictures.ts';
import { memoryStore } from '../../../ui/device/device-store.ts';

const png = new Blob([tinyPng], { type: 'image/png' });
const webp = new Blob([tinyWebp], { type: 'image/webp' });

/** A device without a connection, whose pages come and go. */
function begin() {
  const store = memoryStore();
  const time = { nowMs: Date.parse('2026-11-27T09:00:00Z') };
  const away = async (): Promise<never> => {
    throw new Error('no connection');
  };
  const page = () => {
    const pictures = new Pictures({
      store: Promise.resolve(store),
      client: { keep: away, read: away },
      wait: () => () => {},
      now: () => new Date(time.nowMs),
    });
    return { pictures, photos: new DraftPhotos(Promise.resolve(store), pictures) };
  };
  return { store, time, page };
}

const namesOf = async (photos: DraftPhotos, jobId: string): Promise<readonly string[]> =>
  (await photos.of(jobId)).map(({ id }) => id);

describe('photos of a variation that is being made', () => {
  it('are there on the next page, in their order, job by job, without a connection', async () => {
    const { page } = begin();
    const first = page();
    const [a, b] = [await first.photos.add('one', png), await first.photos.add('one', webp)];
    const c = await first.photos.add('two', webp);
    const next = page().photos;
    expect(await namesOf(next, 'one')).toEqual([a.id, b.id]);
    expect(await namesOf(next, 'two')).toEqual([c.id]);
    const [shown] = await next.of('one');
    expect(new Uint8Array((await shown?.file.arrayBuffer()) ?? new ArrayBuffer(0))).toEqual(
      new Uint8Array(tinyPng),
    );
    await next.drop('one', a.id);
    expect(await namesOf(page().photos, 'one')).toEqual([b.id]);
    await next.clear('one');
    expect(await namesOf(page().photos, 'one')).toEqual([]);
    expect(await namesOf(page().photos, 'two')).toEqual([c.id]);
  });

  it('are not swept while they wait, and are once nothing names them', async () => {
    const { page, time, store } = begin();
    const { photos, pictures } = page();
    const { id } = await photos.add('one', png);
    time.nowMs += 3_600_000;
    await pictures.sweep();
    expect(await namesOf(photos, 'one')).toEqual([id]);
    await photos.clear('one');
    await pictures.sweep();
    expect(await store.pictures.heads()).toEqual([]);
  });

  it('go with a job that is gone, or has lost its customer', async () => {
    const { page } = begin();
    const { photos } = page();
    const { id } = await photos.add('kept', png);
    await photos.add('gone', webp);
    await photos.onlyOf(new Set(['kept', 'another']));
    expect(await namesOf(photos, 'kept')).toEqual([id]);
    expect(await namesOf(photos, 'gone')).toEqual([]);
  });

  it.each([null, 'text', { one: 'no list' }, { one: [1, null] }])(
    'are none where the device has noted %j',
    async (note) => {
      const { page, store } = begin();
      await store.writeNote(DRAFT_PHOTOS_NOTE, note);
      expect(await page().photos.of('one')).toEqual([]);
    },
  );
});
