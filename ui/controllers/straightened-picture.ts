import { type Corners, seenRatio, squareTo, straightenRows, straightSize } from '../house/straighten.ts';
import type { Straightening } from '../job-events.ts';
import { canvasOf, drawnPicture, jpegOf } from './smaller-photo.ts';

/** The longer side of a straightened picture, px. */
const MOST_PX = 2000;
/** How long it is worked at before the page gets its turn, ms. */
const TURN_MS = 40;

/** A straightened picture, and how large its rectangle is in it. */
export interface Straightened {
  readonly file: Blob;
  readonly widthPx: number;
  readonly heightPx: number;
}

const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/**
 * Draws a picture anew so that a rectangle on it is one, with a margin round it. The page has its turn between rows.
 *
 * @param told how far it has got, 0 to 1.
 * @returns null where the corners are those of no rectangle.
 */
export async function straightenedPicture(
  file: Blob,
  { corners, widthMm, heightMm }: Straightening,
  told: (done: number) => void,
): Promise<Straightened | null> {
  const project = squareTo(corners);
  if (project === null) return null;
  const bitmap = await drawnPicture(file);
  const source = canvasOf(bitmap.width, bitmap.height);
  const reading = source.getContext('2d', { willReadFrequently: true });
  const ratio = ratioOf(corners, { widthMm, heightMm }, [bitmap.width, bitmap.height]);
  const [width, height] = straightSize(corners, ratio, MOST_PX);
  const target = canvasOf(width, height);
  const writing = target.getContext('2d');
  if (reading === null || writing === null) throw new Error('This browser draws no pictures.');
  reading.drawImage(bitmap, 0, 0);
  bitmap.close();
  const from = reading.getImageData(0, 0, source.width, source.height);
  const to = writing.createImageData(width, height);
  let began = performance.now();
  for (let row = 0; row < height; row++) {
    straightenRows(from, to, project, [row, row + 1]);
    if (performance.now() - began < TURN_MS) continue;
    told(row / height);
    await nextTurn();
    began = performance.now();
  }
  writing.putImageData(to, 0, 0);
  return { file: await jpegOf(target), widthPx: width, heightPx: height };
}

/** As somebody measured both sides, else as the camera saw it. */
function ratioOf(
  corners: Corners,
  { widthMm, heightMm }: Pick<Straightening, 'widthMm' | 'heightMm'>,
  size: readonly [number, number],
): number {
  return widthMm !== null && heightMm !== null ? widthMm / heightMm : seenRatio(corners, size);
}
