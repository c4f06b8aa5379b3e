import type { Point, PointKind } from '#model/installation.ts';
import type { Worked } from '../connections/worked.ts';
import { roomOfPosition } from '../plan/surroundings.ts';
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

const featureSaid: Readonly<Record<Point['features'][number], string>> = {
  usb: 'with USB charging',
  rcd: 'with a cut-out of its own (RCD)',
  ip66: 'weatherproof',
  metal: 'with a metal plate',
};

/** How things of a job are said to a customer. */
export interface ThingsSaid {
  /** A point by its label on the drawing; an id that is no point comes back as it is. */
  readonly label: (pointId: string) => string;
  /** A point's label and room: `R1 (Hall)`; the label alone where the room is not known. */
  readonly place: (pointId: string) => string;
  /** The name of the room that a point is in; null where it is in none that is drawn. */
  readonly room: (pointId: string) => string | null;
  /** What a wanted point is and where: `W1: double socket in the Living room, 45 cm above the floor`. */
  readonly point: (point: Point) => string;
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
  const positionOf = (id: string) => plan.positionOfPoint.get(id);
  const room = (id: string): string | null => roomOfPosition(plan, positionOf(id))?.room.name ?? null;
  return {
    label,
    room,
    place: (id) => (room(id) === null ? label(id) : `${label(id)} (${room(id)})`),
    circuit: (id) => circuits.get(id) ?? id,
    point: (point) => {
      const { id, kind, load, features } = point;
      const use = load === undefined ? '' : ` for the ${load.use}`;
      const with_ = features.map((feature) => ` ${featureSaid[feature]}`).join('');
      const where = room(id) === null ? ', place to be agreed' : `, ${room(id)}`;
      const position = positionOf(id);
      const height = position === undefined ? '' : `, ${heightSaid(position.heightMm)}`;
      return `${point.label}: ${kindSaid[kind]}${use}${with_}${where}${height}`;
    },
  };
}

/** The points that the customer asked for, in the job's order. */
export const wantedPoints = ({ points }: { readonly points: readonly Point[] }): readonly Point[] =>
  points.filter(({ status }) => status === 'wanted');

/** What was asked for, a line each; a job without wishes says so. */
export function askedFor(worked: Pick<Worked, 'job' | 'plan'>): readonly string[] {
  const said = thingsSaid(worked);
  const wanted = wantedPoints(worked.job).map(said.point);
  const going = worked.job.points
    .filter(({ status }) => status === 'removed')
    .map(({ id, label }) => `${capital(said.place(id) === label ? label : said.place(id))}: taken away`);
  const lines = [...wanted, ...going];
  return lines.length === 0 ? ['Nothing is asked for yet.'] : lines;
}
