import type { SchemeDifference, SchemeEstimate } from './estimate-result.ts';
import { schemeCable } from './scheme-cable.ts';

const cableMm = ({ runs }: SchemeEstimate): number => schemeCable(runs).cableMm;

const newJoints = (scheme: SchemeEstimate): number =>
  scheme.joints.filter((joint) => joint.state === 'new').length;

const failing = (scheme: SchemeEstimate): readonly string[] =>
  [
    ...new Set(
      scheme.findings.filter((finding) => finding.outcome === 'fails').map((finding) => finding.rule),
    ),
  ].sort();

/**
 * The cheapest scheme, VAT included, that does not fail; of equals the first in the job's order. Null when
 * every scheme fails or there are none.
 */
export function cheapestThatDoesNotFail(schemes: readonly SchemeEstimate[]): SchemeEstimate | null {
  let best: SchemeEstimate | null = null;
  for (const scheme of schemes) {
    if (scheme.complies === 'no') continue;
    if (best === null || scheme.totals.grossPence < best.totals.grossPence) best = scheme;
  }
  return best;
}

/** What sets each scheme apart from the cheapest that does not fail (or the first): money, hours, cable, joints, failures. */
export function schemeDifferences(schemes: readonly SchemeEstimate[]): readonly SchemeDifference[] {
  const against = cheapestThatDoesNotFail(schemes) ?? schemes[0];
  if (against === undefined) return [];
  const failsAgainst = failing(against);
  return schemes
    .filter((scheme) => scheme.id !== against.id)
    .map((scheme) => {
      const fails = failing(scheme);
      return {
        id: scheme.id,
        againstId: against.id,
        grossPence: scheme.totals.grossPence - against.totals.grossPence,
        hours: Math.round((scheme.totals.hours - against.totals.hours) * 100) / 100,
        cableMm: cableMm(scheme) - cableMm(against),
        joints: newJoints(scheme) - newJoints(against),
        failsHere: fails.filter((rule) => !failsAgainst.includes(rule)),
        failsThere: failsAgainst.filter((rule) => !fails.includes(rule)),
      };
    });
}
