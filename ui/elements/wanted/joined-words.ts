import { connectionKindWords } from '#drawing/connection-kind-words.ts';
import { endWords } from '#drawing/end-words.ts';
import { connectedPoints, type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { openedCircuit } from '#engine/circuit/opened-circuit.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Connection, Tap } from '#model/scheme.ts';

/** How a wanted point is joined in a scheme. */
export interface Joined {
  readonly connectionId: string;
  /** "Spur from R4" */
  readonly words: string;
  /** The new cables that end at it, mm each; null for one whose length is not known. */
  readonly cablesMm: readonly (number | null)[];
}

/** How a scheme joins a point; null where it does not. */
export function joinedIn({ worked, runs }: SchemeEstimate, pointId: string): Joined | null {
  const connection = worked.scheme?.connections.find((each) => connectedPoints(each).includes(pointId));
  if (connection === undefined) return null;
  const own = runs.filter(({ connectionId }) => connectionId === connection.id);
  const arriving = own.filter(({ to }) => to.pointId === pointId);
  // On a ring a cable comes and another goes on; both are there for the point.
  const ending =
    connection.kind === 'ring-extension' || arriving.length === 0
      ? own.filter(({ from, to }) => from.pointId === pointId || to.pointId === pointId)
      : arriving;
  return {
    connectionId: connection.id,
    words: connectionWords(connection, pointId, worked),
    cablesMm: ending.map(({ lengthMm }) => lengthMm),
  };
}

function connectionWords(connection: Connection, pointId: string, worked: Worked): string {
  const labelOf = labelsOf(worked);
  switch (connection.kind) {
    case 'spur':
      return `${connectionKindWords.spur} from ${tapWords(connection.from, labelOf)}`;
    case 'fused-spur':
      return connection.unit === pointId
        ? `${connectionKindWords['fused-spur']} from ${tapWords(connection.from, labelOf)}`
        : `Behind a fuse, ${feedWords(connection, pointId, labelOf)}`;
    case 'fuse-down':
      return connection.unit === pointId
        ? `Fuses ${labelOf(connection.leg)} down`
        : `Behind a fuse in ${labelOf(connection.leg)}, ${feedWords(connection, pointId, labelOf)}`;
    case 'ring-extension':
      return `${openedCircuit(worked.foundShapes, connection.circuit) === 'ring' ? 'On the ring' : 'In the radial'}, between ${connection.between.map((end) => endWords(end, labelOf, 'the board')).join(' and ')}`;
    case 'radial':
      return `${connectionKindWords.radial}, ${feedWords(connection, pointId, labelOf)}`;
    case 'close-spur':
      return connectionKindWords['close-spur'];
  }
}

function tapWords(tap: Tap, labelOf: LabelOf): string {
  if ('point' in tap) return labelOf(tap.point);
  return 'leg' in tap ? `a joint in ${labelOf(tap.leg).replace('Leg ', '')}` : 'the board';
}

function feedWords(
  { feeds }: Extract<Connection, { kind: 'fused-spur' | 'fuse-down' | 'radial' }>,
  pointId: string,
  labelOf: LabelOf,
): string {
  const from = feeds.find(({ to }) => to === pointId)?.from;
  if (from === undefined || from === 'unit') return 'from the fused unit';
  return `from ${from === 'origin' ? 'the board' : labelOf(from)}`;
}
