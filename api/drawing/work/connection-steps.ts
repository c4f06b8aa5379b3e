import { isRcbo } from '#engine/circuit/fitted-device.ts';
import { counted } from '#engine/rules/counted.ts';
import type {
  CableEnd,
  ChangedDevice,
  ConnectionPlace,
  FlexOrigin,
  Lead,
  TerminalSide,
} from '#engine/work/connection-place.ts';
import type { Device } from '#model/installation.ts';
import { boxSteps, frameWords } from './box-words.ts';
import { accessoryWords } from './place-words.ts';

/**
 * What is done at a place that is worked on, in the order of the hands: dead, the box, cables in, stripped and sleeved, connected, tightened,
 * dressed, and what covers it last. Common practice, no source, save where said.
 */
export const connectionSteps = (place: ConnectionPlace): readonly string[] =>
  place.fedFrom === null
    ? [
        `${deadWords(place)}${openedWords(place)}`,
        ...place.gone.map(goneWords),
        ...place.devices.map((device) => deviceStep(place, device)),
        ...boxSteps(place.box),
        ...place.sides.flatMap(({ ends }) => ends.flatMap(broughtWords)),
        ...place.leads.flatMap(flexIn),
        ...stripped(place),
        ...connected(place),
        ...place.leads.flatMap(({ kind }) => leadSteps[kind]),
        'Tighten as the maker’s sheet says; pull each core.',
        ...fuseSteps(place.sides),
        closed(place),
      ]
    : applianceSteps(place, place.fedFrom);

const deadWords = ({ kind }: ConnectionPlace): string =>
  kind === 'board'
    ? 'Main switch off and locked; the tails and its supply side stay live. Prove dead what is worked on.'
    : 'Isolated, locked off: prove dead here.';

/** A place that was there is taken apart only once it is known which cable is which. */
const openedWords = ({ kind, accessory, sides }: ConnectionPlace): string =>
  kind !== 'board' &&
  kind !== 'joint' &&
  (accessory === null || !accessory.isNew || sides.some(({ ends }) => ends.some(isOld)))
    ? ' Plate off: mark which cable is which.'
    : '';

const isOld = ({ state }: CableEnd): boolean => state === 'found' || state === 'not-recorded';

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

function deviceStep({ buyFor }: ConnectionPlace, { circuitName: name, way, before, after }: ChangedDevice) {
  const circuitName = way === null ? name : `${name} (way ${way})`;
  if (after === null)
    return `${circuitName}: its device is exchanged; its rating is not told. Read it off first.`;
  const maker = buyFor?.make ?? null;
  const listed =
    maker === null ? 'one that the board’s maker lists for it' : `one that ${maker} lists for this board`;
  const fitted = `${deviceWords(after)}: ${listed}`;
  if (before === null) return `Fit the device of ${circuitName}: ${fitted}.`;
  return `Exchange the device of ${circuitName} (${deviceWords(before)}): ${fitted}.`;
}

const broughtWords = ({ state, mark, towards }: CableEnd): readonly string[] =>
  state === 'new'
    ? [`Bring ${mark ?? 'the new cable'} in${towards === null ? '' : ` from ${towards.mark}`}.`]
    : state === 'cut-end'
      ? [`Bring the cut end of ${mark ?? 'the old cable'} in.`]
      : [];

const flexIn = ({ flex }: Lead): readonly string[] =>
  flex === undefined
    ? []
    : [
        `Bring the flex in under its grip: ${flexWords(flex.areaMm2)}; another only where the appliance brings its own or its maker asks for it.`,
      ];

/** "three-core, heat-resistant, 0.75 mm²", as the kit has it. */
export const flexWords = (areaMm2: number): string => `three-core, heat-resistant, ${areaMm2} mm²`;

/** Bare earths: BS 7671 514.4.2, from memory. */
function stripped({ kind, sides, leads }: ConnectionPlace): readonly string[] {
  const ends = sides.flatMap((side) => side.ends);
  const isCut =
    ends.some(({ state }) => state === 'new' || state === 'cut-end') || leads.some(({ flex }) => flex);
  if (!isCut) return [];
  const sleeves = ends.some(({ conductors }) => conductors.some(({ sleeve }) => sleeve === 'put-on'))
    ? ' Sleeve bare earths green-yellow.'
    : '';
  const inside = kind === 'joint' ? 'the joint’s cover' : kind === 'board' ? 'the board' : 'the box';
  return [`Cut the sheath back inside ${inside}; strip to the gauge.${sleeves}`];
}

function connected({ kind, joint, sides, devices }: ConnectionPlace): readonly string[] {
  if (joint?.state === 'new') {
    const access =
      joint.accessible === false
        ? 'It is not to be come to afterwards: only a joint made for that may be used, as its maker says.'
        : joint.accessible === true
          ? 'It stays where it can be come to.'
          : 'Nobody has said whether it can be come to afterwards.';
    return [
      `Make the joint, core by core as listed: ${joint.ratingA} A, ${counted(joint.cables, 'cable')}. ${access}`,
    ];
  }
  if (sides.every(({ ends }) => ends.length === 0)) return [];
  return kind === 'board' && devices.length > 0
    ? ['Line and neutral of the circuit to its own device, earth to the E bar, as listed.']
    : ['Connect each core to its terminal, as listed.'];
}

const leadSteps: Readonly<Record<Lead['kind'], readonly string[]>> = {
  flex: ['The flex to the load terminals, its grip tight on the sheath.'],
  'box-tail': ['Lead a green-yellow tail from the box’s earth to the plate’s.'],
  'rcbo-neutral': ['The RCBO’s own neutral lead to the N bar, where its maker gives it one.'],
  'rcbo-earth': ['The RCBO’s functional earth to the E bar, where its maker gives it one.'],
};

const fuseSteps = (sides: readonly TerminalSide[]): readonly string[] =>
  sides.flatMap(({ fuse }) =>
    fuse === undefined
      ? []
      : [fuse.ratingA === null ? 'Its fuse: nobody has said which.' : `Fuse: ${fuse.ratingA} A, BS 1362.`],
  );

function closed(place: ConnectionPlace): string {
  const { kind, box, accessory } = place;
  if (kind === 'board') return 'Dress the cores, none under strain; every entry closed, cover on.';
  if (kind === 'joint') return 'Dress the cores, clamp every sheath, close it and fix it.';
  const plate = kind === 'old-box' ? 'blank plate' : accessoryWords(accessory);
  const fit =
    accessory?.isNew === true || kind === 'old-box' ? `fit the ${plate}` : `screw the ${plate} back`;
  return `Dress the cores back, none trapped; ${fit}${frameWords(box)}.`;
}

const partedWords: Readonly<Record<FlexOrigin['partedBy'], string>> = {
  switch: 'its switch off, its fuse out and kept',
  fuse: 'its fuse out and kept; it has no switch',
  before: 'the switch or fuse before it off and locked',
};

/** Cases of gas appliances: Gas Safety (Installation and Use) Regulations 1998, from memory. */
const applianceSteps = ({ leads }: ConnectionPlace, { mark, partedBy }: FlexOrigin): readonly string[] => [
  'By the appliance’s own instructions. A gas appliance’s case is opened only by who is registered for gas.',
  `Isolated at ${mark}: ${partedWords[partedBy]}; prove dead here.`,
  ...leads.flatMap(({ flex }) =>
    flex === undefined
      ? []
      : [
          `Bring the flex in by the appliance’s own entry: ${flexWords(flex.areaMm2)}, clear of what gets hot.`,
        ],
  ),
  'Cut the sheath back inside its grip; leave the earth the longest core.',
  'Connect as listed; the terminals are marked by the maker.',
  'Tighten, pull each core, tighten the grip; cover on.',
];
