import type { Circuit, Device } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import { type BoardCircuits, circuitsOfBoard } from '../circuit/board-circuits.ts';
import type { NetworkCircuit } from '../circuit/network.ts';
import { wantsSurgeDevice } from '../connections/surge-device.ts';
import type { Worked } from '../connections/worked.ts';
import type { Demand } from './demand.ts';
import { deviceItem } from './device-item.ts';
import type { KitCounts } from './kit-counts.ts';
import { remedyCause } from './remedy-cause.ts';

/** What a circuit of a use has on a new board where nobody looked at its device. */
const unseenDevice: Readonly<Record<Circuit['use'], keyof KitCounts & `${string}DeviceA`>> = {
  sockets: 'socketsDeviceA',
  kitchen: 'socketsDeviceA',
  cooker: 'cookerDeviceA',
  heating: 'heatingDeviceA',
  other: 'otherDeviceA',
};

const rcboOf = (ratingA: number): Device => ({
  standard: 'BS-EN-61009',
  curve: 'B',
  ratingA,
  rcd: { type: 'A', mA: 30 },
});

/** A board that a scheme exchanges: the remedy, and what is on the board; null where the remedy names none. */
export interface ExchangedBoard {
  readonly remedy: Remedy;
  readonly on: BoardCircuits | null;
}

/** The boards that a scheme exchanges, in the order of its remedies. */
export function exchangedBoards({ job, proposed, scheme }: Worked): readonly ExchangedBoard[] {
  return (scheme?.remedies ?? [])
    .filter(({ kind }) => kind === 'new-board')
    .map((remedy) => ({
      remedy,
      on: job.boards.some(({ id }) => id === remedy.at)
        ? circuitsOfBoard(job, proposed, remedy.at ?? '')
        : null,
    }));
}

/**
 * A new board for its circuits: the enclosure by its ways, an RCBO for each circuit that comes over, a blank for each way that
 * stays free. Devices of new circuits, and those that another remedy is about, are counted with these; they take a way here.
 * Where the owner wants surge protection its device takes ways, too. Sized by the most circuits that there may be, with some to
 * spare. A remedy that names no board gets the smallest, empty.
 */
export function boardDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  return exchangedBoards(worked).flatMap(({ remedy, on }) => {
    const cause = remedyCause(remedy);
    const known = (on?.recorded.length ?? 0) + (on?.added ?? 0);
    const { likely, low, high } = on?.unrecorded ?? { likely: 0, low: 0, high: 0 };
    const surge = wantsSurgeDevice(worked.job);
    const taken = known + (surge ? counts.surgeDeviceWays : 0);
    const ways = waysFor(taken + high, counts);
    const blanks = (circuits: number): number => ways - taken - circuits;
    return [
      part(`consumer-unit-${ways}`, cause, { measured: 1 }),
      ...(surge ? [part('surge-device', cause, { measured: 1 })] : []),
      ...(on?.recorded ?? [])
        .filter(({ id }) => !hasOwnRemedy(worked, id))
        .map((circuit) => part(deviceItem(deviceFor(circuit, counts)), cause, { measured: 1 })),
      ...(high === 0
        ? []
        : [part(deviceItem(rcboOf(counts.otherDeviceA)), cause, { measured: likely, low, high })]),
      part('board-blank', cause, { measured: blanks(likely), low: blanks(high), high: blanks(low) }),
    ];
  });
}

/** The smallest board bought that holds so many circuits with ways to spare; past the largest, one of just so many ways. */
export function waysFor(
  circuits: number,
  { boardSpareWays, sold }: Pick<KitCounts, 'boardSpareWays' | 'sold'>,
): number {
  const wanted = circuits + boardSpareWays;
  return sold.boardWays.find((ways) => ways >= wanted) ?? wanted;
}

/** Whether another remedy is about the device of a circuit: then it is bought there. */
const hasOwnRemedy = ({ scheme }: Worked, circuitId: string): boolean =>
  (scheme?.remedies ?? []).some(
    ({ kind, at }) => (kind === 'rcbo' || kind === 'lower-device') && at === circuitId,
  );

/** The device that a circuit has on the new board; where nobody looked at its own, an RCBO usual for its use. */
const deviceFor = ({ device, circuit }: NetworkCircuit, counts: KitCounts): Device =>
  device ?? rcboOf(counts[unseenDevice[circuit?.use ?? 'other']]);

const part = (item: string, cause: string, amounts: Pick<Demand, 'measured' | 'low' | 'high'>): Demand => ({
  item,
  unit: 'each',
  group: 'protection',
  causes: [cause],
  ...amounts,
});
