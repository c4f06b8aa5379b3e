import { FRAME_DEPTHS_MM } from '../connections/box-depth.ts';
import { usualSold } from './kit-counts.ts';
import type { TakeoffGroup, TakeoffLine } from './line.ts';

/** A thing that the engine may ask for, by the id that price lists use. */
export interface Item {
  readonly id: string;
  readonly description: string;
  readonly unit: TakeoffLine['unit'];
  readonly group: TakeoffGroup;
}

function item(id: string, description: string, unit: Item['unit'], group: TakeoffGroup): Item {
  return { id, description, unit, group };
}

/** Flat twin and earth as sold today: line and protective conductor, mm². */
const flatCables = [
  ['1', '1'],
  ['1.5', '1'],
  ['2.5', '1.5'],
  ['4', '1.5'],
  ['6', '2.5'],
  ['10', '4'],
  ['16', '6'],
] as const;

const cables: readonly Item[] = [
  ...flatCables.map(([line, cpc]) =>
    item(`cable-flat-${line}-${cpc}`, `Flat twin and earth cable ${line}/${cpc} mm²`, 'm', 'cable'),
  ),
  ...['0.75', '1', '1.5', '2.5'].map((line) =>
    item(`flex-${line}`, `Three-core heat-resistant flex ${line} mm²`, 'm', 'cable'),
  ),
  item('earth-single-2.5', 'Green/yellow single 2.5 mm², box earth tails', 'm', 'cable'),
  ...usualSold.bondsMm2.map((mm2) =>
    item(`earth-single-${mm2}`, `Green/yellow single ${mm2} mm², main bonding`, 'm', 'cable'),
  ),
  item('tails-16', 'Meter tails 16 mm², one line and one neutral', 'm', 'cable'),
  item('sleeving-brown-3', 'Brown sleeving 3 mm, over old line conductors', 'm', 'cable'),
  ...['3', '4', '6'].map((bore) =>
    item(`sleeving-earth-${bore}`, `Green/yellow sleeving ${bore} mm`, 'm', 'cable'),
  ),
];

/** Metal plates as they are sold: of no look that anybody chose, and by their look. */
const metals = ['metal', 'brushed', 'polished', 'black'] as const;

/** What the head of a plate's screw is of, where it is seen. */
const screwHeads: Readonly<Record<(typeof metals)[number], string>> = {
  metal: 'head to match a metal plate',
  brushed: 'brushed head',
  polished: 'polished head',
  black: 'black head',
};

/** Features that outlets are sold with; other mixtures are not on the list. */
const socketFeatures = [
  ...['', '-usb', '-rcd', '-ip66', '-ip66-rcd'],
  ...metals.flatMap((metal) => [`-${metal}`, `-${metal}-usb`, `-${metal}-rcd`]),
];
const featureWords: Readonly<Record<string, string>> = {
  usb: 'with USB',
  rcd: 'with 30 mA RCD',
  ip66: 'weatherproof IP66',
  metal: 'metal plate',
  brushed: 'brushed metal plate',
  polished: 'polished metal plate',
  black: 'black metal plate',
  switched: 'switched',
  unswitched: 'unswitched',
  neon: 'with neon',
  flex: 'with flex outlet',
};

function featureText(suffix: string): string {
  const words = suffix.split('-').flatMap((word) => featureWords[word] ?? []);
  return words.length === 0 ? '' : `, ${words.join(', ')}`;
}

const sockets = ['single', 'twin'].flatMap((size) =>
  socketFeatures.map((suffix) =>
    item(
      `socket-${size}${suffix}`,
      `13 A ${size} socket-outlet${featureText(suffix)}`,
      'each',
      'accessories',
    ),
  ),
);

/** White moulded, then of metal. */
function inEachFinish(id: string): readonly string[] {
  return [id, ...metals.map((metal) => `${id}-${metal}`)];
}

/** An accessory in white moulded plastic and in metal. */
const plates = (id: string, words: string): readonly Item[] =>
  inEachFinish('').map((suffix) =>
    item(id + suffix, `${words}${featureText(suffix)}`, 'each', 'accessories'),
  );

const fusedUnits = [
  ...['-switched', '-unswitched'].flatMap((start) =>
    ['', '-neon'].flatMap((neon) => ['', '-flex'].flatMap((flex) => inEachFinish(start + neon + flex))),
  ),
  ...inEachFinish('-rcd'),
  ...inEachFinish('-rcd-flex'),
  '-switched-ip66',
  '-unswitched-ip66',
].map((suffix) =>
  item(`fused-unit${suffix}`, `Fused connection unit${featureText(suffix)}`, 'each', 'accessories'),
);

const accessories: readonly Item[] = [
  ...sockets,
  ...fusedUnits,
  ...plates('flex-outlet-plate', 'Flex outlet plate'),
  ...plates('dp-switch-20', 'Double-pole switch 20 A'),
  ...plates('cooker-control', 'Cooker control unit 45 A'),
  ...plates('shaver-outlet', 'Shaver supply unit'),
  ...plates('blank-plate-single', 'Blank plate, single'),
  ...plates('blank-plate-twin', 'Blank plate, twin'),
  ...plates('grid-plate-single', 'Grid plate and frame, single'),
  ...plates('grid-plate-twin', 'Grid plate and frame, twin'),
  item('grid-module-switch', 'Grid switch module 20 A double-pole', 'each', 'accessories'),
  item('grid-module-fuse', 'Grid fuse module', 'each', 'accessories'),
  ...['1', '2', '3', '5', '7', '10', '13'].map((ratingA) =>
    item(`fuse-bs1362-${ratingA}`, `Cartridge fuse BS 1362 ${ratingA} A`, 'each', 'accessories'),
  ),
];

const protection: readonly Item[] = [
  ...['b6', 'b10', 'b16', 'b20', 'b25', 'b32', 'b40', 'c16', 'c20', 'c32'].flatMap((size) => [
    item(
      `rcbo-${size}-30-a`,
      `RCBO ${size.toUpperCase()} 30 mA type A, to suit the board`,
      'each',
      'protection',
    ),
    item(`mcb-${size}`, `Circuit-breaker ${size.toUpperCase()}, to suit the board`, 'each', 'protection'),
  ]),
  item('rcd-63-30-a', 'RCD 63 A 30 mA type A, two-module', 'each', 'protection'),
  item('enclosure-2-module', 'Enclosure, steel, two to four modules', 'each', 'protection'),
  ...usualSold.boardWays.map((ways) =>
    item(
      `consumer-unit-${ways}`,
      `Consumer unit, steel, ${ways} ways, with main switch`,
      'each',
      'protection',
    ),
  ),
  item('surge-device', 'Surge protective device type 2, to suit the board', 'each', 'protection'),
  item('board-blank', 'Blank for an unused way of a board', 'each', 'protection'),
  item('bonding-clamp', 'Earth clamp BS 951 with label', 'each', 'protection'),
];

const joints: readonly Item[] = [
  item(
    'joint-mf-32-3',
    'Maintenance-free joint box 32 A, three-terminal, with cable clamps',
    'each',
    'joints',
  ),
  item(
    'joint-mf-20-4',
    'Maintenance-free joint box 20 A, four-terminal, with cable clamps',
    'each',
    'joints',
  ),
  item('connector-block', 'Connector block, three-pole, for the end of a cable out of use', 'each', 'joints'),
  item('joint-screw-20', 'Screw joint box 20 A', 'each', 'joints'),
  item('joint-screw-30', 'Screw joint box 30 A', 'each', 'joints'),
  item('joint-screw-60', 'Screw joint box 60 A', 'each', 'joints'),
  item('joint-enclosure', 'Enclosure with cable clamps for connectors or crimps', 'each', 'joints'),
  item(
    'joint-enclosure-large',
    'Large enclosure with cable clamps for connectors or crimps',
    'each',
    'joints',
  ),
  item('lever-2', 'Lever connector, two-way', 'each', 'joints'),
  item('lever-3', 'Lever connector, three-way', 'each', 'joints'),
  item('lever-5', 'Lever connector, five-way', 'each', 'joints'),
  item('lever-6-2', 'Lever connector to 6 mm², two-way', 'each', 'joints'),
  item('lever-6-3', 'Lever connector to 6 mm², three-way', 'each', 'joints'),
  item('lever-6-5', 'Lever connector to 6 mm², five-way', 'each', 'joints'),
  item('crimp-2.5', 'Insulated butt crimp, blue, 1.5 to 2.5 mm²', 'each', 'joints'),
  item('crimp-6', 'Insulated butt crimp, yellow, 4 to 6 mm²', 'each', 'joints'),
  item('heat-shrink', 'Heat-shrink sleeve with adhesive', 'm', 'joints'),
];

const boxBuilds = [
  ['steel', 'Steel back box', ['25', '35', '47']],
  ['dry-lining', 'Dry-lining back box', ['25', '35', '47']],
  ['surface', 'Surface back box', ['25', '35', '47']],
] as const;

const boxes: readonly Item[] = [
  ...boxBuilds.flatMap(([build, words, depths]) =>
    ['single', 'twin'].flatMap((size) =>
      depths.map((depth) =>
        item(`box-${build}-${size}-${depth}`, `${words}, ${size}, ${depth} mm deep`, 'each', 'boxes'),
      ),
    ),
  ),
  ...['single', 'twin'].flatMap((size) =>
    FRAME_DEPTHS_MM.map((depthMm) =>
      item(
        `frame-${size}-${depthMm}`,
        `Spacer frame under a plate, ${size}, ${depthMm} mm deep`,
        'each',
        'boxes',
      ),
    ),
  ),
  item('grommet-20', 'Open grommet 20 mm', 'each', 'boxes'),
  item('entry-gland-20', 'Cable gland 20 mm, weatherproof, for flat cable', 'each', 'boxes'),
  item('putty-pad-single', 'Fire putty pad for a single back box', 'each', 'boxes'),
  item('putty-pad-twin', 'Fire putty pad for a twin back box', 'each', 'boxes'),
];

/** What channel is turned, parted, closed and joined with. */
const channelFittings = [
  ['bend', 'Flat bend'],
  ['internal-bend', 'Internal bend'],
  ['external-bend', 'External bend'],
  ['tee', 'Flat tee'],
  ['end', 'End cap'],
  ['coupler', 'Coupler'],
] as const;

const containment: readonly Item[] = [
  ...['16', '20', '25', '32', '38'].map((size) =>
    item(`oval-${size}`, `Oval PVC tube ${size} mm`, 'm', 'containment'),
  ),
  ...['13', '25', '38', '50'].map((size) =>
    item(`capping-${size}`, `PVC capping ${size} mm`, 'm', 'containment'),
  ),
  ...['16x16', '25x16', '40x16', '40x25', '40x40', '50x50'].flatMap((size) => [
    item(`channel-${size}`, `Mini-trunking ${size.replace('x', ' × ')} mm`, 'm', 'containment'),
    ...channelFittings.map(([name, words]) =>
      item(
        `channel-${name}-${size}`,
        `${words} for mini-trunking ${size.replace('x', ' × ')} mm`,
        'each',
        'containment',
      ),
    ),
  ]),
  ...['20', '25', '32'].flatMap((size) => [
    item(`conduit-${size}`, `Round PVC conduit ${size} mm`, 'm', 'containment'),
    item(`conduit-bend-${size}`, `Bend for conduit ${size} mm`, 'each', 'containment'),
    item(`conduit-tee-${size}`, `Tee for conduit ${size} mm`, 'each', 'containment'),
    item(`conduit-coupler-${size}`, `Coupler for conduit ${size} mm`, 'each', 'containment'),
    item(`conduit-saddle-${size}`, `Saddle for conduit ${size} mm`, 'each', 'containment'),
    item(`conduit-saddle-metal-${size}`, `Metal saddle for conduit ${size} mm`, 'each', 'containment'),
    item(`conduit-adaptor-${size}`, `Box adaptor for conduit ${size} mm`, 'each', 'containment'),
  ]),
];

const fixings: readonly Item[] = [
  ...['1.5', '2.5', '4', '6', '10', '16'].map((size) =>
    item(`clip-flat-${size}`, `Clip for flat cable ${size} mm²`, 'each', 'fixings'),
  ),
  item('clip-metal', 'Metal fire clip', 'each', 'fixings'),
  item('capping-pin', 'Pin for capping', 'each', 'fixings'),
  item('screw-and-plug', 'Screw 4 × 35 mm with wall plug', 'each', 'fixings'),
  item('plasterboard-fixing', 'Self-drill plasterboard fixing with screw', 'each', 'fixings'),
  item('screw-wood-4x25', 'Wood screw 4 × 25 mm', 'each', 'fixings'),
  ...usualSold.plateScrewsMm.flatMap((lengthMm) => [
    item(`screw-m3.5-${lengthMm}`, `Accessory screw M3.5 × ${lengthMm} mm`, 'each', 'fixings'),
    ...metals.map((metal) =>
      item(
        `screw-m3.5-${lengthMm}-${metal}`,
        `Accessory screw M3.5 × ${lengthMm} mm, ${screwHeads[metal]}`,
        'each',
        'fixings',
      ),
    ),
  ]),
  item('screw-floor', 'Floorboard screw 4 × 50 mm', 'each', 'fixings'),
  item('noggin-300', 'Softwood noggin 300 mm', 'each', 'fixings'),
  item('joist-plate', 'Steel plate over a notch in a joist, with nails', 'each', 'fixings'),
];

const makingGood: readonly Item[] = [
  item('plaster-one-coat', 'One-coat plaster', 'kg', 'making-good'),
  item('plaster-bonding', 'Bonding coat', 'kg', 'making-good'),
  item('plaster-finish', 'Finish plaster', 'kg', 'making-good'),
  item('plasterboard-patch', 'Plasterboard patch with battens, screws and scrim', 'set', 'making-good'),
  item('pva', 'PVA bonding agent, small', 'each', 'making-good'),
  item('filler', 'Filler, small', 'each', 'making-good'),
  item('caulk', "Decorator's caulk, cartridge", 'each', 'making-good'),
  item('weather-sealant', 'Weather sealant, cartridge', 'each', 'making-good'),
  item('fire-sealant', 'Intumescent acoustic sealant, cartridge', 'each', 'making-good'),
];

const sundries: readonly Item[] = [
  item('insulating-tape', 'Insulating tape, roll', 'each', 'sundries'),
  item('blade-multitool', 'Multitool blade', 'each', 'sundries'),
  item('dust-mask', 'Dust mask', 'each', 'sundries'),
  item('dust-sheet', 'Dust sheet', 'each', 'sundries'),
  item('rubble-sack', 'Rubble sack', 'each', 'sundries'),
];

const papers: readonly Item[] = [
  item('certificate-minor-works', 'Minor works certificate, one a circuit', 'each', 'papers'),
  item('certificate-installation', 'Electrical installation certificate with schedules', 'each', 'papers'),
  item('circuit-chart', 'Circuit chart for the board', 'each', 'papers'),
  item('notice-rcd', 'RCD test notice', 'each', 'papers'),
  item('notice-mixed-colours', 'Notice: wiring colours to two versions', 'each', 'papers'),
];

/**
 * Every item that the take-off can ask for by a listed id, sorted by id. A thing outside the list (a cable
 * size or a mixture of features that is not sold as stock) keeps an id of the same pattern; no price list
 * holds that one, so it costs nothing and is reported as not priced.
 */
export const knownItems: readonly Item[] = [
  ...cables,
  ...accessories,
  ...protection,
  ...joints,
  ...boxes,
  ...containment,
  ...fixings,
  ...makingGood,
  ...sundries,
  ...papers,
].toSorted((a, b) => (a.id < b.id ? -1 : 1));

const itemById: ReadonlyMap<string, Item> = new Map(knownItems.map((known) => [known.id, known]));

/** The listed item of an id; for an unlisted one an item that says so, with the unit and group asked for. */
export function itemOf(id: string, unit: Item['unit'], group: TakeoffGroup): Item {
  return itemById.get(id) ?? item(id, `${id.replaceAll('-', ' ')} (not a stock item)`, unit, group);
}
