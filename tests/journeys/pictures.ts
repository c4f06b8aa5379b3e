import type { Page } from 'playwright-core';

type Point = readonly [x: number, y: number];

/** A filled polygon of a drawn picture, px, and its grey, 0 to 255. */
export interface Filled {
  readonly at: readonly Point[];
  readonly grey: number;
}

/** Draws polygons on white, in the browser that a test has, and gives the picture's bytes. */
export async function drawPicture(
  page: Page,
  {
    width,
    height,
    filled,
  }: { readonly width: number; readonly height: number; readonly filled: readonly Filled[] },
  type: 'image/png' | 'image/jpeg' = 'image/png',
): Promise<Buffer> {
  const base64 = await page.evaluate(
    ({ width, height, filled, type }) => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [width, height];
      const context = canvas.getContext('2d');
      if (context === null) throw new Error('no canvas');
      context.fillStyle = '#fff';
      context.fillRect(0, 0, width, height);
      for (const { at, grey } of filled) {
        context.fillStyle = `rgb(${grey} ${grey} ${grey})`;
        context.beginPath();
        for (const [x, y] of at) context.lineTo(x, y);
        context.fill();
      }
      return canvas.toDataURL(type).split(',')[1] ?? '';
    },
    { width, height, filled, type },
  );
  return Buffer.from(base64, 'base64');
}

/** A JPEG with what a camera writes into it: an Exif segment that tells a place. Source: CIPA DC-008 (Exif), 4.5.2 and 4.7.2 (from memory). */
export function withExif(jpeg: Buffer, words: string): Buffer {
  const tiff = Buffer.concat([
    Buffer.from('Exif\0\0MM\0*\0\0\0\u0008\0\0', 'latin1'),
    Buffer.from(words, 'latin1'),
  ]);
  const head = Buffer.from([0xff, 0xe1, (tiff.length + 2) >> 8, (tiff.length + 2) & 0xff]);
  return Buffer.concat([jpeg.subarray(0, 2), head, tiff, jpeg.subarray(2)]);
}
