import type { Leg, Place, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { fourWalls, room, storey } from '../../plan/small-house.ts';
import { boardOf, circuitOf, jobOf, legOf, pointOf } from '../../rules/facts-builder.ts';

/** Numbers from 0 to 1 by a seed: a linear congruence (Numerical Recipes' constants). */
export function numbersOf(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** One room with a ring of `found` twin outlets, perhaps a spur, and `wanted` more outlets, all at random along its walls. */
export function randomHouse(seed: number, size: { readonly found: number; readonly wanted: number }): Job {
  const next = numbersOf(seed);
  const [widthMm, depthMm] = [3000 + next() * 5000, 3000 + next() * 5000];
  const { walls, sides } = fourWalls(widthMm, depthMm);
  const taken: { readonly wall: string; readonly mm: number }[] = [];
  const place = (): Place => {
    for (;;) {
      const [wall] = sides[Math.floor(next() * sides.length)] ?? ['s'];
      const longMm = wall === 's' || wall === 'n' ? widthMm : depthMm;
      const alongMm = Math.round(500 + next() * (longMm - 900));
      if (taken.some((other) => other.wall === wall && Math.abs(other.mm - alongMm) < 250)) continue;
      taken.push({ wall, mm: alongMm });
      return { wall, side: 'left', alongMm, heightMm: 450 };
    }
  };
  const asFound = { boxDepthMm: 35 };
  const ring = Array.from({ length: size.found }, (_, i) =>
    pointOf(`p${i + 1}`, { circuit: 'c', place: place(), asFound }),
  );
  const spurs = next() < 0.5 ? [pointOf('s1', { circuit: 'c', place: place(), asFound })] : [];
  const wanted = Array.from(
    { length: size.wanted },
    (_, i): Point => pointOf(`w${i + 1}`, { status: 'wanted', place: place() }),
  );
  const stops = ['c', ...ring.map(({ id }) => id), 'c'];
  const legs = stops.slice(1).map((to, i): Leg => legOf(`l${i + 1}`, stops[i] ?? 'c', to));
  const root = ring[Math.floor(next() * ring.length)]?.id ?? 'p1';
  return jobOf({
    storeys: [storey('gf', { walls, rooms: [room('room', sides)] })],
    boards: [boardOf('b1', { place: { ...place(), heightMm: 1500 }, spareWays: next() < 0.5 ? 1 : 0 })],
    circuits: [circuitOf('c', { shape: 'ring', certainty: { order: 'measured' } })],
    points: [...ring, ...spurs, ...wanted],
    legs: [...legs, ...spurs.map(({ id }) => legOf('ls', root, id))],
  });
}
