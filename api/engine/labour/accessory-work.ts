import { unitOfLoadSide } from '../circuit/load-side.ts';
import { applianceFlexes } from '../connections/appliance-flex.ts';
import { droppedCables } from '../connections/dropped-cables.ts';
import type { TerminalFill } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import { type Amount, certain } from './amount.ts';
import type { TaskId } from './known-tasks.ts';

const fittingTask: Readonly<Record<string, TaskId>> = {
  'socket-single': 'fit-socket',
  'socket-twin': 'fit-socket',
  'fused-unit': 'fit-fused-unit',
  'flex-outlet': 'fit-flex-outlet',
  'dp-switch': 'fit-switch',
  'cooker-control': 'fit-cooker-control',
  grid: 'fit-grid',
  shaver: 'fit-shaver',
  blank: 'fit-blank',
};

/** Ids under which the scheme's accessories go, as points and as nodes. */
function newIds({ things }: Worked): ReadonlySet<string> {
  return new Set(things.accessories.flatMap(({ id, pointId }) => (pointId === null ? [id] : [id, pointId])));
}

function isNew(
  ids: ReadonlySet<string>,
  thing: { readonly id: string; readonly pointId: string | null },
): boolean {
  return ids.has(thing.id) || (thing.pointId !== null && ids.has(thing.pointId));
}

function fittings(worked: Worked): readonly Amount[] {
  const { accessories, fusedUnits } = worked.things;
  const ids = newIds(worked);
  const alone = fusedUnits.filter((unit) => unit.state === 'new' && !isNew(ids, unit));
  return [
    ...accessories
      .filter(({ kind }) => kind !== 'joint')
      .map(({ id, kind }) => certain(fittingTask[kind] ?? 'fit-other', id)),
    ...alone.map(({ id }) => certain('fit-fused-unit', id)),
  ];
}

/** Fixed appliances on a flex: behind a unit with an outlet for it, or at an outlet plate. */
function appliances({ things, job }: Worked): readonly Amount[] {
  return applianceFlexes(things, job.points).map(({ id }) => certain('connect-appliance', id));
}

function terminalWork(terminal: TerminalFill, ids: ReadonlySet<string>): readonly Amount[] {
  const cause = terminal.pointId ?? terminal.nodeId;
  const further = (count: number): readonly Amount[] =>
    count > 0 ? [certain('extra-cable', cause, count)] : [];
  // The first cable is part of fitting the accessory.
  const id = unitOfLoadSide(terminal.nodeId);
  if (isNew(ids, { id, pointId: terminal.pointId })) return further(terminal.cables - 1);
  if (terminal.newCables === 0) return [];
  return [certain('connect-origin', cause), ...further(terminal.newCables - 1)];
}

function terminals(worked: Worked): readonly Amount[] {
  const ids = newIds(worked);
  return worked.things.terminals.flatMap((terminal) => terminalWork(terminal, ids));
}

/** Points that go, and those that another takes the place of. */
function removals({ job }: Worked): readonly Amount[] {
  return job.points
    .filter(({ status }) => status === 'removed' || status === 'replaced')
    .map(({ id }) => certain('remove-accessory', id));
}

/** Where a removed point's cable comes from it is taken out of its terminals; nobody has to where that point goes as well. */
function disconnections(worked: Worked): readonly Amount[] {
  return droppedCables(worked)
    .filter(({ legId, at }) => at !== null || legId === null)
    .map(({ at, goneIds }) => ({
      ...{ task: 'disconnect-cable', quantity: 1, low: 1, high: 1 },
      causes: [...new Set([...(at?.pointId == null ? [] : [at.pointId]), ...goneIds])].toSorted(),
    }));
}

/** Accessories, their cables, appliances on a flex, and the connections at what is there. */
export function accessoryWork(worked: Worked): readonly Amount[] {
  return [
    ...fittings(worked),
    ...appliances(worked),
    ...terminals(worked),
    ...removals(worked),
    ...disconnections(worked),
  ];
}
