import type { Worked } from '#engine/connections/worked.ts';

/** The storey on whose plan a thing is drawn; null for what has no place. */
export function storeyOfThing(worked: Worked, id: string): string | null {
  const { plan, foundRuns, runs, things } = worked;
  const position =
    plan.positionOfPoint.get(id) ??
    plan.positionOfBoard.get(id) ??
    things.joints.find((joint) => joint.id === id)?.position ??
    things.fusedUnits.find((unit) => unit.id === id)?.position;
  if (position !== undefined && position !== null) return position.storeyId;
  const run = foundRuns.get(id) ?? runs.find((one) => one.id === id || one.connectionId === id);
  return (
    run?.from.position?.storeyId ??
    run?.segments[0]?.storeyId ??
    plan.roomById.get(id)?.storeyId ??
    plan.wallById.get(id)?.storeyId ??
    null
  );
}
