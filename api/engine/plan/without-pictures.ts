import type { Job } from '#model/job.ts';

/** What of a job pictures are in. */
type Pictured = Pick<Job, 'storeys' | 'supply' | 'boards' | 'points' | 'assets'>;

const withoutPhotos = <T extends { readonly photos?: unknown }>({
  photos: _,
  ...rest
}: T): Omit<T, 'photos'> => rest;

/** A job without its photos and underlays: they tell people what was there, and nothing is worked out from them. */
export function withoutPictures<T extends Pictured>(job: T): T {
  return {
    ...job,
    storeys: job.storeys.map(({ underlay: _, ...storey }) => ({
      ...storey,
      rooms: storey.rooms.map(withoutPhotos),
    })),
    supply: withoutPhotos(job.supply),
    boards: job.boards.map(withoutPhotos),
    points: job.points.map((point) => ({ ...point, photos: [] })),
    assets: [],
  };
}
