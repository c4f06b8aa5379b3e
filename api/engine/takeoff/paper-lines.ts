import { isRcbo } from '../circuit/fitted-device.ts';
import type { Worked } from '../connections/worked.ts';
import { isMasonry, isMasonryCore } from '../ways/lay-in-wall.ts';
import type { Segment } from '../ways/run.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import { deviceAfter, exchangedDevices } from './protection-lines.ts';
import { remedyCause } from './remedy-cause.ts';

/** Certificates, notices and charts of a scheme, and what every job uses up; nothing for the house as found. */
export function paperDemands(worked: Worked): readonly Demand[] {
  return [...certificateDemands(worked), ...noticeDemands(worked), ...sundryDemands(worked)];
}

function paper(item: string, causes: readonly string[], measured = 1, low = measured): Demand {
  return { item, unit: 'each', group: 'papers', measured, low, causes };
}

/**
 * A minor works certificate for each circuit that is altered, an installation certificate where a circuit or a
 * board is new. Source: BS 7671 644.1 and 644.4.201.
 */
function certificateDemands({ scheme, circuitIds, found }: Worked): Demand[] {
  if (scheme === null) return [];
  const renewed = [
    ...scheme.connections.filter(({ kind }) => kind === 'radial').map(({ id }) => id),
    ...scheme.remedies.filter(({ kind }) => kind === 'new-board').map(remedyCause),
  ];
  const wasThere = new Set(found.circuits.map((circuit) => circuit.id));
  const altered = circuitIds.filter((id) => wasThere.has(id));
  const demands = altered.map((id) => paper('certificate-minor-works', [id]));
  return renewed.length === 0 ? demands : [...demands, paper('certificate-installation', renewed)];
}

function noticeDemands(worked: Worked): Demand[] {
  const { scheme, circuitIds, proposed } = worked;
  if (scheme === null) return [];
  const touched = proposed.circuits.filter((circuit) => circuitIds.includes(circuit.id));
  const boards = new Map<string, string[]>();
  for (const { board, id } of touched) {
    if (board) boards.set(board.id, [...(boards.get(board.id) ?? []), id]);
  }
  for (const remedy of scheme.remedies)
    if (remedy.kind === 'new-board' && remedy.at !== undefined)
      boards.set(remedy.at, [...(boards.get(remedy.at) ?? []), remedyCause(remedy)]);
  const demands = [...boards.values()].map((causes) => paper('circuit-chart', causes));
  const rcds = [
    ...scheme.connections
      .filter((connection) => connection.kind === 'radial' && isRcbo(connection.device))
      .map(({ id }) => id),
    ...exchangedDevices(scheme.remedies)
      .filter((remedies) => isRcbo(deviceAfter(worked, remedies)))
      .flatMap((remedies) => remedies.map(remedyCause)),
    ...scheme.remedies
      .filter(({ kind }) => kind === 'rcd-enclosure' || kind === 'new-board')
      .map(remedyCause),
  ];
  if (rcds.length > 0) demands.push(paper('notice-rcd', rcds));
  const mixed = touched.filter(({ circuit }) => circuit?.colours === 'old' || circuit?.colours === 'mixed');
  // Not every edition asks for it, so at the low end it is left out.
  if (mixed.length > 0)
    demands.push(
      paper(
        'notice-mixed-colours',
        mixed.map(({ id }) => id),
        1,
        0,
      ),
    );
  return demands;
}

/** What a job of this kind uses up, whatever its size. Common practice, no source. */
const everyJob: Readonly<Record<string, number>> = { 'insulating-tape': 1, 'dust-sheet': 2 };
const whereWallsAreCut: Readonly<Record<string, number>> = {
  'blade-multitool': 1,
  'dust-mask': 2,
  'rubble-sack': 2,
};
/** For holes drilled into masonry where nothing else of a wall is cut. Common practice, no source. */
const whereWallsAreDrilled: Readonly<Record<string, number>> = { 'dust-mask': 1 };

function sundryDemands(worked: Worked): Demand[] {
  const runIds = worked.runs.map((run) => run.id);
  const boxes = boxWork(worked).filter(({ measured }) => measured > 0);
  const cutIds = [
    ...boxes.filter(({ box }) => box.build !== 'surface').map(({ box }) => box.id),
    ...worked.runs
      .filter((run) => run.segments.some((segment) => segment.medium === 'wall-chase'))
      .map((run) => run.id),
  ];
  const used = (list: Readonly<Record<string, number>>, causes: readonly string[]): Demand[] =>
    causes.length === 0
      ? []
      : Object.entries(list).map(([item, measured]) => ({
          item,
          unit: 'each',
          group: 'sundries',
          measured,
          causes,
        }));
  return [
    ...used(everyJob, [...runIds, ...boxes.map(({ box }) => box.id)]),
    ...used(whereWallsAreCut, cutIds),
    ...used(whereWallsAreDrilled, cutIds.length > 0 ? [] : drilledIds(worked)),
  ];
}

/** Ways along or through a wall that are fixed to it by drilling. */
const drilledFor: readonly Segment['medium'][] = ['surface-channel', 'surface-clipped', 'through-wall'];

/** Boxes and runs for which holes are drilled into masonry: for their fixings, or right through. */
function drilledIds(worked: Worked): readonly string[] {
  const { plan, runs } = worked;
  const boxes = boxWork(worked).filter(
    ({ box, measured }) => measured > 0 && box.wallCore !== null && isMasonryCore(box.wallCore),
  );
  const drilled = runs.filter(({ segments }) =>
    segments.some(({ medium, wallId }) => {
      const wall = plan.wallById.get(wallId ?? '');
      return wall !== undefined && isMasonry(wall) && drilledFor.includes(medium);
    }),
  );
  return [...boxes.map(({ box }) => box.id), ...drilled.map(({ id }) => id)];
}
