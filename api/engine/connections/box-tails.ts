import type { Worked } from './worked.ts';

/** A metal plate that takes the place of another on a steel box found: whether that has its tail nobody knows, so one is along. By box id. */
export function metalPlatesOnOldBoxes({ things }: Worked): readonly string[] {
  const metal = new Set(
    things.accessories.filter(({ features }) => features.includes('metal')).map(({ id }) => id),
  );
  return things.boxes
    .filter(({ id, state, build }) => state === 'found' && build === 'steel' && metal.has(id))
    .map(({ id }) => id);
}

/** The steel boxes from which a green-yellow tail leads to the accessory: fitted or exchanged, and found ones under a new metal plate. Ids. */
export function tailedBoxes(worked: Worked): ReadonlySet<string> {
  const fitted = worked.things.boxes.filter(
    ({ build, action }) => build === 'steel' && (action === 'fit' || action === 're-box'),
  );
  return new Set([...fitted.map(({ id }) => id), ...metalPlatesOnOldBoxes(worked)]);
}
