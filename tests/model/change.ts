type Path = readonly (string | number)[];

function holder(file: unknown, path: Path): Record<string | number, unknown> {
  let value = file;
  for (const key of path.slice(0, -1)) value = (value as Record<string | number, unknown>)[key];
  return value as Record<string | number, unknown>;
}

/** Puts a value at a place of a file; returns the file, changed. */
export function put<File>(file: File, path: Path, value: unknown): File {
  holder(file, path)[path.at(-1) ?? ''] = value;
  return file;
}

/** Takes a key out, or an item out of a list; returns the file, changed. */
export function cut<File>(file: File, path: Path): File {
  const owner = holder(file, path);
  const key = path.at(-1) ?? '';
  if (Array.isArray(owner)) owner.splice(Number(key), 1);
  else delete owner[key];
  return file;
}

/** Every place in a file, the whole left out. */
export function placesOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [];
  const keys = Array.isArray(value) ? value.map((_, index) => index) : Object.keys(value);
  return keys.flatMap((key) => {
    const inner = [...path, key];
    return [inner, ...placesOf((value as Record<string | number, unknown>)[key], inner)];
  });
}
