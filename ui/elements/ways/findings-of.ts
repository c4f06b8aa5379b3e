import type { Finding } from '#engine/rules/finding.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Connection } from '#model/scheme.ts';
import { joinedBy } from '../../edits/detach-point.ts';

/** The findings that speak of a connection: of itself, its points, cables, joints and unit. Passes and advice are left out. */
export function findingsOf(scheme: SchemeEstimate, connection: Connection): readonly Finding[] {
  const points = new Set(joinedBy(connection));
  const isOf = (subject: string): boolean =>
    subject === connection.id || points.has(subject) || subject.includes(`${connection.id}/`);
  return scheme.findings.filter(
    ({ outcome, origin, subject }) =>
      origin === 'scheme' && (outcome === 'fails' || outcome === 'decide') && isOf(subject),
  );
}
