import type { Remedy } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import { type Amount, certain } from './amount.ts';
import type { TaskId } from './known-tasks.ts';

/** A remedy's own task; boxes and accessories that a remedy brings along are counted as things. */
const remedyTask: Partial<Readonly<Record<Remedy['kind'], TaskId>>> = {
  rcbo: 'fit-rcbo',
  'rcd-enclosure': 'fit-rcd-enclosure',
  'rcd-unit': 'exchange-accessory',
  'rcd-outlet': 'exchange-accessory',
  'single-to-twin': 'exchange-accessory',
  'lower-device': 'exchange-device',
  'new-board': 'fit-board',
  'bond-upgrade': 'upgrade-bond',
};

function remedyWork(worked: Worked): readonly Amount[] {
  const fitted = new Set(worked.things.accessories.map(({ pointId }) => pointId));
  return (worked.scheme?.remedies ?? []).flatMap(({ kind, at }) => {
    const task = remedyTask[kind];
    const counted = task === 'exchange-accessory' && at !== undefined && fitted.has(at);
    return task === undefined || counted ? [] : [certain(task, remedyCause(kind, at))];
  });
}

function remedyCause(kind: Remedy['kind'], at: string | undefined): string {
  return at === undefined ? `remedy/${kind}` : `remedy/${kind}/${at}`;
}

/** New ways, and new cable joined on at the origin of a circuit that is there. */
function originWork({ scheme }: Worked): readonly Amount[] {
  return (scheme?.connections ?? []).flatMap((connection) => {
    if (connection.kind === 'radial') return [certain('fit-new-way', connection.id)];
    const tapsOrigin =
      (connection.kind === 'spur' || connection.kind === 'fused-spur') && 'origin' in connection.from;
    return tapsOrigin ? [certain('connect-at-board', connection.id)] : [];
  });
}

/** Work at the board, and the remedies. */
export function boardWork(worked: Worked): readonly Amount[] {
  return [...originWork(worked), ...remedyWork(worked)];
}
