import type { Job } from '#model/job.ts';
import { type RoomLeft, roomLeft } from '../proof/room-left.ts';
import { NOMINAL_V } from '../proof/spur-load.ts';
import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import { listed } from './said.ts';

/** A load by name, for what a fuse does with several at once. */
export interface NamedLoad {
  readonly use: string;
  readonly watts: number;
}

/** What the loads of a kitchen's worktop might be where none is named; usual ratings, common practice, no source. */
const exampleLoads: readonly NamedLoad[] = [
  { use: 'kettle', watts: 3000 },
  { use: 'toaster', watts: 1400 },
  { use: 'air fryer', watts: 1700 },
];

/** A current to a tenth: 26.5 A. */
export const amps = (value: number): string => `${(Math.round(value * 10) / 10).toFixed(1)} A`;
const kilowatts = (watts: number): string => `${(watts / 1000).toFixed(1)} kW`;
const ampsOf = (loads: readonly NamedLoad[]): number =>
  loads.reduce((sum, { watts }) => sum + watts, 0) / NOMINAL_V;
const loadWords = (loads: readonly NamedLoad[]): string =>
  listed(loads.map(({ use, watts }) => `${use} ${kilowatts(watts)}`));

/** The loads named at some points, in the job's order. */
export const loadsNamed = (
  { points }: Pick<Job, 'points'>,
  pointIds: readonly string[],
): readonly NamedLoad[] =>
  points.flatMap(({ id, load }) => (load !== undefined && pointIds.includes(id) ? [load] : []));

/**
 * What a fuse does with loads that run at once. Loads that are not named may come on top; with none named, an example
 * says what may happen.
 *
 * @param fuseA the fuse, A.
 */
export function fuseWords(fuseA: number, loads: readonly NamedLoad[]): string {
  const fuse = `${fuseA} A fuse`;
  if (loads.length === 0)
    return `No load is named. As an example: ${loadWords(exampleLoads)} at once draw ${amps(ampsOf(exampleLoads))}: more than the ${fuse} carries, and sooner or later it blows.`;
  const drawnA = ampsOf(loads);
  const named = loadWords(loads);
  const verb = loads.length > 1 ? 'at once draw' : 'draws';
  const drawn = `${named.charAt(0).toUpperCase()}${named.slice(1)} ${verb} ${amps(drawnA)}`;
  return drawnA > fuseA
    ? `${drawn}: more than the ${fuse} carries; sooner or later it blows, and all outlets behind it are off until it is renewed.`
    : `${drawn}: within the ${fuse}, with ${amps(fuseA - drawnA)} left for everything else behind it.`;
}

/** The fuses before new outlets; a fused unit that is wanted for one appliance is the same in both. */
export function fusesBefore({ worked }: Pick<SchemeEstimate, 'worked'>): readonly RoomLeft[] {
  const units = new Set(worked.job.points.filter(({ kind }) => kind === 'fused-unit').map(({ id }) => id));
  return roomLeft(worked).filter(
    ({ limitedBy, pointIds }) => limitedBy === 'fuse' && pointIds.some((id) => !units.has(id)),
  );
}
