import { isRcbo } from '../circuit/fitted-device.ts';
import type { Worked } from '../connections/worked.ts';
import type { Conductor, Lead, TerminalName } from './connection-place.ts';
import { type Core, coloursOfNew } from './core-colour.ts';
import type { PlaceNodes } from './place-nodes.ts';

/** The flex of a fixed appliance is told as its colours are; its size is the kit's. */
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

function flexLeads({ things }: Worked, { id }: PlaceNodes): readonly Lead[] {
  const unit = things.fusedUnits.find((each) => each.id === id && each.flexOutlet && each.state === 'new');
  if (unit === undefined) return [];
  return [
    {
      kind: 'flex',
      conductors: [
        lead('line', flexColours.line, 'L-out'),
        lead('neutral', flexColours.neutral, 'N-out'),
        lead('earth', flexColours.earth, 'E2'),
      ],
    },
  ];
}

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
