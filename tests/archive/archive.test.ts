import fc from 'fast-check';
import JSZip from 'jszip';
import { describe, expect, it } from 'vitest';
import { archiveBounds, entryOfPicture } from '#archive/archive-entries.ts';
import { pictureId } from '#archive/picture-id.ts';
import { type ReadArchive, readArchive } from '#archive/read-archive.ts';
import { writeArchive } from '#archive/write-archive.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { tinyPng, tinyWebp } from '#tests/http/photos.ts';

const pngId = pictureId(tinyPng);
const webpId = pictureId(tinyWebp);
const job: Job = {
  ...demoJob('fernlow-close'),
  assets: [
    {
      id: pngId,
      name: 'Photo of R1',
      mediaType: 'image/png',
      bytes: tinyPng.length,
      caption: 'Burnt behind the plate',
    },
    { id: webpId, name: 'Photo of the board', mediaType: 'image/webp', bytes: tinyWebp.length },
  ],
};
// Indented as nobody else does it: to the byte means that it stays so.
const jobText = JSON.stringify(job, null, 3);
const pngEntry = entryOfPicture(pngId, 'image/png');
const webpEntry = entryOfPicture(webpId, 'image/webp');

type Content = string | Uint8Array;

/** An archive as somebody else may have packed it. */
async function packed(files: Readonly<Record<string, Content>>): Promise<Uint8Array> {
  const archive = new JSZip();
  for (const [name, content] of Object.entries(files)) archive.file(name, content, { createFolders: false });
  return archive.generateAsync({ type: 'uint8array', compression: 'DEFLATE' });
}

const whole = { 'job.json': jobText, [pngEntry]: tinyPng, [webpEntry]: tinyWebp };

/** What is said of an archive that is not read: where and what. */
const faultIn = (read: ReadArchive): string =>
  read.ok
    ? 'read'
    : read.what === 'job'
      ? `job: ${read.faults[0]?.code}`
      : `${read.fault.path}: ${read.fault.message}`;

/** The bytes of an archive with a word in it replaced by one as long, wherever it stands. */
function withName(bytes: Uint8Array, from: string, to: string): Uint8Array {
  expect(to).toHaveLength(from.length);
  const text = Buffer.from(bytes).toString('latin1').replaceAll(from, to);
  return new Uint8Array(Buffer.from(text, 'latin1'));
}

describe('a job with its pictures as one archive', () => {
  it('comes back to the byte', async () => {
    const read = await readArchive(await writeArchive(jobText, [tinyPng, tinyWebp], 'Maker'));
    if (!read.ok) throw new Error(faultIn(read));
    expect([read.jobText, read.job, read.missing]).toEqual([jobText, job, []]);
    expect(new Map(read.pictures.map(({ id, bytes }) => [id, bytes]))).toEqual(
      new Map([
        [pngId, tinyPng],
        [webpId, tinyWebp],
      ]),
    );
    expect(read.pictures.map(({ mediaType }) => mediaType).toSorted()).toEqual(['image/png', 'image/webp']);
  });

  it('is the same archive however often it is made, and in whatever order the pictures come', async () => {
    const one = await writeArchive(jobText, [tinyPng, tinyWebp], 'Maker');
    expect(await writeArchive(jobText, [tinyWebp, tinyPng, tinyWebp], 'Maker')).toEqual(one);
    const read = await readArchive(one);
    if (!read.ok) throw new Error(faultIn(read));
    expect(
      await writeArchive(
        read.jobText,
        read.pictures.map(({ bytes }) => bytes),
        'Maker',
      ),
    ).toEqual(one);
  });

  it('is read as other programs pack it, folders and all', async () => {
    const archive = new JSZip();
    for (const [name, content] of Object.entries(whole)) archive.file(name, content);
    const read = await readArchive(await archive.generateAsync({ type: 'uint8array' }));
    expect(faultIn(read)).toBe('read');
  });

  it('names what is missing, in the job’s order, and leaves out what the job does not name', async () => {
    const read = await readArchive(await packed({ 'job.json': jobText }));
    if (!read.ok) throw new Error(faultIn(read));
    expect(read.missing.map(({ name }) => name)).toEqual(['Photo of R1', 'Photo of the board']);
    const bare = JSON.stringify({ ...job, assets: [] });
    const more = await readArchive(await packed({ ...whole, 'job.json': bare }));
    if (!more.ok) throw new Error(faultIn(more));
    expect([more.pictures, more.missing]).toEqual([[], []]);
  });
});

describe('an archive that is not as it should be', () => {
  it.each<[string, Readonly<Record<string, Content>>, string]>([
    ['no job file', { [pngEntry]: tinyPng }, 'file: no job file is in it: job.json'],
    [
      'two job files',
      { ...whole, 'other.json': jobText },
      'other.json: it is a second job file beside job.json',
    ],
    ['a file of its own', { ...whole, 'readme.txt': 'x' }, 'readme.txt: a job’s archive has no such file'],
    ['a folder above', { 'job/job.json': jobText }, 'job/job.json: a job’s archive has no such file'],
    [
      'a picture under another hash',
      { 'job.json': jobText, [entryOfPicture('0'.repeat(64), 'image/png')]: tinyPng },
      `assets/${'0'.repeat(64)}.png: it is not the picture that its name says: it was changed or damaged`,
    ],
    [
      'what is no picture, under its true hash',
      { 'job.json': jobText, [entryOfPicture(pictureId(Buffer.from('<script>')), 'image/png')]: '<script>' },
      `assets/${pictureId(Buffer.from('<script>'))}.png: it is no picture of the kind that its name says`,
    ],
    [
      'a picture of another kind',
      { 'job.json': jobText, [entryOfPicture(pngId, 'image/jpeg')]: tinyPng },
      `assets/${pngId}.jpg: it is no picture of the kind that its name says`,
    ],
    ['a job that cannot be read', { ...whole, 'job.json': '{"format":"ringwright-job"}' }, 'job: missing'],
    [
      'a job of a newer version',
      { ...whole, 'job.json': JSON.stringify({ ...job, version: 99 }) },
      'job: newer-version',
    ],
    [
      'a job that is no text',
      { ...whole, 'job.json': new Uint8Array([0xff, 0xfe, 0x7b]) },
      'job.json: it is no text in UTF-8',
    ],
  ])('with %s says which entry', async (_, files, said) => {
    expect(faultIn(await readArchive(await packed(files)))).toBe(said);
  });

  it.each(['../../etc/x.json', 'assets/../../../job.png', '/assets/../../up.txt', 'C:\\Windows\\job.txt'])(
    'with the path %s is not read',
    async (path) => {
      const name = 'a'.repeat(path.length);
      const bytes = withName(await packed({ ...whole, [name]: 'x' }), name, path);
      const said = faultIn(await readArchive(bytes));
      expect(said).not.toBe('read');
      expect(said).toContain(path.replace('C:\\', ''));
    },
  );

  it('with two files of one name is not read, whichever would win', async () => {
    const bytes = withName(await packed({ ...whole, 'jab.json': '{}' }), 'jab.json', 'job.json');
    expect(faultIn(await readArchive(bytes))).toBe('file: two files of one name are in it, or it is damaged');
  });

  it('that unpacks to more than is read is stopped, whatever it says of its size', async () => {
    const many = ' '.repeat(archiveBounds.jobBytes + 1);
    const bomb = await packed({ ...whole, 'job.json': many });
    expect(bomb.length).toBeLessThan(100_000);
    expect(faultIn(await readArchive(bomb))).toBe('job.json: unpacked it is larger than 8 MB');
    const picture = await packed({ ...whole, [pngEntry]: new Uint8Array(archiveBounds.pictureBytes + 1) });
    expect(faultIn(await readArchive(picture))).toBe(`${pngEntry}: unpacked it is larger than 6 MB`);
  });

  it('of more entries than are read is refused before they are', async () => {
    const files = Object.fromEntries(
      Array.from({ length: archiveBounds.entries + 1 }, (_, i) => [`x${i}`, '']),
    );
    const bytes = await packed(files);
    const said = 'file: more than 2000 files are in it';
    expect(faultIn(await readArchive(bytes))).toBe(said);
    // It says that there is one.
    const liar = new Uint8Array(bytes);
    new DataView(liar.buffer).setUint16(liar.length - 22 + 10, 1, true);
    expect(faultIn(await readArchive(liar))).toBe(said);
  });

  it('cut off, empty or of something else is called damaged', async () => {
    const bytes = await packed(whole);
    for (const part of [
      bytes.subarray(0, bytes.length - 30),
      new Uint8Array(0),
      Buffer.from('PK\u0003\u0004 not'),
    ])
      expect(faultIn(await readArchive(new Uint8Array(part)))).toMatch(/^file: /);
  });

  it('never ends in anything but an answer, and never in another job, with a byte changed anywhere', async () => {
    const bytes = await writeArchive(jobText, [tinyPng, tinyWebp], 'Maker');
    await fc.assert(
      fc.asyncProperty(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), async (at, by) => {
        const changed = new Uint8Array(bytes);
        changed[at] = ((changed[at] ?? 0) + by) % 256;
        const read = await readArchive(changed);
        for (const { id, bytes: content } of read.ok ? read.pictures : [])
          expect(pictureId(content)).toBe(id);
      }),
      { numRuns: 60 },
    );
  });
});
