import type { Run } from '#engine/ways/run.ts';
import type { Connection } from '#model/scheme.ts';
import { joinedBy } from '../../edits/joined-by.ts';
import { metres } from '../../written.ts';

const lengthOf = ({ lengthMm }: Run): string => (lengthMm === null ? 'a typical length' : metres(lengthMm));

const isAt = ({ from, to }: Run, id: string): boolean =>
  [from.pointId, to.pointId, from.nodeId, to.nodeId].includes(id);

/**
 * The new cables that lead to a point: in a ring carried out those on either side of it, save the one to the next point; behind a
 * unit of its own the one to the unit too.
 *
 * @param runs of the scheme.
 */
export function cablesTo(runs: readonly Run[], connection: Connection, pointId: string): readonly Run[] {
  const own = runs.filter(({ connectionId }) => connectionId === connection.id);
  if (connection.kind === 'ring-extension') return aroundPoint(own, connection.through, pointId);
  const toUnit = own.filter(({ to }) => to.nodeId === `${connection.id}/unit`);
  const toPoint = own.filter(({ to }) => to.pointId === pointId).slice(0, 1);
  return joinedBy(connection)[0] === pointId ? [...toUnit, ...toPoint] : toPoint;
}

/** In a ring carried out, the cables at a point but for that to the next. */
function aroundPoint(runs: readonly Run[], through: readonly string[], pointId: string): readonly Run[] {
  const after = through[through.indexOf(pointId) + 1];
  return runs.filter((run) => isAt(run, pointId) && (after === undefined || !isAt(run, after)));
}

/** Out to the first of the points, from one to the next, and from the last of them back to the ring. */
function ringWords(runs: readonly Run[], through: readonly string[], pointId: string): string {
  const at = through.indexOf(pointId);
  const before = through[at - 1];
  const own = aroundPoint(runs, through, pointId);
  const here = own.filter((run) => (before === undefined ? true : isAt(run, before)));
  const back = before === undefined ? here.slice(1) : own.filter((run) => !here.includes(run));
  const words = [...here.slice(0, 1).map(lengthOf), ...back.map((run) => `${lengthOf(run)} back`)];
  return words.join(', ');
}

/**
 * The new cable that leads to a point, as its row says it: "1.60 m of cable", "5.90 m to the unit, 1.60 m on".
 *
 * @param runs of the scheme.
 * @returns nothing where no cable of it is laid.
 */
export function cableWords(runs: readonly Run[], connection: Connection, pointId: string): string {
  const own = runs.filter(({ connectionId }) => connectionId === connection.id);
  if (connection.kind === 'ring-extension') return ringWords(own, connection.through, pointId);
  const toPoint = own.find(({ to }) => to.pointId === pointId);
  const toUnit = own.find(({ to }) => to.nodeId === `${connection.id}/unit`);
  const isFirst = joinedBy(connection)[0] === pointId;
  if (toPoint === undefined) return '';
  if (isFirst && toUnit !== undefined) return `${lengthOf(toUnit)} to the unit, ${lengthOf(toPoint)} on`;
  return toPoint.lengthMm === null ? 'cable of a typical length' : `${lengthOf(toPoint)} of cable`;
}
