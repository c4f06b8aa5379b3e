const bytesOf = (base64: string): Uint8Array<ArrayBuffer> => new Uint8Array(Buffer.from(base64, 'base64'));

/** A PNG of one pixel. */
export const tinyPng = bytesOf(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8DwHwAFBQIAX8jx0gAAAABJRU5ErkJggg==',
);

/** A lossy WebP of one pixel. */
export const tinyWebp = bytesOf('UklGRiIAAABXRUJQVlA4IBYAAAAwAQCdASoBAAEADsD+JaQAA3AAAAAA');
