/** The longer side of a photo as it is sent, px: a cracked wall and a terminal can be made out. */
const LONGEST_PX = 1600;
const QUALITY = 0.82;

/** Thrown for a file that this browser cannot draw as a picture; its message is for people. */
export class NoPicture extends Error {
  override readonly name = 'NoPicture';
}

const unreadable = (): NoPicture =>
  new NoPicture(
    'This browser cannot open that file as a picture. Choose a JPEG, a PNG or a WebP, or take the photo anew.',
  );

/** A file as the browser draws it, the right way up. Throws `NoPicture`. */
export async function drawnPicture(file: Blob): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    throw unreadable();
  }
}

/** A canvas as a JPEG. Throws `NoPicture` where it is too large for the browser. */
export async function jpegOf(canvas: HTMLCanvasElement): Promise<Blob> {
  const drawn = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  if (drawn === null) throw unreadable();
  return drawn;
}

/** A canvas of a size, px, at least one each way. */
export function canvasOf(width: number, height: number): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width));
  canvas.height = Math.max(1, Math.round(height));
  return canvas;
}

/**
 * A photo as it is kept: JPEG, of a size that a poor signal carries, without what the camera wrote into it (where it was
 * taken, with what), since it is drawn anew. Throws `NoPicture` for a file that this browser cannot draw: as it is, it would
 * bring all of that along.
 */
export async function smallerPhoto(file: Blob, longestPx = LONGEST_PX): Promise<Blob> {
  const bitmap = await drawnPicture(file);
  const scale = Math.min(1, longestPx / Math.max(bitmap.width, bitmap.height));
  const canvas = canvasOf(bitmap.width * scale, bitmap.height * scale);
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return jpegOf(canvas);
}
