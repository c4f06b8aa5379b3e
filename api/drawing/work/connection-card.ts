import { isRcbo } from '#engine/circuit/fitted-device.ts';
import type { BackBox, CableJoint, TerminalFill } from '#engine/connections/things.ts';
import { counted } from '#engine/rules/counted.ts';
import type {
  CableEnd,
  ChangedDevice,
  ConnectionPlace,
  Lead,
  TerminalSide,
} from '#engine/work/connection-place.ts';
import type { Device, PointKind } from '#model/installation.ts';
import { pointKindWords } from '../point-kind-words.ts';
import { colourSaid, coreWords, terminalWords } from './core-words.ts';

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
    todo: place.isWorkedOn ? todoOf(place) : [],
    sides: sidesSaid(place),
    holds: [
      ...place.sides.flatMap(({ fill, side }) => fillWords(fill, side)),
      ...jointHolds(place.joint),
      ...boardHolds(place),
      ...boxHolds(place.box),
    ],
    look: looksOf(place),
  };
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

function titleOf({ mark, kind, accessory, joint }: ConnectionPlace): string {
  if (kind === 'board') return mark;
  if (kind === 'joint') return `${mark}, ${joint === null ? 'joint' : jointKindWords[joint.kind]}`;
  if (kind === 'old-box') return `Old box of ${mark}, blank plate`;
  const stands = accessory === null ? 'fused-unit' : accessory.kind;
  return `${mark}, ${lower(pointKindWords[stands as PointKind] ?? stands)}`;
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

function todoOf(place: ConnectionPlace): readonly string[] {
  return [
    ...place.gone.map(goneWords),
    ...place.devices.map(deviceTodo),
    ...boxTodo(place.box),
    ...accessoryTodo(place),
    ...jointTodo(place),
    ...place.sides.flatMap(({ ends }) => ends.flatMap(broughtWords)),
    ...place.leads.map((lead) => leadWords[lead.kind]),
    ...fuseTodo(place.sides),
    'Strip length and tightening: as the maker’s sheet says.',
  ];
}

const goneWords = ({ mark, towards }: CableEnd): string =>
  mark === null
    ? 'Disconnect the cable found that goes: which one is told by tracing it. Make its end dead for good.'
    : `Disconnect ${mark}${towards === null ? '' : ` (to ${towards.mark})`}: it goes. Make its end dead for good, where it is.`;

/** "RCBO, 32 A, curve B, 30 mA type A". */
const deviceWords = (device: Device): string =>
  [
    isRcbo(device) ? 'RCBO' : device.standard === 'BS-EN-60898' ? 'breaker' : 'device',
    `${device.ratingA} A`,
    ...(device.curve === undefined ? [] : [`curve ${device.curve}`]),
    ...(device.rcd === undefined ? [] : [`${device.rcd.mA} mA type ${device.rcd.type}`]),
  ].join(', ');

function deviceTodo({ circuitName: name, way, before, after }: ChangedDevice): string {
  const circuitName = way === null ? name : `${name} (way ${way})`;
  if (after === null)
    return `${circuitName}: its device is exchanged; its rating is not told. Read it off first.`;
  const fitted = `${deviceWords(after)}, as the board’s maker accepts`;
  if (before === null) return `Fit the device of ${circuitName}: ${fitted}.`;
  return `Exchange the device of ${circuitName} (${deviceWords(before)}): ${fitted}.`;
}

function boxTodo(box: BackBox | null): readonly string[] {
  if (box === null) return [];
  switch (box.action) {
    case 'fit':
      return [`Fit a ${gangWords(box.gangs)} box, ${box.depthMm} mm deep.`];
    case 're-box':
      return [`Exchange the box found for a ${gangWords(box.gangs)} one, ${box.depthMm} mm deep.`];
    case 'frame':
      return [`Put a ${box.frameMm ?? 0} mm spacer frame over the box found.`];
    case 'unknown':
    case 'keep':
      return [];
  }
}

const gangWords = (gangs: number): string =>
  gangs === 1 ? 'single' : gangs === 2 ? 'twin' : `${gangs}-gang`;

function accessoryTodo({ accessory, kind }: ConnectionPlace): readonly string[] {
  if (accessory?.isNew !== true || kind === 'old-box') return [];
  return [`Fit the ${lower(pointKindWords[accessory.kind as PointKind] ?? accessory.kind)}.`];
}

function jointTodo({ joint }: ConnectionPlace): readonly string[] {
  if (joint?.state !== 'new') return [];
  const access =
    joint.accessible === false
      ? 'It is not to be come to afterwards: only a joint made for that may be used, as its maker says.'
      : joint.accessible === true
        ? 'It stays where it can be come to.'
        : 'Nobody has said whether it can be come to afterwards.';
  return [`Make the joint: ${joint.ratingA} A, ${counted(joint.cables, 'cable')}. ${access}`];
}

const broughtWords = ({ state, mark, towards }: CableEnd): readonly string[] =>
  state === 'new'
    ? [`Bring ${mark ?? 'the new cable'} in${towards === null ? '' : ` from ${towards.mark}`}.`]
    : state === 'cut-end'
      ? [`Bring the cut end of ${mark ?? 'the old cable'} in.`]
      : [];

const leadWords: Readonly<Record<Lead['kind'], string>> = {
  flex: 'Bring the appliance’s flex in under its grip.',
  'box-tail': 'Lead a green-yellow tail from the box’s earth to the plate’s.',
  'rcbo-neutral': 'The RCBO’s own neutral lead to the N bar, where its maker gives it one.',
  'rcbo-earth': 'The RCBO’s functional earth to the E bar, where its maker gives it one.',
};

const fuseTodo = (sides: readonly TerminalSide[]): readonly string[] =>
  sides.flatMap(({ fuse }) =>
    fuse === undefined
      ? []
      : [fuse.ratingA === null ? 'Its fuse: nobody has said which.' : `Fuse: ${fuse.ratingA} A, BS 1362.`],
  );

function sidesSaid({ sides, leads, kind }: ConnectionPlace): ConnectionCard['sides'] {
  const said = sides.map(({ side, ends }) => ({ title: sideTitles[side], ends: ends.map(endSaid) }));
  const own = leads.map(leadSaid);
  if (own.length === 0) return said.filter(({ ends }) => ends.length > 0);
  return [
    ...said,
    { title: kind === 'board' ? 'The device’s own leads' : 'Beside cables', ends: own },
  ].filter(({ ends }) => ends.length > 0);
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

const leadSaid = ({ kind, conductors }: Lead): EndSaid => ({
  words: leadNames[kind],
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

function fillWords(fill: TerminalFill | null, side: TerminalSide['side']): readonly string[] {
  if (fill === null || fill.cables === 0) return [];
  const where =
    side === 'only' ? 'Each terminal' : side === 'supply' ? 'Each supply terminal' : 'Each load terminal';
  const area =
    fill.areaMm2 === null ? 'area not known' : `${rounded(fill.areaMm2)} of ${rounded(fill.capacityMm2)} mm²`;
  const cables = `${fill.cables} of ${counted(fill.capacityCables, 'conductor')}`;
  return [`${where}: ${cables}${fill.counted ? '' : ', not counted yet'}, ${area}.`];
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

function looksOf({ sides, mixesColours, unrecordedCircuits, box }: ConnectionPlace): readonly string[] {
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
    ...unrecordedCircuits.map((name) => `${name}: its cables at the board are not recorded.`),
  ];
}
