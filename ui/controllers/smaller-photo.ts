/** The longer side of a photo as it is sent, px: a cracked wall and a terminal can be made out. */
const LONGEST_PX = 1600;
const QUALITY = 0.82;

/**
 * A photo as it is kept: JPEG, of a size that a poor signal carries, without what the camera wrote into it (where it was
 * taken, with what). A file that this browser cannot draw comes back as it is: the server says whether it is a photo.
 */
export async function smallerPhoto(file: Blob): Promise<Blob> {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return file;
  }
  const scale = Math.min(1, LONGEST_PX / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(bitmap.width * scale));
  canvas.height = Math.max(1, Math.round(bitmap.height * scale));
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  const drawn = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  return drawn ?? file;
}
