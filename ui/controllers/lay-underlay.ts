import type { Storey, Underlay } from '#model/building.ts';
import type { Asset } from '#model/job.ts';
import { changeUnderlay, FIRST_OPACITY, putUnderlay } from '../edits/underlay.ts';
import { errorWords } from '../error-words.ts';
import { MARGIN } from '../house/straighten.ts';
import type { JobEventDetails } from '../job-events.ts';
import type { JobDesk } from './job-desk.ts';
import type { Pictures } from './pictures.ts';
import { drawnPicture, smallerPhoto } from './smaller-photo.ts';
import { straightenedPicture } from './straightened-picture.ts';

/** What pictures are laid under a plan with. */
export interface LaidWith {
  readonly pictures: Pick<Pictures, 'keep' | 'see'>;
  readonly desk: Pick<JobDesk, 'edit' | 'say' | 'sayInPassing' | 'session'>;
}

/** The longer side of a picture that is traced, px: dimensions on a drawing can be read. */
const LONGEST_PX = 2400;
/** How wide a house's plan is taken to be until it is brought to scale, mm. */
const FIRST_WIDTH_MM = 10_000;

const storeyOf = (desk: LaidWith['desk'], storeyId: string): Storey | undefined =>
  desk.session?.now.storeys.find(({ id }) => id === storeyId);

/** The middle of what is drawn of a storey, else a place where a first room will be. */
function middleOf({ walls }: Storey): [number, number] {
  const ends = walls.flatMap(({ from, to }) => [from, to]);
  if (ends.length === 0) return [FIRST_WIDTH_MM / 2, FIRST_WIDTH_MM / 2];
  const middle = (axis: 0 | 1): number => {
    const all = ends.map((end) => end[axis]);
    return Math.round((Math.min(...all) + Math.max(...all)) / 2);
  };
  return [middle(0), middle(1)];
}

/** Lays a picture under a storey's plan, about as large as a house until it is brought to scale. */
export async function layUnderlay(
  { storeyId, file }: JobEventDetails['underlay-chosen'],
  { pictures, desk }: LaidWith,
): Promise<void> {
  try {
    const smaller = await smallerPhoto(file, LONGEST_PX);
    const bitmap = await drawnPicture(smaller);
    const [widthPx, heightPx] = [bitmap.width, bitmap.height];
    bitmap.close();
    const storey = storeyOf(desk, storeyId);
    if (storey === undefined) return;
    const asset = await pictures.keep(smaller, `Picture under ${storey.name}`);
    const underlay: Underlay = {
      asset: asset.id,
      at: middleOf(storey),
      widthPx,
      heightPx,
      scaleMmPerPx: FIRST_WIDTH_MM / Math.max(widthPx, heightPx),
      angleDeg: 0,
      opacity: FIRST_OPACITY,
    };
    desk.edit(putUnderlay(storey, underlay, asset));
  } catch (error) {
    desk.say(`The picture was not put there: ${errorWords(error)}`);
  }
}

/** How the straightened picture lies: where the old one did, and to scale where a side of the rectangle is known. */
function relaid(
  before: Underlay,
  {
    asset,
    widthPx,
    heightPx,
  }: { readonly asset: Asset; readonly widthPx: number; readonly heightPx: number },
  { widthMm, heightMm }: JobEventDetails['underlay-straightened'],
): Underlay {
  const whole = 1 + 2 * MARGIN;
  const scaleMmPerPx =
    widthMm !== null
      ? widthMm / (widthPx / whole)
      : heightMm !== null
        ? heightMm / (heightPx / whole)
        : (before.widthPx * before.scaleMmPerPx) / widthPx;
  return { ...before, asset: asset.id, widthPx, heightPx, scaleMmPerPx };
}

/** Straightens the picture under a storey's plan: what comes of it takes its place, and undo brings the old one back. */
export async function straightenUnderlay(
  straightening: JobEventDetails['underlay-straightened'],
  { pictures, desk }: LaidWith,
): Promise<void> {
  const { storeyId } = straightening;
  const before = storeyOf(desk, storeyId)?.underlay;
  if (before === undefined) return;
  try {
    const seen = await pictures.see(before.asset);
    if (typeof seen === 'string') throw new Error('the picture is not on this device');
    desk.sayInPassing('Straightening…');
    const made = await straightenedPicture(seen, straightening, (done) =>
      desk.sayInPassing(`Straightening… ${Math.round(done * 100)} %`),
    );
    if (made === null)
      throw new Error('these are the corners of no rectangle: none may lie between the others');
    const storey = storeyOf(desk, storeyId);
    if (storey?.underlay?.asset !== before.asset) return;
    const asset = await pictures.keep(made.file, `Picture under ${storey.name}, straightened`);
    const { label } = changeUnderlay(storey, 'Straighten', {});
    desk.edit({ ...putUnderlay(storey, relaid(before, { ...made, asset }, straightening), asset), label });
  } catch (error) {
    desk.say(`It was not straightened: ${errorWords(error)}`);
  }
}
