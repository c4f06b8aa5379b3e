import type { Locator, Page } from 'playwright-core';
import type { Job } from '#model/job.ts';
import { houseOf } from '#tests/houses/house-of.ts';
import { spursOf } from '#tests/houses/spurs-of.ts';

/** The house that a drag is held to its limit in: by a seed whose rooms have room for so many points. */
const house = { seed: 31, rooms: 10, outlets: 74, wanted: 6 };

/** The invented house of ten rooms and eighty points, joined somehow. */
export function tenRooms(): Job {
  const job = houseOf(house);
  return { ...job, id: 'bench-house', schemes: [spursOf(job)] };
}

/** What the house is called in a table. */
export const tenRoomsName = (job: Job): string => `${house.rooms} rooms, ${job.points.length} points`;

/** Puts a job into a running server. */
export async function store(address: string, job: Job): Promise<void> {
  const stored = await fetch(new URL('/api/jobs', address), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(job),
  });
  if (!stored.ok) throw new Error(`${job.id} was not stored: ${await stored.text()}`);
}

/** The last wanted point on a wall of the storey that is shown first, of those that the job had before it had six. */
export function lastWanted(page: Page, job: Job): Locator {
  const [storey] = job.storeys;
  const walls = new Set(storey?.walls.map(({ id }) => id));
  const last = job.points.findLast(
    ({ id, status, place }) =>
      !id.startsWith('more-') && status === 'wanted' && place && 'wall' in place && walls.has(place.wall),
  );
  return page.locator(`plan-view g[role=button][data-subject="${last?.id}"]`);
}
