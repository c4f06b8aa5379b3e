import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { withoutCustomer } from '#engine/quotation/erasure.ts';
import { readJob } from '#model/read-job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { EditHistory } from '../../../ui/controllers/edit-history.ts';
import { addPhoto, captionPhoto, removePhoto, withoutLoose } from '../../../ui/edits/photos.ts';
import { removePoint } from '../../../ui/edits/remove-things.ts';
import type { JobEdit, PhotoOf } from '../../../ui/job-events.ts';

const job = demoJob('fernlow-close');
const point = job.points[0];
const board = job.boards[0];
const room = job.storeys[0]?.rooms[0];
if (point === undefined || board === undefined || room === undefined)
  throw new Error('The demo job is bare.');
const asset = { id: 'ab'.repeat(32), name: 'Photo of R1', mediaType: 'image/jpeg', bytes: 9 };
const places: readonly PhotoOf[] = [
  { kind: 'point', id: point.id },
  { kind: 'board', id: board.id },
  { kind: 'room', id: room.id },
  { kind: 'supply' },
];
const made = ({ label, change }: JobEdit): JobEdit => ({ label, change: withoutLoose(change) });

describe('a photo of a thing', () => {
  it.each(places)('of $kind is put there, can be read, and is gone whole once it is removed', (of) => {
    const added = produce(job, made(addPhoto(of, 'it', asset)).change);
    expect(readJob(added)).toMatchObject({ ok: true });
    expect(added.assets).toContainEqual(asset);
    expect(JSON.stringify(added).split(asset.id)).toHaveLength(3);
    const removed = produce(added, made(removePhoto(of, 'it', asset.id)).change);
    expect(removed).toEqual(job);
  });

  it('says what it shows, until the words are taken out, and takes them along when it goes', () => {
    const of: PhotoOf = { kind: 'supply' };
    const added = produce(job, addPhoto(of, 'the supply', asset).change);
    const told = produce(added, captionPhoto('the supply', asset.id, '  Seal is broken ').change);
    expect(told.assets).toContainEqual({ ...asset, caption: 'Seal is broken' });
    expect(readJob(told)).toMatchObject({ ok: true });
    // Put to another thing, too, it still shows the same.
    const twice = produce(told, addPhoto({ kind: 'board', id: board.id }, 'it', asset).change);
    expect(twice.assets).toEqual(told.assets);
    expect(produce(told, captionPhoto('the supply', asset.id, ' ').change)).toEqual(added);
    expect(produce(added, captionPhoto('the supply', 'nowhere', 'x').change)).toEqual(added);
    expect(produce(told, made(removePhoto(of, 'the supply', asset.id)).change)).toEqual(job);
    expect(JSON.stringify(withoutCustomer(told))).not.toContain('Seal');
  });

  it('put there twice is there once', () => {
    const edit = addPhoto({ kind: 'supply' }, 'the supply', asset);
    const twice = produce(produce(job, edit.change), edit.change);
    expect(twice.supply.photos).toEqual([asset.id]);
    expect(twice.assets.filter(({ id }) => id === asset.id)).toHaveLength(1);
  });

  it('stays on the list while another thing has it, and goes with the last', () => {
    const both = places.slice(0, 2).reduce((now, of) => produce(now, addPhoto(of, 'it', asset).change), job);
    const one = produce(both, made(removePoint(point)).change);
    expect(one.assets).toContainEqual(asset);
    const none = produce(one, made(removePhoto({ kind: 'board', id: board.id }, 'it', asset.id)).change);
    expect(none.assets).not.toContainEqual(asset);
    expect(readJob(none)).toMatchObject({ ok: true });
  });

  it('comes back by undo, and is named by the step back meanwhile', () => {
    const history = new EditHistory(produce(job, addPhoto({ kind: 'supply' }, 'the supply', asset).change));
    history.edit(made(removePhoto({ kind: 'supply' }, 'the supply', asset.id)));
    expect(JSON.stringify(history.now)).not.toContain(asset.id);
    expect(JSON.stringify(history.steps)).toContain(asset.id);
    history.undo();
    expect(history.now.supply.photos).toEqual([asset.id]);
    expect(history.now.assets).toContainEqual(asset);
  });

  it('leaves a picture that nothing named before alone', () => {
    const loose = { ...job, assets: [asset] };
    expect(produce(loose, made(removePoint(point)).change).assets).toEqual([asset]);
  });
});
