import type { Worked } from '#engine/connections/worked.ts';
import { metres } from '#engine/quotation/said.ts';
import type { Run } from '#engine/ways/run.ts';
import { coloursOfFound } from '#engine/work/core-colour.ts';
import type { References } from '#engine/work/references.ts';
import type { Cable } from '#model/cable.ts';
import type { Leg } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import { colourWords } from '../../work/core-words.ts';
import { isFoundAsSeen } from '../cable-layer.ts';
import { storeysOf } from '../cable-shapes.ts';
import type { Section } from './column.ts';
import { type Entry, listed } from './entries.ts';

const typeWords: Readonly<Record<Cable['type'], string>> = {
  'flat-twin': 'flat twin',
  'flat-single': 'singles',
  'steel-wire-armoured': 'armoured',
  flex: 'flex',
  imperial: 'imperial flat twin',
};

/** A certainty as it stands behind what it is of. */
const certaintyWords: Readonly<Record<Certainty, string>> = {
  seen: 'seen',
  measured: 'measured',
  assumed: 'assumed',
  unknown: 'not known',
};

/** How sure a field is: one that is given and not named counts as seen. */
const sure = (leg: Leg, field: 'cable' | 'length'): string =>
  certaintyWords[leg.certainty?.[field] ?? 'seen'];

function sizeSaid(leg: Leg): string {
  const { cable } = leg;
  if (cable === undefined) return 'cable not looked at';
  const size = cable.cpcMm2 > 0 ? `${cable.lineMm2}/${cable.cpcMm2} mm²` : `${cable.lineMm2} mm², no earth`;
  const era = cable.era === undefined ? '' : ` (${cable.era})`;
  return `${size} ${typeWords[cable.type]}${era}, ${sure(leg, 'cable')}`;
}

/** The colours of line and neutral as the survey has them, at the points or of the circuit; never guessed. */
function coloursSaid({ job }: Worked, leg: Leg): string {
  const circuit = job.circuits.find(({ id }) => id === leg.circuit) ?? null;
  const ends = [leg.from, leg.to].flatMap((end) => ('point' in end ? [end.point] : []));
  const said = ends.map((pointId) => {
    const point = job.points.find(({ id }) => id === pointId);
    const { line, neutral } = coloursOfFound(leg.cable ?? null, point, circuit);
    return line === null || neutral === null ? null : `${colourWords[line]}, ${colourWords[neutral]}`;
  });
  const told = [...new Set(said)].filter((each) => each !== null);
  return told.length === 0 ? 'colours not told' : told.join(' / ');
}

function waySaid(worked: Worked, run: Run): string {
  if (run.segments.length === 0) return 'way not known: not drawn';
  return isFoundAsSeen(worked, run) ? 'way seen' : 'way assumed';
}

function removedSaid({ proposed }: Worked, run: Run): string {
  const gone = proposed.removed.filter(({ legId }) => legId === run.legId);
  if (gone.length === 0) return '';
  const isWhole = gone.some(
    ({ fromMm, toMm }) => fromMm === null || toMm === null || (fromMm <= 0 && toMm >= (run.lengthMm ?? 0)),
  );
  return isWhole ? 'taken out of use' : 'a part of it taken out of use';
}

/** One leg in a row: its name, what it is, and how sure that is. */
function rowOf(worked: Worked, references: References, leg: Leg, run: Run): string {
  const length =
    leg.lengthMm === undefined ? 'length not told' : `${metres(leg.lengthMm)} ${sure(leg, 'length')}`;
  const told = [
    sizeSaid(leg),
    coloursSaid(worked, leg),
    length,
    waySaid(worked, run),
    removedSaid(worked, run),
  ];
  return `${references.cable(leg.id)}: ${told.filter((each) => each !== '').join('; ')}`;
}

/** The found cables that show on a storey, by circuit: leg, size and colours as found, and how sure each is. */
export function foundCableSection(worked: Worked, storeyId: string, references: References): Section | null {
  const runs = [...worked.foundRuns.values()].filter((run) => storeysOf(run).has(storeyId));
  const byCircuit = new Map<string, string[]>();
  for (const run of runs) {
    const leg = worked.job.legs.find(({ id }) => id === run.legId);
    if (leg === undefined) continue;
    const row = rowOf(worked, references, leg, run);
    byCircuit.set(leg.circuit, [...(byCircuit.get(leg.circuit) ?? []), row]);
  }
  const entries = [...byCircuit].map(
    ([circuitId, rows]): Entry => ({
      head: worked.job.circuits.find(({ id }) => id === circuitId)?.name ?? 'Circuit not told',
      rows,
    }),
  );
  return listed('Cables as found', entries, 'text');
}
