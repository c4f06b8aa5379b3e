import { isRcbo } from '../circuit/fitted-device.ts';
import { type ApplianceFlex, applianceFlexes } from '../connections/appliance-flex.ts';
import type { Worked } from '../connections/worked.ts';
import type { Conductor, Lead, TerminalName } from './connection-place.ts';
import { type Core, coloursOfNew } from './core-colour.ts';
import type { PlaceNodes } from './place-nodes.ts';

const flexColours = coloursOfNew({ type: 'flex', lineMm2: 0.75, cpcMm2: 0.75 });

const lead = (core: Core, colour: Conductor['foundColour'], terminal: Conductor['terminal']): Conductor => ({
  core,
  foundColour: colour,
  afterColour: colour,
  sleeve: null,
  terminal,
});

/**
 * What is connected at a place beside cables: the flex of a unit that takes one, the tail from a steel box, and an RCBO's own
 * neutral and functional earth, where the maker gives it them (their colours are the maker's).
 *
 * @param tailTo the earth terminal that a steel box's tail leads to; null: it has none.
 */
export function leadsOf(worked: Worked, place: PlaceNodes, tailTo: TerminalName | null): readonly Lead[] {
  return [
    ...flexLeads(worked, place),
    ...(tailTo === null
      ? []
      : [{ kind: 'box-tail', conductors: [lead('earth', 'green-yellow', tailTo)] } as const]),
    ...deviceLeads(worked, place),
  ];
}

/** At its load terminals where a unit has two sides, else at those that the cable is in. */
function flexLeads({ things, job }: Worked, { id, now }: PlaceNodes): readonly Lead[] {
  const isUnit = now.some(({ kind }) => kind === 'load-terminals');
  return applianceFlexes(things, job.points)
    .filter((flex) => flex.id === id)
    .map((flex) => flexLead(flex, isUnit ? ['L-out', 'N-out', 'E2'] : ['L', 'N', 'E']));
}

/** A flex with its three cores at terminals: line, neutral, earth. */
export const flexLead = (
  flex: ApplianceFlex,
  [line, neutral, earth]: readonly [TerminalName, TerminalName, TerminalName],
): Lead => ({
  kind: 'flex',
  flex,
  conductors: [
    lead('line', flexColours.line, line),
    lead('neutral', flexColours.neutral, neutral),
    lead('earth', flexColours.earth, earth),
  ],
});

/** Of every RCBO that the scheme fits at this board. */
function deviceLeads({ found, proposed }: Worked, { now }: PlaceNodes): readonly Lead[] {
  return now.flatMap(({ kind, circuitId }): readonly Lead[] => {
    if (kind !== 'origin') return [];
    const device = proposed.circuits.find(({ id }) => id === circuitId)?.device ?? null;
    const before = found.circuits.find(({ id }) => id === circuitId)?.device ?? null;
    if (device === null || device === before || !isRcbo(device)) return [];
    return [
      { kind: 'rcbo-neutral', conductors: [lead('neutral', null, 'N-bar')] },
      { kind: 'rcbo-earth', conductors: [lead('earth', null, 'E-bar')] },
    ];
  });
}
