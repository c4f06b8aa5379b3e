import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pictureId } from '#archive/picture-id.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { tinyPng, tinyWebp } from '#tests/http/photos.ts';
import { testApp } from '#tests/http/test-app.ts';
import { TestClock } from '#tests/ui/controllers/test-clock.ts';
import { ApiClient } from '../../../ui/controllers/api-client.ts';
import { JobList } from '../../../ui/controllers/job-list.ts';
import { OpenJobs } from '../../../ui/controllers/open-jobs.ts';
import { PictureClient } from '../../../ui/controllers/picture-client.ts';
import { Pictures } from '../../../ui/controllers/pictures.ts';
import { takePhotos } from '../../../ui/controllers/take-photos.ts';
import { memoryStore } from '../../../ui/device/device-store.ts';
import { addPhoto, removePhoto } from '../../../ui/edits/photos.ts';
import { TestDevice } from '../device/tabs.ts';

const job = demoJob('fernlow-close');
const png = new Blob([tinyPng], { type: 'image/png' });
const webp = new Blob([tinyWebp], { type: 'image/webp' });
const MINUTE_MS = 60_000;

/** A server, a line to it that can be cut, and a device whose tabs are opened and closed. */
async function begin(device = new TestDevice()) {
  const { app } = await testApp();
  const line = { cut: false, posts: 0 };
  const api = new ApiClient(async (input, init) => {
    if (line.cut) throw new TypeError('Failed to fetch');
    if (init?.method === 'POST') line.posts++;
    return app.request(String(input), init);
  });
  const time = { nowMs: Date.parse('2026-11-26T09:00:00Z') };
  const tab = () => {
    const { copies, close } = device.tab();
    const clock = new TestClock();
    const client = new PictureClient(api);
    const now = () => new Date(time.nowMs);
    const pictures = new Pictures({ store: copies.store, client, wait: clock.wait, now });
    const jobs = new OpenJobs(api, clock.wait, copies);
    const list = new JobList({ api, jobs, copies, wait: clock.wait });
    return { pictures, jobs, list, clock, close };
  };
  const onServer = async (id: string): Promise<boolean> => (await app.request(`/api/assets/${id}`)).ok;
  return { app, api, line, time, tab, device, onServer };
}

const bytesOf = async (seen: Blob | string): Promise<Uint8Array | string> =>
  typeof seen === 'string' ? seen : new Uint8Array(await seen.arrayBuffer());

describe('how a picture is named', () => {
  it('is its SHA-256, as published and as another library has it', () => {
    // Source: FIPS 180-4, the worked example of "abc" (from memory).
    expect(pictureId(new TextEncoder().encode('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(pictureId(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'));
      }),
    );
  });
});

describe('a picture on the device', () => {
  it('taken without a connection is shown at once, after the page was closed too, and sent then', async () => {
    const { line, tab, onServer } = await begin();
    const one = tab();
    line.cut = true;
    const asset = await one.pictures.keep(png, 'Photo of R1');
    expect(asset).toEqual({
      id: pictureId(tinyPng),
      name: 'Photo of R1',
      mediaType: 'image/png',
      bytes: tinyPng.length,
    });
    await one.clock.settle(0);
    expect([one.pictures.waiting, one.pictures.wouldBeLost]).toEqual([1, false]);
    expect(await bytesOf(await one.pictures.see(asset.id))).toEqual(tinyPng);
    one.close();

    const two = tab();
    expect(await bytesOf(await two.pictures.see(asset.id))).toEqual(tinyPng);
    await two.pictures.send();
    expect([two.pictures.waiting, await onServer(asset.id)]).toEqual([1, false]);
    line.cut = false;
    await two.pictures.send();
    expect([two.pictures.waiting, await onServer(asset.id)]).toEqual([0, true]);
    const { posts } = line;
    await two.pictures.send();
    expect(line.posts).toBe(posts);
  });

  it('that did not get through is tried again by itself', async () => {
    const { line, tab, onServer } = await begin();
    const { pictures, clock } = tab();
    line.cut = true;
    const { id } = await pictures.keep(png, 'One');
    await clock.settle(0);
    line.cut = false;
    await clock.settle(2000);
    expect([await onServer(id), pictures.waiting]).toEqual([true, 0]);
  });

  it('that is put there while another is being sent is sent too', async () => {
    const { tab, onServer } = await begin();
    const { pictures, clock } = tab();
    const both = await Promise.all([pictures.keep(png, 'One'), pictures.keep(webp, 'Two')]);
    await clock.settle(0);
    expect(await Promise.all(both.map(({ id }) => onServer(id)))).toEqual([true, true]);
  });

  it('that the server will not take holds up no other', async () => {
    const { line, tab, onServer } = await begin();
    const { pictures, clock } = tab();
    const bad = await pictures.keep(new Blob(['no picture'], { type: 'image/png' }), 'Bad');
    const good = await pictures.keep(png, 'Good');
    await clock.settle(0);
    expect([await onServer(bad.id), await onServer(good.id)]).toEqual([false, true]);
    const { posts } = line;
    await pictures.send();
    expect(line.posts).toBe(posts);
  });

  it('of another device is fetched once, and there without a connection then', async () => {
    const { api, line, tab } = await begin();
    const { pictures } = tab();
    const id = await new PictureClient(api).keep(png);
    line.cut = true;
    expect(await pictures.see(id)).toBe('away');
    line.cut = false;
    expect(await bytesOf(await pictures.see(id))).toEqual(tinyPng);
    line.cut = true;
    expect(await bytesOf(await pictures.see(id))).toEqual(tinyPng);
    line.cut = false;
    expect(await pictures.see('0'.repeat(64))).toBe('not-there');
  });

  it('would be lost with the page where the device keeps nothing past it', async () => {
    const { line, tab } = await begin(new TestDevice(memoryStore(false)));
    const { pictures, clock } = tab();
    line.cut = true;
    await pictures.keep(png, 'One');
    await clock.settle(0);
    expect(pictures.wouldBeLost).toBe(true);
    line.cut = false;
    await pictures.send();
    expect(pictures.wouldBeLost).toBe(false);
  });

  it('stays while a state or a step back names it, and goes when nothing does', async () => {
    const { api, time, tab, device } = await begin();
    await api.createJob(job);
    const one = tab();
    const session = await one.jobs.open(job.id);
    const asset = await one.pictures.keep(png, 'Photo');
    const loose = await one.pictures.keep(webp, 'Of nothing');
    session.edit(addPhoto({ kind: 'supply' }, 'the supply', asset));
    session.edit(removePhoto({ kind: 'supply' }, 'the supply', asset.id));
    await one.jobs.allWritten();
    await one.pictures.sweep();
    // Both were put there a moment ago.
    expect((await device.store.pictures.heads()).map(({ id }) => id)).toEqual(
      [asset.id, loose.id].toSorted(),
    );
    time.nowMs += 2 * MINUTE_MS;
    await one.pictures.sweep();
    expect((await device.store.pictures.heads()).map(({ id }) => id)).toEqual([asset.id]);
    one.jobs.forget(job.id);
    await one.clock.settle(0);
    await one.pictures.sweep();
    expect(await device.store.pictures.heads()).toEqual([]);
  });

  it('goes from a device that hears that its customer was erased elsewhere', async () => {
    const { app, api, time, tab, device } = await begin();
    await api.createJob(job);
    const one = tab();
    const session = await one.jobs.open(job.id);
    const asset = await one.pictures.keep(png, 'Photo');
    session.edit(addPhoto({ kind: 'supply' }, 'the supply', asset));
    await session.keep('autosave');
    await one.jobs.allWritten();
    const forget = await app.request(`/api/jobs/${job.id}/forget-customer`, {
      method: 'POST',
      headers: { 'if-match': session.etag },
    });
    expect(forget.status).toBe(200);
    time.nowMs += 2 * MINUTE_MS;
    await one.pictures.sweep();
    expect(await device.store.pictures.heads()).toHaveLength(1);
    await one.list.load();
    await one.jobs.allWritten();
    await one.pictures.sweep();
    expect(await device.store.pictures.heads()).toEqual([]);
  });
});

describe('photos that are taken', () => {
  it('are made smaller, kept, and put to their thing one after the other; what cannot be is said', async () => {
    const { tab } = await begin();
    const { pictures } = tab();
    const done: string[] = [];
    const desk = {
      edit: ({ label }: { label: string }) => done.push(label),
      say: (words: string) => done.push(words),
    };
    const files = ['a', 'bad', 'c'].map((name) => new File([name], name));
    const smaller = async (file: Blob): Promise<Blob> => {
      if ((await file.text()) === 'bad') throw new Error('no picture');
      return file;
    };
    await takePhotos({ of: { kind: 'supply' }, name: 'the supply', files }, { pictures, desk, smaller });
    expect(done).toEqual([
      'Add a photo of the supply',
      'The photo was not added: no picture',
      'Add a photo of the supply',
    ]);
  });

  it('are not added where the device has no room', async () => {
    const said: string[] = [];
    const desk = { edit: () => said.push('edited'), say: (words: string) => said.push(words) };
    const keep = async () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    const files = [new File(['a'], 'a')];
    await takePhotos(
      { of: { kind: 'supply' }, name: 'the supply', files },
      { pictures: { keep }, desk, smaller: async (file) => file },
    );
    expect(said).toEqual(['The photo was not added: this device has no room left for it']);
  });
});
