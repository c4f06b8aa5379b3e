import type { Point, PointKind } from '#model/installation.ts';
import type { Terms } from '#model/job.ts';
import type { Worked } from '../connections/worked.ts';
import { roomOfPosition } from '../plan/surroundings.ts';
import { plateOfPoint } from './plate-said.ts';
import { capital } from './said.ts';

/** What stands at a point, as a customer calls it. */
const kindSaid: Readonly<Record<PointKind, string>> = {
  'socket-twin': 'double socket',
  'socket-single': 'single socket',
  'fused-unit': 'fixed supply with a fuse of its own',
  'flex-outlet': 'outlet plate for the cable of an appliance',
  'dp-switch': 'switch that turns an appliance off at the wall',
  'cooker-control': 'cooker switch',
  grid: 'set of switches',
  shaver: 'shaver socket',
  joint: 'joint between cables',
  blank: 'blank plate',
  other: 'outlet',
};

/** What a point has; how its plate looks is said apart (`plateOfPoint`), and that it is weatherproof with it. */
const featureSaid: Partial<Readonly<Record<Point['features'][number], string>>> = {
  usb: 'with USB charging',
  rcd: 'with a cut-out of its own (RCD)',
};

/** How the firm's plates look, where it has said so. */
type FirmLook = Pick<Terms, 'finish'>;

/** How things of a job are said to a customer. */
export interface ThingsSaid {
  /** A point by its label on the drawing; an id that is no point comes back as it is. */
  readonly label: (pointId: string) => string;
  /** A point's label and room: `R1 (Hall)`; the label alone where the room is not known. */
  readonly place: (pointId: string) => string;
  /** The name of the room that a point is in; null where it is in none that is drawn. */
  readonly room: (pointId: string) => string | null;
  readonly circuit: (circuitId: string) => string;
}

function heightSaid(heightMm: number): string {
  return `${Math.round(heightMm / 10)} cm above the floor`;
}

/** The words for the things of a job, worked through. */
export function thingsSaid({ job, plan }: Pick<Worked, 'job' | 'plan'>): ThingsSaid {
  const labels = new Map(job.points.map(({ id, label }) => [id, label]));
  const circuits = new Map(job.circuits.map(({ id, name }) => [id, name]));
  const label = (id: string): string => labels.get(id) ?? id;
  const room = (id: string): string | null =>
    roomOfPosition(plan, plan.positionOfPoint.get(id))?.room.name ?? null;
  return {
    label,
    room,
    place: (id) => (room(id) === null ? label(id) : `${label(id)} (${room(id)})`),
    circuit: (id) => circuits.get(id) ?? id,
  };
}

/** The points that the customer asked for, in the job's order. */
export const wantedPoints = ({ points }: { readonly points: readonly Point[] }): readonly Point[] =>
  points.filter(({ status }) => status === 'wanted');

/** What a wanted point is and where: `W1: double socket, white plastic, Living room, 45 cm above the floor`. */
function pointSaid(point: Point, { job, plan }: Pick<Worked, 'job' | 'plan'>, firm: FirmLook): string {
  const { id, label, kind, load, features } = point;
  const use = load === undefined ? '' : ` for the ${load.use}`;
  const having = features.flatMap((feature) => featureSaid[feature] ?? []).map((words) => ` ${words}`);
  const position = plan.positionOfPoint.get(id);
  return [
    `${label}: ${kindSaid[kind]}${use}${having.join('')}`,
    plateOfPoint(point, job.terms, firm),
    thingsSaid({ job, plan }).room(id) ?? 'place to be agreed',
    position === undefined ? null : heightSaid(position.heightMm),
  ]
    .filter((words) => words !== null)
    .join(', ');
}

/**
 * What was asked for, a line each; a job without wishes says so.
 *
 * @param firm its terms, for how plates look that nobody has chosen for this job.
 */
export function askedFor(worked: Pick<Worked, 'job' | 'plan'>, firm: FirmLook): readonly string[] {
  const said = thingsSaid(worked);
  const wanted = wantedPoints(worked.job).map((point) => pointSaid(point, worked, firm));
  const going = worked.job.points
    .filter(({ status }) => status === 'removed')
    .map(({ id, label }) => `${capital(said.place(id) === label ? label : said.place(id))}: taken away`);
  const lines = [...wanted, ...going];
  return lines.length === 0 ? ['Nothing is asked for yet.'] : lines;
}
