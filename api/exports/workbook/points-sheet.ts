import { connectedPoints } from '#drawing/label-of.ts';
import { pointKindWords } from '#drawing/point-kind-words.ts';
import type { BackBox, CableJoint, Upstream } from '#engine/connections/things.ts';
import { roomOfPosition } from '#engine/plan/surroundings.ts';
import type { Joint, Point } from '#model/installation.ts';
import type { CellContent } from './cell-value.ts';
import { addTableSheet, type Column, FIRST_ROW, writeHeading, writeRow } from './table-sheet.ts';
import { sheetNames, type WorkbookContext } from './workbook-context.ts';

const columns: readonly Column[] = [
  { header: 'Point', width: 18, role: 'text' },
  { header: 'State', width: 11, role: 'text' },
  { header: 'Kind', width: 26, role: 'text' },
  { header: 'Room', width: 16, role: 'text' },
  { header: 'Height', width: 10, role: 'number', format: 'millimetres' },
  { header: 'Joined by', width: 28, role: 'text' },
  { header: 'Back box', width: 30, role: 'text' },
  { header: 'Fuse, A', width: 8, role: 'number' },
  { header: 'Cables', width: 8, role: 'number' },
  { header: 'Load', width: 24, role: 'text' },
];

const jointWords: Readonly<Record<Joint['kind'], string>> = {
  screw: 'Screw joint',
  lever: 'Lever connectors',
  'maintenance-free': 'Maintenance-free joint',
  crimp: 'Crimped joint',
};

const actionWords: Readonly<Record<BackBox['action'], string>> = {
  fit: 'fit',
  keep: 'stays',
  're-box': 'exchange for',
  frame: 'stays under a spacer frame, in all',
  unknown: 'depth not known, needs',
};

function boxWords(box: BackBox | undefined): string | null {
  if (box === undefined) return null;
  const size = box.gangs > 1 ? 'twin' : 'single';
  if (box.action === 'unknown' && box.foundDepthMm !== null)
    return `assumed ${size} ${box.foundDepthMm} mm deep, not measured`;
  return `${actionWords[box.action]} ${size} ${box.build.replace('-', ' ')} ${box.depthMm} mm`;
}

function joinedBy({ scheme, labelOf }: WorkbookContext, pointId: string): string | null {
  const connection = scheme.worked.scheme?.connections.find((one) => connectedPoints(one).includes(pointId));
  return connection === undefined ? null : labelOf(connection.id);
}

/** The points that the scheme fits, changes or joins on to, in the job's order. */
function affectedPoints({ scheme }: WorkbookContext): readonly Point[] {
  const touched = new Set([
    ...scheme.boxes.filter(({ action }) => action !== 'keep').map(({ id }) => id),
    ...scheme.worked.things.terminals.filter(({ affected }) => affected).map(({ pointId }) => pointId),
  ]);
  return scheme.worked.job.points.filter(({ id, status }) => status !== 'existing' || touched.has(id));
}

function contentsOf(context: WorkbookContext, point: Point): readonly CellContent[] {
  const { scheme } = context;
  const { plan, things } = scheme.worked;
  const position = plan.positionOfPoint.get(point.id);
  const room = roomOfPosition(plan, position)?.room.name ?? null;
  const unit = scheme.fusedUnits.find(({ pointId }) => pointId === point.id);
  return [
    point.label,
    point.status,
    [pointKindWords[point.kind], ...point.features].join(', '),
    room ?? 'not placed',
    position?.heightMm ?? null,
    joinedBy(context, point.id),
    boxWords(scheme.boxes.find(({ pointId }) => pointId === point.id)),
    unit?.fuseA ?? null,
    things.terminals.find(({ pointId }) => pointId === point.id)?.cables ?? null,
    point.load === undefined ? null : `${point.load.watts} W ${point.load.use}`,
  ];
}

/** Units that a connection brings along without a point of their own. */
function unitContents(context: WorkbookContext): readonly (readonly CellContent[])[] {
  return context.scheme.fusedUnits
    .filter(({ pointId, state }) => pointId === null && state === 'new')
    .map((unit) => [
      context.labelOf(unit.id),
      'wanted',
      pointKindWords['fused-unit'],
      null,
      unit.position?.heightMm ?? null,
      unit.connectionId === null ? null : context.labelOf(unit.connectionId),
      boxWords(context.scheme.boxes.find(({ id }) => id === unit.id)),
      unit.fuseA,
      null,
      null,
    ]);
}

function upstreamWords({ kind, ratingA }: Upstream): string {
  return ratingA === null ? 'not known' : `${ratingA} A ${kind}`;
}

function jointContents({ labelOf }: WorkbookContext, joint: CableJoint): readonly CellContent[] {
  const access =
    joint.accessible === null ? 'access not known' : joint.accessible ? 'in reach' : 'out of reach';
  return [
    labelOf(joint.id),
    joint.state === 'new' ? 'wanted' : 'existing',
    `${jointWords[joint.kind]}, ${joint.ratingA} A`,
    joint.lies.replaceAll('-', ' '),
    joint.position?.heightMm ?? null,
    joint.connectionId === null ? null : labelOf(joint.connectionId),
    access,
    null,
    joint.cables,
    `Upstream: ${upstreamWords(joint.upstream)}`,
  ];
}

/** The points that the scheme touches with their boxes, fuses and cables, and the joints. */
export function addPointsSheet(context: WorkbookContext): void {
  const note =
    'Heights are of the plate’s centre above the finished floor. Check every box and terminal on site.';
  const sheet = addTableSheet(context, sheetNames.points, note, columns);
  const rows = [
    ...affectedPoints(context).map((point) => contentsOf(context, point)),
    ...unitContents(context),
  ];
  rows.forEach((contents, index) => {
    writeRow(sheet, FIRST_ROW + index, columns, contents);
  });
  if (context.scheme.joints.length === 0) return;
  const start = FIRST_ROW + rows.length + 1;
  const headers = [
    'Joint',
    'State',
    'Kind',
    'Lies in',
    'Height',
    'Made for',
    'Access',
    '',
    'Cables',
    'Protection',
  ];
  writeHeading(sheet, start, 'Joints', headers);
  context.scheme.joints.forEach((joint, index) => {
    writeRow(sheet, start + 2 + index, columns, jointContents(context, joint));
  });
}
