import type { Finding } from '#engine/rules/finding.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Connection } from '#model/scheme.ts';
import { joinedBy } from '../../edits/joined-by.ts';

const isShown = ({ outcome, origin }: Finding): boolean =>
  origin === 'scheme' && (outcome === 'fails' || outcome === 'decide' || outcome === 'not-proven');

const graveFirst = { fails: 0, decide: 1, 'not-proven': 2, advice: 3, passes: 4 } as const;

/** The old points at which a connection is joined on. */
function joinedOnAt(connection: Connection): readonly string[] {
  if (connection.kind === 'spur' || connection.kind === 'fused-spur')
    return 'point' in connection.from ? [connection.from.point] : [];
  if (connection.kind === 'ring-extension')
    return connection.between.flatMap((end) => ('point' in end ? [end.point] : []));
  return connection.kind === 'close-spur' ? [connection.point] : [];
}

/**
 * What the scheme makes fail, ask for a decision or leave unproven at a point, the cable to it included; of a
 * connection's own (its unit, its joints, the old points that it begins at) where the point is the first that it joins.
 * Gravest first.
 */
export function findingsAt(
  scheme: SchemeEstimate,
  pointId: string,
  connection: Connection | null,
): readonly Finding[] {
  const runs = new Map(
    scheme.runs
      .filter(({ connectionId }) => connectionId === connection?.id)
      .map((run) => [run.id, run.to.pointId ?? run.from.pointId]),
  );
  const first = connection === null || joinedBy(connection)[0] === pointId;
  const oldPoints = new Set(connection === null ? [] : joinedOnAt(connection));
  const isHere = (subject: string): boolean => {
    if (subject === pointId || subject.startsWith(`${pointId}/`)) return true;
    if (connection === null) return false;
    const leadsTo = runs.get(subject);
    if (leadsTo !== undefined && leadsTo !== null && joinedBy(connection).includes(leadsTo))
      return leadsTo === pointId;
    return (
      first &&
      (subject === connection.id || subject.startsWith(`${connection.id}/`) || oldPoints.has(subject))
    );
  };
  return scheme.findings
    .filter((finding) => isShown(finding) && isHere(finding.subject))
    .toSorted((a, b) => graveFirst[a.outcome] - graveFirst[b.outcome]);
}

/** The same for a connection as a whole, with all that it joins; for those that join no wanted point. */
export function findingsOf(scheme: SchemeEstimate, connection: Connection): readonly Finding[] {
  const things = new Set([connection.id, ...joinedBy(connection), ...joinedOnAt(connection)]);
  if (connection.kind === 'fuse-down' || connection.kind === 'close-spur') things.add(connection.leg);
  return scheme.findings
    .filter(
      (finding) =>
        isShown(finding) && (things.has(finding.subject) || finding.subject.startsWith(`${connection.id}/`)),
    )
    .toSorted((a, b) => graveFirst[a.outcome] - graveFirst[b.outcome]);
}
