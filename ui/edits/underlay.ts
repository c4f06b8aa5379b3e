import type { Storey, Underlay } from '#model/building.ts';
import type { Asset } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';
import { listAsset } from './photos.ts';

type Named = Pick<Storey, 'id' | 'name'>;

/** How much of a picture is seen at first: what is drawn over it stands out. */
export const FIRST_OPACITY = 0.5;

/** Puts a picture under a storey's plan, in the place of one that was there. */
export const putUnderlay = ({ id, name }: Named, underlay: Underlay, asset: Asset): JobEdit => ({
  label: `Put a picture under ${name}`,
  change: (job) => {
    const storey = job.storeys.find((each) => each.id === id);
    if (storey === undefined) return;
    listAsset(job, asset);
    storey.underlay = { ...underlay, at: [...underlay.at] };
  },
});

/**
 * Changes how a storey's picture lies or is seen.
 *
 * @param what is done, as undo names it: "Turn".
 */
export const changeUnderlay = ({ id, name }: Named, what: string, part: Partial<Underlay>): JobEdit => ({
  label: `${what} the picture under ${name}`,
  change: ({ storeys }) => {
    const underlay = storeys.find((each) => each.id === id)?.underlay;
    if (underlay === undefined) return;
    Object.assign(underlay, part, part.at === undefined ? {} : { at: [...part.at] });
  },
});

/** Puts a storey's picture out of sight, or back. */
export const hideUnderlay = ({ id, name }: Named, isHidden: boolean): JobEdit => ({
  label: `${isHidden ? 'Hide' : 'Show'} the picture under ${name}`,
  change: ({ storeys }) => {
    const underlay = storeys.find((each) => each.id === id)?.underlay;
    if (underlay === undefined) return;
    if (isHidden) underlay.hidden = true;
    else delete underlay.hidden;
  },
});

/** Takes a storey's picture away; its bytes stay while a step back names it. */
export const removeUnderlay = ({ id, name }: Named): JobEdit => ({
  label: `Remove the picture under ${name}`,
  change: ({ storeys }) => {
    const storey = storeys.find((each) => each.id === id);
    if (storey !== undefined) delete storey.underlay;
  },
});
