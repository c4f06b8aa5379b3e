import type { Point } from '#model/installation.ts';

/**
 * The label that a new point gets: the letters that the labels of such points share most often, and the number
 * after their highest. Where there is none yet, R for what was found and W for what is wanted.
 */
export function nextLabel(points: readonly Pick<Point, 'label' | 'status'>[], isWanted: boolean): string {
  const counts = new Map<string, number>();
  for (const { label, status } of points) {
    const letters = /^(\p{L}+)\d+$/u.exec(label)?.[1];
    if (letters !== undefined && (status === 'wanted') === isWanted)
      counts.set(letters, (counts.get(letters) ?? 0) + 1);
  }
  const [letters] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? [isWanted ? 'W' : 'R'];
  const numbers = points.flatMap(({ label }) =>
    label.startsWith(letters) && /^\d+$/.test(label.slice(letters.length))
      ? [Number(label.slice(letters.length))]
      : [],
  );
  return `${letters}${Math.max(0, ...numbers) + 1}`;
}
