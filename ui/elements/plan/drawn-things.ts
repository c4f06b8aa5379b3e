import type { Worked } from '#engine/connections/worked.ts';

/** Whether a derived thing belongs to one of the ids: it is that thing, or named by it (`c3/joint-out` by `c3`). */
const namedBy = (ids: ReadonlySet<string>, id: string): boolean =>
  ids.has(id) || ids.has(id.split('/')[0] ?? id);

/**
 * What is lit on a plan for ids of any kind: the things themselves; all of a circuit or of a connection; where a
 * remedy is set; and both ends of a cable, which may lie in no more than a point on plan.
 */
export function drawnThings(worked: Worked, ids: Iterable<string>): ReadonlySet<string> {
  // A remedy is named by what it is and where: `remedy/rcbo/ring-house`.
  const asked = new Set(
    [...ids].flatMap((id) => (id.startsWith('remedy/') ? [id, id.split('/').slice(2).join('/')] : [id])),
  );
  const drawn = new Set(asked);
  for (const { id, connectionId, circuitIds, from, to } of worked.runs) {
    const whole =
      (connectionId !== null && asked.has(connectionId)) || circuitIds.some((one) => asked.has(one));
    if (!whole && !asked.has(id)) continue;
    drawn.add(id);
    for (const end of [from, to]) if (!whole && end.pointId !== null) drawn.add(end.pointId);
  }
  for (const [id, run] of worked.foundRuns) if (run.circuitIds.some((one) => asked.has(one))) drawn.add(id);
  for (const { id, circuit } of worked.job.points)
    if (circuit !== undefined && asked.has(circuit)) drawn.add(id);
  for (const { id } of [...worked.things.joints, ...worked.things.fusedUnits])
    if (namedBy(asked, id)) drawn.add(id);
  return drawn;
}
