import { pointKindWords } from '#drawing/point-kind-words.ts';
import type { Ceiling, Floor, Site, Wall } from '#model/building.ts';
import type { Circuit, Device, Point, Reading, Supply } from '#model/installation.ts';
import type { WordChoice } from './fact-fields.ts';

/** A list of choices from words by their place in the file, in the order written. */
export const choicesOf = <V extends string>(words: Readonly<Record<V, string>>): readonly WordChoice<V>[] =>
  // Object.entries forgets that the keys are the record's own.
  (Object.entries(words) as [V, string][]).map(([value, label]) => ({ value, label }));

export const pointKinds = choicesOf(pointKindWords);

export const mounts = choicesOf<NonNullable<Point['mount']>>({
  flush: 'Sunk into the wall',
  'dry-lined': 'In a dry-lining box',
  surface: 'On the surface',
});

export const coreColours = choicesOf<NonNullable<Circuit['colours']>>({
  old: 'Red and black',
  new: 'Brown and blue',
  mixed: 'Both',
});

export const foundRoles = choicesOf<'ring' | 'spur'>({ ring: 'On the ring', spur: 'A spur' });

export const circuitUses = choicesOf<Circuit['use']>({
  sockets: 'Sockets',
  kitchen: 'Kitchen sockets',
  cooker: 'Cooker',
  heating: 'Heating',
  other: 'Something else',
});

export const claimedShapes = choicesOf<'ring' | 'radial'>({ ring: 'Ring', radial: 'Radial' });

export const deviceStandards = choicesOf<NonNullable<Device['standard']>>({
  'BS-EN-60898': 'Circuit-breaker, BS EN 60898',
  'BS-EN-61009': 'RCBO, BS EN 61009',
  'BS-3036': 'Rewirable fuse, BS 3036',
  'BS-1361': 'Cartridge fuse, BS 1361',
  'BS-88-3': 'Cartridge fuse, BS 88-3',
  'BS-88-2': 'Bolted fuse, BS 88-2',
  'BS-3871': 'Old circuit-breaker, BS 3871',
});

export const deviceCurves = choicesOf<NonNullable<Device['curve']>>({
  B: 'B',
  C: 'C',
  D: 'D',
  1: 'Type 1',
  2: 'Type 2',
  3: 'Type 3',
});

export const rcdTypes = choicesOf<'AC' | 'A' | 'F' | 'B'>({ AC: 'AC', A: 'A', F: 'F', B: 'B' });

export const earthings = choicesOf<NonNullable<Supply['earthing']>>({
  'TN-C-S': 'TN-C-S, combined (PME)',
  'TN-S': 'TN-S, cable sheath',
  TT: 'TT, earth electrode',
});

export const services = choicesOf<Supply['bonding'][number]['service']>({
  water: 'Water',
  gas: 'Gas',
  oil: 'Oil',
  steel: 'Structural steel',
  other: 'Other',
});

export const otherSources = choicesOf<Supply['otherSources'][number]>({
  pv: 'Solar panels',
  battery: 'Battery',
  ev: 'Vehicle charger',
});

export const nations = choicesOf<Site['nation']>({
  england: 'England',
  wales: 'Wales',
  scotland: 'Scotland',
  'northern-ireland': 'Northern Ireland',
});

export const premisesChoices = choicesOf<Site['premises']>({
  house: 'House',
  flat: 'Flat',
  hmo: 'House in multiple occupation',
  'higher-risk': 'Higher-risk building',
  student: 'Student housing',
  care: 'Care home',
});

export const tenures = choicesOf<NonNullable<Site['tenure']>>({
  owner: 'Owner lives there',
  tenant: 'Tenant',
  leaseholder: 'Leaseholder',
});

export const readingKinds = choicesOf<Reading['kind']>({
  loop: 'Continuity',
  insulation: 'Insulation',
  zs: 'Zs at a point',
  ze: 'Ze',
  pfc: 'Prospective fault current',
  rcd: 'RCD trip time',
  polarity: 'Polarity',
  'rcd-button': 'RCD’s own test button',
  'afdd-button': 'Arc fault device’s own test button',
  'spd-indicator': 'Surge device’s indicator',
});

export const floorBuilds = choicesOf<Floor['build']>({
  'suspended-timber': 'Timber on joists',
  solid: 'Solid',
  concrete: 'Concrete slab above rooms',
});

export const floorCoverings = choicesOf<Floor['covering']>({
  boards: 'Floorboards',
  chipboard: 'Chipboard sheets',
  carpet: 'Carpet',
  laminate: 'Laminate',
  tile: 'Tiles',
  vinyl: 'Vinyl',
  wood: 'Fixed wood flooring',
  none: 'Nothing',
});

export const ceilingLinings = choicesOf<Ceiling['lining']>({
  plasterboard: 'Plasterboard',
  'lath-and-plaster': 'Lath and plaster',
  none: 'None',
});

export const pointFeatures = choicesOf<Point['features'][number]>({
  usb: 'With USB',
  rcd: 'With RCD',
  ip66: 'Weatherproof, IP66',
  metal: 'Metal plate',
});

export const plateFinishes = choicesOf<NonNullable<Point['finish']>>({
  white: 'White moulded',
  brushed: 'Brushed metal',
  polished: 'Polished metal',
  black: 'Black metal',
});

/** A finish within a sentence. */
export const finishWords = (finish: string): string =>
  plateFinishes.find(({ value }) => value === finish)?.label.toLowerCase() ?? finish;

export const jointKinds = choicesOf<NonNullable<Point['joint']>['kind']>({
  screw: 'Screw terminals',
  lever: 'Lever terminals',
  'maintenance-free': 'Maintenance-free',
  crimp: 'Crimped',
});

/** What walls are built of. */
export const wallCores = choicesOf<Wall['core']>({
  brick: 'Brick',
  'hard-brick': 'Hard (engineering) brick',
  block: 'Block',
  'aerated-block': 'Aerated block',
  concrete: 'Concrete',
  'timber-stud': 'Timber stud',
  'metal-stud': 'Metal stud',
  open: 'Nothing: open to the next room',
});
