import type { BackBox, CableJoint, TerminalFill } from '#engine/connections/things.ts';
import { counted } from '#engine/rules/counted.ts';
import type { CableEnd, ConnectionPlace, Lead, TerminalSide } from '#engine/work/connection-place.ts';
import { connectionSteps, flexWords } from './connection-steps.ts';
import { colourSaid, coreWords, terminalWords } from './core-words.ts';
import { accessoryWords } from './place-words.ts';

/** One conductor as it is read: "line", "red", "L". */
export interface ConductorSaid {
  readonly core: string;
  readonly colour: string;
  readonly terminal: string;
}

/** A cable's end, or a lead, as it is read. */
export interface EndSaid {
  /** "K1, new, to W1", "R8–R9, found, to R9", "Cable found, not recorded". */
  readonly words: string;
  /** "2.5/1.5 mm²"; empty where nobody knows it. */
  readonly size: string;
  readonly isNew: boolean;
  readonly conductors: readonly ConductorSaid[];
}

/** A place's connections in words, as one card of the sheet; lists are empty where there is nothing to say. */
export interface ConnectionCard {
  /** "R8, twin socket-outlet". */
  readonly title: string;
  /** "Bed 2, 300 mm above the floor". */
  readonly where: string;
  /** What is done here, in order. */
  readonly todo: readonly string[];
  /** Ends by terminals: the supply of a fused unit before its load. */
  readonly sides: readonly { readonly title: string; readonly ends: readonly EndSaid[] }[];
  /** How full the terminals, the joint and the box are. */
  readonly holds: readonly string[];
  /** What is to be looked at before anything is cut: nothing here is guessed. */
  readonly look: readonly string[];
}

/** A place of the connection sheet in words. */
export function connectionCard(place: ConnectionPlace): ConnectionCard {
  return {
    title: titleOf(place),
    where: whereWords(place),
    todo: place.isWorkedOn ? connectionSteps(place) : [],
    sides: sidesSaid(place),
    holds: [...fillsSaid(place), ...jointHolds(place.joint), ...boardHolds(place), ...boxHolds(place.box)],
    look: looksOf(place),
  };
}

function titleOf({ mark, kind, accessory, joint }: ConnectionPlace): string {
  if (kind === 'board') return mark;
  if (kind === 'joint') return `${mark}, ${joint === null ? 'joint' : jointKindWords[joint.kind]}`;
  if (kind === 'old-box') return `Old box of ${mark}, blank plate`;
  if (kind === 'appliance') return `${mark}, its end of the flex`;
  return `${mark}, ${accessoryWords(accessory)}`;
}

/** Kinds of joint, in words. */
export const jointKindWords = {
  screw: 'joint with screw terminals',
  lever: 'joint with lever terminals',
  'maintenance-free': 'maintenance-free joint',
  crimp: 'crimped joint',
} as const;

/** Where a joint lies, in words. */
export const liesWords = {
  'floor-void': 'under the floor',
  'ceiling-void': 'above the ceiling',
  wall: 'in the wall',
  loft: 'in the loft',
  surface: 'on the surface',
  box: 'in its box',
  unknown: 'nobody has said where',
} as const;

function whereWords({ room, heightMm, joint }: ConnectionPlace): string {
  const at =
    joint === null
      ? heightMm === null
        ? []
        : [`${Math.round(heightMm)} mm above the floor`]
      : [liesWords[joint.lies]];
  return [...(room === null ? [] : [room]), ...at].join(', ');
}

/** What stands over the leads of a place; elsewhere that they are beside its cables. */
const ownTitles: Partial<Readonly<Record<ConnectionPlace['kind'], string>>> = {
  board: 'The device’s own leads',
  appliance: '',
};

function sidesSaid({ sides, leads, kind }: ConnectionPlace): ConnectionCard['sides'] {
  const said = sides.map(({ side, ends }) => ({ title: sideTitles[side], ends: ends.map(endSaid) }));
  const own = leads.map(leadSaid);
  if (own.length === 0) return said.filter(({ ends }) => ends.length > 0);
  return [...said, { title: ownTitles[kind] ?? 'Beside cables', ends: own }].filter(
    ({ ends }) => ends.length > 0,
  );
}

const sideTitles: Readonly<Record<TerminalSide['side'], string>> = {
  only: '',
  supply: 'Supply side',
  load: 'Load side, behind the fuse',
};

const stateWords: Readonly<Record<CableEnd['state'], string>> = {
  found: 'found',
  'cut-end': 'found, cut end',
  new: 'new',
  'not-recorded': '',
};

function endSaid(end: CableEnd): EndSaid {
  const { mark, state, towards, lineMm2, cpcMm2, ringEnd } = end;
  const to = towards === null ? [] : [`to ${towards.mark}`];
  const ring = ringEnd === null ? [] : [`end ${ringEnd}`];
  return {
    words:
      mark === null
        ? 'Cable found, where it goes not recorded'
        : [mark, stateWords[state], ...ring, ...to].join(', '),
    size: lineMm2 === null ? 'size not told' : `${lineMm2}/${cpcMm2 ?? 0} mm²`,
    isNew: state === 'new',
    conductors: conductorsSaid(end.conductors),
  };
}

const leadNames: Readonly<Record<Lead['kind'], string>> = {
  flex: 'Flex of the appliance',
  'box-tail': 'Tail from the box',
  'rcbo-neutral': 'Neutral lead of the RCBO',
  'rcbo-earth': 'Functional earth of the RCBO',
};

const leadSaid = ({ kind, conductors, flex }: Lead): EndSaid => ({
  words: flex === undefined ? leadNames[kind] : `${leadNames[kind]}, ${flexWords(flex.areaMm2)}`,
  size: '',
  isNew: true,
  conductors: conductorsSaid(conductors).map((said, i) =>
    conductors[i]?.foundColour === null ? { ...said, colour: 'as its maker says' } : said,
  ),
});

const conductorsSaid = (conductors: CableEnd['conductors']): readonly ConductorSaid[] =>
  conductors.map((conductor) => ({
    core: coreWords[conductor.core],
    colour: colourSaid(conductor),
    terminal: terminalWords[conductor.terminal],
  }));

/** How full terminals are, each of line and neutral alike; a flex is in those of the load, or beside the cable in an outlet plate's. */
function fillsSaid({ sides, leads }: ConnectionPlace): readonly string[] {
  const flexMm2 = leads.find(({ flex }) => flex !== undefined)?.flex?.areaMm2 ?? null;
  return sides.flatMap(({ fill, side }, i) => fillWords(fill, side, i === sides.length - 1 ? flexMm2 : null));
}

const sideSaid: Readonly<Record<TerminalSide['side'], string>> = {
  only: 'Each terminal',
  supply: 'Each supply terminal',
  load: 'Each load terminal',
};

function fillWords(
  fill: TerminalFill | null,
  side: TerminalSide['side'],
  flexMm2: number | null,
): readonly string[] {
  const count = (fill?.cables ?? 0) + (flexMm2 === null ? 0 : 1);
  if (fill === null || count === 0) return [];
  const areaMm2 = fill.areaMm2 === null ? null : fill.areaMm2 + (flexMm2 ?? 0);
  const size =
    areaMm2 === null
      ? 'of a size nobody knows: look'
      : `${rounded(areaMm2)} mm²${count > 1 ? ' together' : ''}`;
  const what = fill.cables === 0 ? 'the flex' : counted(count, 'conductor');
  const here = `${what}${fill.counted ? '' : ', not counted yet'}, ${size}`;
  return [
    `${sideSaid[side]}: ${here} (usual: up to ${fill.capacityCables}, ${rounded(fill.capacityMm2)} mm²; its own sheet decides).`,
  ];
}

/** Conductors of a joint against what it takes, each of line, neutral and earth alike. */
function jointHolds(joint: CableJoint | null): readonly string[] {
  if (joint === null) return [];
  const { takes, cables, conductorAreaMm2, areaMm2 } = joint;
  if (takes === null) return ['Joint: what it takes is not known. Look at it, and read its maker’s sheet.'];
  const said = [
    takes.cables === null ? counted(cables, 'cable') : `${cables} of ${counted(takes.cables, 'cable')}`,
    conductorAreaMm2 === 0
      ? `sizes not told, ${rounded(takes.conductorMm2)} mm² at the most`
      : `the largest conductor ${rounded(conductorAreaMm2)} of ${rounded(takes.conductorMm2)} mm²`,
    ...(takes.areaMm2 === null
      ? []
      : [
          `${areaMm2 === null ? 'area not known' : rounded(areaMm2)} of ${rounded(takes.areaMm2)} mm² together`,
        ]),
  ];
  return [
    `Joint: ${said.join(', ')}; ${takes.isFromSheet ? 'by its maker’s sheet' : 'as is usual for its kind: its own sheet decides'}.`,
  ];
}

/** What a device and a bar take differs by make, and no figure is held. */
const boardHolds = ({ kind, isWorkedOn }: ConnectionPlace): readonly string[] =>
  kind === 'board' && isWorkedOn
    ? ['Terminals: a device or a bar takes two conductors in one terminal only where its maker says so.']
    : [];

const rounded = (mm2: number): number => Math.round(mm2 * 100) / 100;

function boxHolds(box: BackBox | null): readonly string[] {
  if (box === null) return [];
  if (box.action === 'unknown')
    return [
      `Box: depth not known; ${box.minimumDepthMm} mm is the least for ${counted(box.cables, 'cable')}. Measure it.`,
    ];
  return [
    `Box: ${box.depthMm} mm deep for ${counted(box.cables, 'cable')}; ${box.minimumDepthMm} mm is the least.`,
  ];
}

/** A device is bought for a board: until its make is known, it is written here. */
const MAKE_ASKED =
  'Note the board’s make and model before a device is bought: ______________________________';

function looksOf({
  sides,
  mixesColours,
  unrecordedCircuits,
  box,
  buyFor,
}: ConnectionPlace): readonly string[] {
  const ends = sides.flatMap(({ ends: each }) => each);
  const unrecorded = ends.filter(({ state }) => state === 'not-recorded').length;
  return [
    ...(unrecorded > 0
      ? [
          `${unrecorded === 1 ? 'One cable' : `${unrecorded} cables`} here: no record tells where to. Trace before connecting.`,
        ]
      : []),
    ...(ends.some(({ conductors }) =>
      conductors.some(({ core, foundColour }) => core !== 'earth' && foundColour === null),
    )
      ? ['Colours of some cables are not told: prove each core by test, never by colour alone.']
      : []),
    ...(mixesColours === true
      ? [
          'Old and new colours meet: red with brown, black with blue. Black of old cable is a neutral; do not take it for a line.',
        ]
      : []),
    ...(box?.party === true ? ['The wall is a party wall.'] : []),
    ...(buyFor?.make === null ? [MAKE_ASKED] : []),
    ...unrecordedCircuits.map((name) => `${name}: its cables at the board are not recorded.`),
  ];
}
