import { openedCircuit } from '#engine/circuit/opened-circuit.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { connectionKindWords } from './connection-kind-words.ts';
import { endWords } from './end-words.ts';

/** Words for an id: a label as people know it, or the id itself where nothing is known of it. */
export type LabelOf = (id: string) => string;

/** A remedy in a word or two. */
export const remedyWords: Readonly<Record<Remedy['kind'], string>> = {
  rcbo: 'RCBO',
  'rcd-enclosure': 'RCD in an enclosure',
  'rcd-unit': 'RCD fused unit',
  'rcd-outlet': 'RCD outlet',
  'bond-upgrade': 'Main bond',
  're-box': 'Deeper box',
  'single-to-twin': 'Single made twin',
  'lower-device': 'Smaller protective device',
  'new-board': 'New board',
};

/** The points that a connection joins on, in its own order. */
export function connectedPoints(connection: Connection): readonly string[] {
  switch (connection.kind) {
    case 'spur':
      return [connection.to];
    case 'fused-spur':
    case 'fuse-down':
      return [
        ...(typeof connection.unit === 'string' ? [connection.unit] : []),
        ...connection.feeds.map(({ to }) => to),
      ];
    case 'ring-extension':
      return connection.through;
    case 'radial':
      return connection.feeds.map(({ to }) => to);
    case 'close-spur':
      return [connection.point];
  }
}

function kindWordsOf({ foundShapes }: Worked, connection: Connection): string {
  const isOfRadial =
    connection.kind === 'ring-extension' && openedCircuit(foundShapes, connection.circuit) === 'radial';
  return isOfRadial ? 'Radial extension' : connectionKindWords[connection.kind];
}

function baseLabels({ job }: Worked): Map<string, string> {
  const labels = new Map([
    ['site', 'Site'],
    ['supply', 'Supply'],
  ]);
  for (const { id } of job.extras ?? []) labels.set(id, 'Work not on the drawing');
  for (const { id, name } of job.schemes) labels.set(id, name);
  for (const { id, label } of job.points) labels.set(id, label);
  for (const { id, name } of job.circuits) labels.set(id, name);
  for (const { id, label } of job.boards) labels.set(id, label);
  for (const { id, name, rooms } of job.storeys) {
    labels.set(id, name);
    for (const room of rooms) labels.set(room.id, room.name);
  }
  return labels;
}

/**
 * Labels of everything that an estimate of this job speaks of: points, circuits, boards, rooms, storeys,
 * legs by their ends, connections by what they join on, and what they bring along (`c3/joint-out`).
 */
export function labelsOf(worked: Worked): LabelOf {
  const labels = baseLabels(worked);
  const pointLabel: LabelOf = (id) => labels.get(id) ?? id;
  for (const leg of worked.job.legs)
    labels.set(leg.id, `Leg ${endWords(leg.from, pointLabel)}–${endWords(leg.to, pointLabel)}`);
  for (const connection of worked.scheme?.connections ?? []) {
    const points = connectedPoints(connection).map(pointLabel);
    labels.set(connection.id, `${kindWordsOf(worked, connection)} ${points.join(', ')}`.trimEnd());
  }
  for (const { kind, at } of worked.scheme?.remedies ?? []) {
    const subject = at === undefined ? '' : `: ${labels.get(at) ?? at}`;
    labels.set(at === undefined ? `remedy/${kind}` : `remedy/${kind}/${at}`, remedyWords[kind] + subject);
  }
  return (id) => {
    const whole = labels.get(id);
    if (whole !== undefined) return whole;
    const [base = '', ...role] = id.split('/');
    const label = labels.get(base);
    return label === undefined ? id : `${label}: ${role.join(' ').replaceAll('-', ' ')}`;
  };
}
