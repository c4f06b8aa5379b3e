import type { Remedy } from '#model/scheme.ts';
import { isRcbo } from '../circuit/fitted-device.ts';
import { wantsSurgeDevice } from '../connections/surge-device.ts';
import type { Worked } from '../connections/worked.ts';
import { exchangedBoards } from '../takeoff/board-lines.ts';
import { deviceAfter, exchangedDevices } from '../takeoff/protection-lines.ts';
import { remedyCause } from '../takeoff/remedy-cause.ts';
import { type Amount, certain, possible } from './amount.ts';
import type { TaskId } from './known-tasks.ts';

/** A remedy's own task; boxes and accessories that a remedy brings along are counted as things, devices by circuit. */
const remedyTask: Partial<Readonly<Record<Remedy['kind'], TaskId>>> = {
  'rcd-enclosure': 'fit-rcd-enclosure',
  'rcd-unit': 'exchange-accessory',
  'rcd-outlet': 'exchange-accessory',
  'single-to-twin': 'exchange-accessory',
  'new-board': 'fit-board',
  'bond-upgrade': 'upgrade-bond',
};

function remedyWork(worked: Worked): readonly Amount[] {
  const fitted = new Set(worked.things.accessories.flatMap(({ id, pointId }) => [id, pointId]));
  return (worked.scheme?.remedies ?? []).flatMap((remedy) => {
    const { kind, at } = remedy;
    const task = remedyTask[kind];
    const counted = task === 'exchange-accessory' && at !== undefined && fitted.has(at);
    return task === undefined || counted ? [] : [certain(task, remedyCause(remedy))];
  });
}

/** A surge device in each new board, where the owner wants one. */
const surgeWork = (worked: Worked): readonly Amount[] =>
  wantsSurgeDevice(worked.job)
    ? exchangedBoards(worked).map(({ remedy }) => certain('fit-surge-device', remedyCause(remedy)))
    : [];

/** Circuits that come over to a new board, with those that nobody recorded: their devices are fitted there. */
function movedCircuits(worked: Worked): readonly Amount[] {
  return exchangedBoards(worked).flatMap(({ remedy, on }) => {
    if (on === null) return [];
    const [cause, { likely, low, high }] = [remedyCause(remedy), on.unrecorded];
    const come = on.recorded.length;
    return come + high === 0
      ? []
      : [
          {
            task: 'move-circuit' as const,
            quantity: come + likely,
            low: come + low,
            high: come + high,
            causes: [cause],
          },
        ];
  });
}

/** The remedies about the device of one circuit, of circuits whose board stays. */
function exchangesOnOldBoards(worked: Worked): ReturnType<typeof exchangedDevices> {
  const moved = new Set(exchangedBoards(worked).flatMap(({ on }) => on?.recorded.map(({ id }) => id) ?? []));
  return exchangedDevices(worked.scheme?.remedies ?? []).filter(([first]) => !moved.has(first?.at ?? ''));
}

/** One device for each circuit, by what it is in the end. */
function deviceWork(worked: Worked): readonly Amount[] {
  return exchangesOnOldBoards(worked).map((remedies) => ({
    task: isRcbo(deviceAfter(worked, remedies)) ? 'fit-rcbo' : 'exchange-device',
    quantity: 1,
    low: 1,
    high: 1,
    causes: remedies.map(remedyCause),
  }));
}

/**
 * A circuit behind an RCD has its neutral in that RCD's bar; an RCBO takes both out of it, and the neutral has to be found
 * and moved. Where nobody has told the circuit's device it may turn out so.
 */
function neutralWork(worked: Worked): readonly Amount[] {
  const foundOf = new Map(worked.found.circuits.map((circuit) => [circuit.id, circuit]));
  return exchangesOnOldBoards(worked).flatMap((remedies) => {
    const found = foundOf.get(remedies[0]?.at ?? '');
    if (found === undefined || !isRcbo(deviceAfter(worked, remedies))) return [];
    const cause = remedies.map(remedyCause)[0] ?? found.id;
    if (found.circuit?.upstreamRcd !== undefined) return [certain('move-neutral', cause)];
    return found.device ? [] : [possible('move-neutral', cause)];
  });
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
  return [
    ...originWork(worked),
    ...deviceWork(worked),
    ...neutralWork(worked),
    ...remedyWork(worked),
    ...surgeWork(worked),
    ...movedCircuits(worked),
  ];
}
