import type { Circuit, Point, Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';
import { extrasWithout } from './extras.ts';
import { putFact } from './facts.ts';
import { endLeaves, type Leaving, schemeWithout } from './mend-connections.ts';

const none: ReadonlySet<string> = new Set();

/** Removes a point with the legs, the readings and the connections that hang on it. */
export const removePoint = ({ id, label }: Pick<Point, 'id' | 'label'>): JobEdit => ({
  label: `Remove ${label} and its cables`,
  change: (job) => removeAll(job, { points: new Set([id]) }),
});

/** Removes legs; connections cut into them go, or are mended. */
export const removeLegs = (ids: readonly string[], name: string): JobEdit => ({
  label: `Remove ${name} and what is joined into it`,
  change: (job) => removeAll(job, { legs: new Set(ids) }),
});

/** Removes a circuit with its legs, its readings and the connections to it; its points stay, of no circuit. */
export const removeCircuit = ({ id, name }: { readonly id: string; readonly name: string }): JobEdit => ({
  label: `Remove ${name} and its cables`,
  change: (job) => removeAll(job, { circuits: new Set([id]) }),
});

/** Removes a board with its circuits and what hangs on them; points stay, of no circuit. */
export const removeBoard = ({ id, label }: { readonly id: string; readonly label: string }): JobEdit => ({
  label: `Remove ${label} and its circuits`,
  change: (job) => {
    const circuits = job.circuits.filter(({ board }) => board === id).map((circuit) => circuit.id);
    removeAll(job, { boards: new Set([id]), circuits: new Set(circuits) });
  },
});

/** Takes things out of a job together with all that refers to them, so that nothing is left in the air. */
export function removeAll(job: Job, asked: Partial<Leaving>): void {
  const named: Leaving = { points: none, legs: none, circuits: none, boards: none, ...asked };
  const legs = job.legs.filter(
    (leg) =>
      named.legs.has(leg.id) ||
      named.circuits.has(leg.circuit) ||
      endLeaves(leg.from, named) ||
      endLeaves(leg.to, named),
  );
  const leaving = { ...named, legs: new Set(legs.map(({ id }) => id)) };
  job.legs = job.legs.filter(({ id }) => !leaving.legs.has(id));
  job.readings = job.readings.filter((reading) => !readingLeaves(reading, leaving));
  removeRcdReferences(job, leaving);
  job.circuits = job.circuits.filter(({ id }) => !leaving.circuits.has(id));
  job.boards = job.boards.filter(({ id }) => !leaving.boards.has(id));
  restorePoints(job, leaving);
  job.points = job.points.filter(({ id }) => !leaving.points.has(id));
  for (const point of job.points) forgetInPoint(point, leaving);
  for (const scheme of job.schemes) schemeWithout(scheme, leaving);
  extrasWithout(job, new Set([...leaving.points, ...leaving.circuits, ...leaving.boards]));
}

function readingLeaves(reading: Reading, { points, circuits, boards }: Leaving): boolean {
  if (reading.circuit !== undefined && circuits.has(reading.circuit)) return true;
  const places = [
    'at' in reading ? reading.at : undefined,
    'linkedAt' in reading ? reading.linkedAt : undefined,
  ];
  return places.some((place) => place !== undefined && (points.has(place) || boards.has(place)));
}

/** A circuit of another board may be recorded as behind an RCD of one that leaves. */
function removeRcdReferences(job: Job, { boards }: Leaving): void {
  const rcds = new Set(
    job.boards.filter(({ id }) => boards.has(id)).flatMap(({ rcds }) => rcds.map(({ id }) => id)),
  );
  for (const circuit of job.circuits)
    if (circuit.upstreamRcd !== undefined && rcds.has(circuit.upstreamRcd))
      putFact<Circuit, 'upstreamRcd'>(circuit, 'upstreamRcd', null);
}

/** A point that was to be replaced by one that leaves stays as it was. */
function restorePoints(job: Job, { points }: Leaving): void {
  const restored = new Set(
    job.points.flatMap(({ id, replaces }) => (points.has(id) && replaces ? [replaces] : [])),
  );
  for (const point of job.points)
    if (restored.has(point.id) && point.status === 'replaced') point.status = 'existing';
}

function forgetInPoint(point: Point, { points, circuits }: Leaving): void {
  if (point.circuit !== undefined && circuits.has(point.circuit)) delete point.circuit;
  if (point.replaces !== undefined && points.has(point.replaces)) delete point.replaces;
  for (const module of point.modules ?? [])
    if (module.feeds !== undefined && points.has(module.feeds)) delete module.feeds;
}
