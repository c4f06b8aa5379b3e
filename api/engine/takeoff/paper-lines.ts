import { isRcbo } from '../circuit/fitted-device.ts';
import type { Worked } from '../connections/worked.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { deviceAfter, exchangedDevices } from './protection-lines.ts';
import { remedyCause } from './remedy-cause.ts';
import { sundryDemands } from './sundry-lines.ts';

/** Certificates, notices and charts of a scheme, and what a job uses up; nothing for the house as found. */
export function paperDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  return [...certificateDemands(worked), ...noticeDemands(worked), ...sundryDemands(worked, counts)];
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
