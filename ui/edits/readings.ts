import type { Site } from '#model/building.ts';
import type { Circuit, Reading } from '#model/installation.ts';
import type { JobEdit } from '../job-events.ts';
import { putFact } from './facts.ts';

/** Adds a reading, or puts it in the place of the one with its id. */
export const putReading = (reading: Reading, name: string): JobEdit => ({
  label: `Change the reading ${name}`,
  change: ({ readings }) => {
    const place = readings.findIndex(({ id }) => id === reading.id);
    readings.splice(place < 0 ? readings.length : place, place < 0 ? 0 : 1, structuredClone(reading));
  },
});

/** Removes a reading. */
export const removeReading = (id: string, name: string): JobEdit => ({
  label: `Remove the reading ${name}`,
  change: (job) => {
    job.readings = job.readings.filter((reading) => reading.id !== id);
  },
});

/** The conductors of a ring, each read from its one end to the other: r1, rn and r2. */
export type Conductor = 'L' | 'N' | 'cpc';

/** The reading of a conductor of a circuit from end to end before the work; null where there is none. */
export function endToEnd(
  readings: readonly Reading[],
  circuitId: string,
  conductor: Conductor,
): Extract<Reading, { kind: 'loop' }> | null {
  for (const reading of readings)
    if (
      reading.kind === 'loop' &&
      reading.loop === conductor &&
      reading.from === 'end-to-end' &&
      reading.phase === 'before' &&
      reading.circuit === circuitId
    )
      return reading;
  return null;
}

/** What one conductor of a ring read from end to end. */
export interface EndToEnd {
  readonly conductor: Conductor;
  /** Null takes the reading away. */
  readonly ohm: number | null;
  /** The id of the reading, if there is none of this conductor yet. */
  readonly newId: string;
}

/** Records what a conductor of a ring read from end to end before the work. */
export const setEndToEnd = (
  { id, name }: Pick<Circuit, 'id' | 'name'>,
  { conductor, ohm, newId }: EndToEnd,
): JobEdit => ({
  label: `End to end readings of ${name}`,
  change: (job) => {
    const known = endToEnd(job.readings, id, conductor);
    if (ohm === null) job.readings = job.readings.filter((reading) => reading.id !== known?.id);
    else if (known !== null) known.ohm = ohm;
    else
      job.readings.push({
        id: newId,
        circuit: id,
        kind: 'loop',
        loop: conductor,
        from: 'end-to-end',
        ohm,
        phase: 'before',
      });
  },
});

/** Sets what the conductors are at when they are tested, °C; null: nobody said. */
export const setConductorC = (conductorC: number | null): JobEdit => ({
  label: 'Temperature of the conductors',
  change: ({ site }) => putFact<Site, 'conductorC'>(site, 'conductorC', conductorC),
});
