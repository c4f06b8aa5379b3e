import type { Draft } from 'immer';
import type { Asset, Job } from '#model/job.ts';
import type { JobChange, JobEdit, PhotoOf } from '../job-events.ts';

/** Something that photos may be of. */
interface Pictured {
  photos?: string[] | undefined;
}

function thingOf(job: Draft<Job>, of: PhotoOf): Pictured | undefined {
  switch (of.kind) {
    case 'supply':
      return job.supply;
    case 'point':
      return job.points.find(({ id }) => id === of.id);
    case 'board':
      return job.boards.find(({ id }) => id === of.id);
    case 'room':
      return job.storeys.flatMap(({ rooms }) => rooms).find(({ id }) => id === of.id);
  }
}

/** The pictures that something of a job names. */
function namedIn({ storeys, supply, boards, points }: Draft<Job>): ReadonlySet<string> {
  const pictured: readonly Pictured[] = [
    supply,
    ...boards,
    ...points,
    ...storeys.flatMap(({ rooms }) => rooms),
  ];
  const underlays = storeys.flatMap(({ underlay }) => (underlay === undefined ? [] : [underlay.asset]));
  return new Set([...pictured.flatMap(({ photos }) => photos ?? []), ...underlays]);
}

/** Puts a picture on the job's list, unless it is there. */
export function listAsset(job: Draft<Job>, asset: Asset): void {
  if (!job.assets.some(({ id }) => id === asset.id)) job.assets.push({ ...asset });
}

/**
 * Puts a photo to a thing; one that is there already stays once.
 *
 * @param name of the thing, as people know it.
 */
export const addPhoto = (of: PhotoOf, name: string, asset: Asset): JobEdit => ({
  label: `Add a photo of ${name}`,
  change: (job) => {
    const thing = thingOf(job, of);
    if (thing === undefined) return;
    listAsset(job, asset);
    thing.photos = [...new Set([...(thing.photos ?? []), asset.id])];
  },
});

/** Takes a photo from a thing. Its bytes stay where they are while a step back names it. */
export const removePhoto = (of: PhotoOf, name: string, assetId: string): JobEdit => ({
  label: `Remove a photo of ${name}`,
  change: (job) => {
    const thing = thingOf(job, of);
    if (thing?.photos === undefined) return;
    const left = thing.photos.filter((id) => id !== assetId);
    // A point always has a list; of the others one that holds nothing is none.
    if (of.kind === 'point' || left.length > 0) thing.photos = left;
    else delete thing.photos;
  },
});

/**
 * Says what a picture of a thing shows; without words nothing is said of it.
 *
 * @param name of the thing, as people know it.
 */
export const captionPhoto = (name: string, assetId: string, caption: string): JobEdit => ({
  label: `Say what a photo of ${name} shows`,
  change: ({ assets }) => {
    const asset = assets.find(({ id }) => id === assetId);
    if (asset === undefined) return;
    const words = caption.trim();
    if (words === '') delete asset.caption;
    else asset.caption = words;
  },
});

/** A change after which pictures that it left without anything that names them are off the job's list, too. */
export const withoutLoose =
  (change: JobChange): JobChange =>
  (job) => {
    const before = job.assets.length === 0 ? null : namedIn(job);
    change(job);
    if (before === null) return;
    const after = namedIn(job);
    const isLoose = ({ id }: Asset): boolean => before.has(id) && !after.has(id);
    if (job.assets.some(isLoose)) job.assets = job.assets.filter((asset) => !isLoose(asset));
  };
