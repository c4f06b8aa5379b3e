import { z } from 'zod';
import { pointKind } from './installation.ts';
import { terms } from './job.ts';
import { isoDate, pence, percent, text } from './primitives.ts';

/** The firm as its papers name it. */
export const firm = z.strictObject({
  name: text,
  address: z.array(text),
  vatNumber: text.optional(),
  contact: text,
  scheme: text.optional(),
  email: text.optional(),
  /** What the law asks of a company's papers: its registered name, number and office. */
  company: text.optional(),
  /** Where a customer cancels, if not at the firm's own address. */
  cancelTo: text.optional(),
  /** Who tells building control where work is notifiable. */
  notifiedBy: z.enum(['self', 'third-party', 'building-control']).optional(),
  /** Days from the invoice to the day it is due; nought: on completion. */
  paymentDays: z.int().min(0).max(365).optional(),
  paymentWays: text.optional(),
  guarantee: text.optional(),
  insurance: text.optional(),
  complaints: text.optional(),
});
export type Firm = z.infer<typeof firm>;

/** Says of a figure that it is the demo's still; absent: the firm's own. It goes when the figure is set. */
const origin = z.literal('demo').optional();

/**
 * How a thing is handed over the counter. `length`, `coil` and `drum` are one unbroken length each; `cut` is cut off to
 * measure, in steps; of `each` and `pack` it is only the number that counts.
 */
const packKind = z.enum(['each', 'pack', 'length', 'cut', 'coil', 'drum']);

/**
 * A further size that an item is sold in: `quantity` in the price's unit (of `cut`: the step that cut lengths are
 * rounded up to) for `pricePence`, value added tax as the list has it.
 */
export const pack = z.strictObject({
  kind: packKind,
  quantity: z.number().positive(),
  pricePence: pence,
  /** Of `cut`: not sold shorter. Absent: one step. */
  leastQuantity: z.number().positive().optional(),
  code: text.optional(),
  /** Of which day the price is; absent: the list's. */
  date: isoDate.optional(),
  origin,
});
export type Pack = z.infer<typeof pack>;

/**
 * What one item costs the firm. `pricePence` buys `perQuantity` of `unit`; it is sold in multiples of
 * `packQuantity` (absent: any quantity). `charge` says whether a job bears whole packs or what it used. The row is what
 * jobs are priced by; `packs` are further sizes of the same thing, for buying.
 */
export const price = z.strictObject({
  item: text.min(1),
  unit: z.enum(['each', 'm', 'kg', 'set']),
  pricePence: pence,
  perQuantity: z.number().positive(),
  packQuantity: z.number().positive().optional(),
  charge: z.enum(['packs', 'used']),
  /** Absent: cut to measure where metres are sold by one or fewer, else lengths, packs or single ones. */
  kind: packKind.optional(),
  packs: z.array(pack).optional(),
  counter: text.optional(),
  /** The merchant whose price it is, their number for the thing, and their words for it. */
  supplier: text.optional(),
  code: text.optional(),
  supplierWords: text.optional(),
  /** As the merchant told it; `pricePence` is net of it. */
  discountPercent: percent.optional(),
  /** Of which day the price is; absent: the list's. */
  date: isoDate.optional(),
  origin,
});
export type Price = z.infer<typeof price>;

const vatBasis = z.enum(['excluded', 'included']);
const column = z.int().min(0).max(1000).optional();

/**
 * How a merchant's price list is read: which column says what, set once by a person and known again by the list's
 * headings.
 */
export const columnMap = z.strictObject({
  /** Whose list it is. */
  name: text,
  /** The headings, in order, as they stand in the file. */
  headers: z.array(text),
  columns: z.strictObject({
    description: column,
    code: column,
    price: column,
    per: column,
    pack: column,
    discount: column,
    date: column,
  }),
  /** What a price is for, where the row itself does not say. `by-column`: each row says. */
  basis: z.enum(['each', 'per-100', 'per-1000', 'per-metre', 'per-100-m', 'per-pack', 'by-column']),
  vat: vatBasis,
  /** Taken off every price whose row names no discount of its own. */
  discountPercent: percent.optional(),
  decimal: z.enum(['.', ',']),
  /** What a person has said of its rows: `row` is the merchant's number for a thing, or their words where there is none. */
  matches: z.array(z.strictObject({ row: text.min(1), item: text.min(1) })),
});
export type ColumnMap = z.infer<typeof columnMap>;

export const prices = z.strictObject({
  source: text,
  date: isoDate,
  vat: vatBasis,
  items: z.array(price),
  /** Days after which a price counts as old; absent: 90. */
  staleDays: z.int().min(1).max(10_000).optional(),
  columnMaps: z.array(columnMap).optional(),
});
export type Prices = z.infer<typeof prices>;

/**
 * Minutes for one unit of a task: a range that the firm edits, never a fact. `mess` is how much one unit of it disturbs
 * the house, in points: dust, noise, furniture moved and floors opened; about 10 is a metre of chase in masonry, cut and
 * filled in a room that is lived in. Absent: 0, none.
 */
export const norm = z.strictObject({
  task: text.min(1),
  unit: z.enum(['job', 'each', 'm', 'circuit', 'room']),
  lowMin: z.number().min(0),
  typicalMin: z.number().min(0),
  highMin: z.number().min(0),
  mess: z.number().min(0).optional(),
  origin,
});
export type Norm = z.infer<typeof norm>;

/** What the firm spends whether it works or not: so much of what a job costs, or so much a day of so many hours. */
export const overhead = z.union([
  z.strictObject({ percent: z.number().min(0).max(1000) }),
  z.strictObject({ pencePerDay: pence, hoursPerDay: z.number().positive().max(24) }),
]);
export type Overhead = z.infer<typeof overhead>;

/** What makes work go slower or faster on a job: minutes of these stages are multiplied by it once it is chosen. */
export const multiplier = z.strictObject({
  id: text.min(1),
  words: text,
  factor: z.number().positive().max(5),
  on: z.array(z.enum(['before', 'first-fix', 'second-fix', 'test', 'after'])),
  origin,
});
export type Multiplier = z.infer<typeof multiplier>;

/** A length that a firm reckons with, mm. */
const habitMm = z.number().min(0).max(20_000);

/** Sizes that oval tube and capping are sold in, mm. */
export const OVAL_SIZES_MM = [16, 20, 25, 32, 38] as const;
export const CAPPING_SIZES_MM = [13, 25, 38, 50] as const;
/** Ratings of devices that circuits of a house have, A; bores of sleeving, mm; conductors that lever connectors take, mm². */
export const DEVICE_RATINGS_A = [6, 10, 16, 20, 25, 32, 40] as const;
export const SLEEVING_BORES_MM = [3, 4, 6] as const;
export const LEVER_CONDUCTORS_MM2 = [2.5, 4, 6] as const;
/** Sizes that merchants sell, of which a firm may buy some only: ways of consumer units, main bonds, ways of lever connectors, spare plate screws. */
export const SOLD_SIZES = {
  boardWays: [6, 8, 10, 12, 16, 20, 24],
  bondsMm2: [6, 10, 16, 25],
  leverWays: [2, 3, 5],
  plateScrewsMm: [40, 50, 75],
} as const;
const ovalMm = z.literal(OVAL_SIZES_MM);
const cappingMm = z.literal(CAPPING_SIZES_MM);
const deviceA = z.literal(DEVICE_RATINGS_A);
const boreMm = z.literal(SLEEVING_BORES_MM);
const someOf = <Size extends number>(sizes: readonly Size[]) => z.array(z.literal(sizes)).min(1).optional();

/** The sizes that the firm buys. Absent: all that merchants sell, which are from memory. */
export const soldSizes = z.strictObject({
  boardWays: someOf(SOLD_SIZES.boardWays),
  bondsMm2: someOf(SOLD_SIZES.bondsMm2),
  leverWays: someOf(SOLD_SIZES.leverWays),
  plateScrewsMm: someOf(SOLD_SIZES.plateScrewsMm),
});
export type SoldSizes = z.infer<typeof soldSizes>;

/** Lengths and counts by the firm's own habit, in place of the usual ones, which are from memory. Absent: the usual one. */
export const counts = z.strictObject({
  /** Cable left at each end by what it ends in, and once a run for good measure. */
  accessoryEndMm: habitMm.optional(),
  jointEndMm: habitMm.optional(),
  boardEndMm: habitMm.optional(),
  slackMm: habitMm.optional(),
  /** How far a length may be off, either way: derived from the house as drawn, and assumed. */
  derivedPercent: percent.optional(),
  assumedPercent: percent.optional(),
  /** Flex of a fixed appliance. */
  applianceFlexMm: habitMm.optional(),
  /** From a steel box's earth terminal to the accessory's. */
  boxTailMm: habitMm.optional(),
  /** Sleeving over one bare protective conductor's end. */
  sleeveMm: habitMm.optional(),
  /** Bore of that sleeving over protective conductors up to 1.5 mm², up to 4 mm² and thicker. */
  sleeveFineBoreMm: boreMm.optional(),
  sleeveOneBoreMm: boreMm.optional(),
  sleeveThickBoreMm: boreMm.optional(),
  /** Sleeve over one crimp. */
  crimpSleeveMm: habitMm.optional(),
  /** The thickest conductor of the usual lever connectors; above it the larger body. */
  leverMostMm2: z.literal(LEVER_CONDUCTORS_MM2).optional(),
  /** Cables that the usual enclosure of a joint takes; more want the large one. */
  enclosureCables: z.int().min(2).max(20).optional(),
  /** One clip in so many on a surface is of metal. */
  metalClipEvery: z.int().min(1).max(100).optional(),
  /** Between metal clips inside plastic channel. */
  metalClipInChannelMm: z.number().min(50).max(20_000).optional(),
  /** Between pins of capping, and between screws of plastic channel; one more stands at the end of all but the shortest. */
  cappingPinMm: z.number().min(50).max(20_000).optional(),
  channelScrewMm: z.number().min(50).max(20_000).optional(),
  /** Between saddles of rigid conduit; one more stands at the end of all but the shortest. */
  saddleMm: z.number().min(50).max(20_000).optional(),
  /** Oval tube over one cable up to 1.5, 2.5 and 10 mm², and over two up to 2.5 mm²; more goes into the largest. */
  ovalFineMm: ovalMm.optional(),
  ovalOneMm: ovalMm.optional(),
  ovalThickMm: ovalMm.optional(),
  ovalTwoMm: ovalMm.optional(),
  /** Capping over one cable up to 1.5 and 6 mm², and over two up to 1.5 and 2.5 mm²; more is under the widest. */
  cappingFineMm: cappingMm.optional(),
  cappingOneMm: cappingMm.optional(),
  cappingTwoFineMm: cappingMm.optional(),
  cappingTwoMm: cappingMm.optional(),
  /** A tube goes this far past the floor or ceiling that it leads through. */
  tubePastFloorMm: habitMm.optional(),
  /** A stretch shorter than this is held by the clips of its neighbours. */
  unclippedMm: habitMm.optional(),
  /** Screws that hold a box let into masonry, and a surface box of one gang. */
  sunkBoxScrews: z.int().min(0).max(20).optional(),
  surfaceBoxScrews: z.int().min(0).max(20).optional(),
  /** Bonding conductor to a service where nobody has measured the way. */
  bondMm: z.number().min(0).max(100_000).optional(),
  /** Of that length the least and the most that the way may come to, percent. */
  bondLeastPercent: percent.optional(),
  bondMostPercent: z.number().min(100).max(1000).optional(),
  /** A main bond where nobody can say how much is asked for. */
  bondMm2: z.literal(SOLD_SIZES.bondsMm2).optional(),
  /** Tails to an RCD in an enclosure of its own. */
  enclosureTailsMm: habitMm.optional(),
  /** Ways that a new board has to spare. */
  boardSpareWays: z.int().min(0).max(20).optional(),
  /** Ways that a surge device takes on a new board. */
  surgeDeviceWays: z.int().min(0).max(20).optional(),
  /** On a new board, the device of a circuit that nobody looked at, by what the circuit is for. */
  socketsDeviceA: deviceA.optional(),
  cookerDeviceA: deviceA.optional(),
  heatingDeviceA: deviceA.optional(),
  otherDeviceA: deviceA.optional(),
  /** Screws that come with a plate, and those that a plate over a box let in takes. */
  suppliedScrewMm: z.number().min(10).max(75).optional(),
  sunkScrewMm: z.literal(SOLD_SIZES.plateScrewsMm).optional(),
  /** Floor screws that hold a lifted board, and a trap with its battens. */
  boardScrews: z.int().min(0).max(100).optional(),
  trapScrews: z.int().min(0).max(100).optional(),
  /** Battens that a trap lies on, each a noggin. */
  trapNoggins: z.int().min(0).max(20).optional(),
  /** Noggins under a lifted board: the share of cut ends that does not come to lie on a joist. */
  nogginsABoard: z.number().min(0).max(4).optional(),
  /** The slot of one cable on its own, and of one in a tube; each further cable makes it so much wider. */
  chaseWidthMm: z.number().min(5).max(200).optional(),
  chaseDepthMm: z.number().min(5).max(100).optional(),
  tubeChaseWidthMm: z.number().min(5).max(200).optional(),
  tubeChaseDepthMm: z.number().min(5).max(100).optional(),
  furtherCableMm: z.number().min(0).max(100).optional(),
  /** A slot of more than one cable is so much deeper; one for cable above 4 mm² so much wider and deeper. */
  severalDeeperMm: z.number().min(0).max(50).optional(),
  thickCableMm: z.number().min(0).max(50).optional(),
  /** How much larger than the box its hole is cut, on every side. */
  boxHoleMm: z.number().min(0).max(50).optional(),
  /** What 25 kg of one-coat plaster cover at 11 mm, m². */
  oneCoatM2: z.number().min(0.1).max(100).optional(),
  /** Finish goes on so thick, and so far past what is filled, both sides together. */
  finishMm: z.number().min(0).max(20).optional(),
  finishPastMm: z.number().min(0).max(1000).optional(),
  /** What one small pack lasts for: kilograms of plaster over priming, boxes let in. */
  plasterKgAPva: z.number().min(0.5).max(1000).optional(),
  boxesAFiller: z.int().min(1).max(1000).optional(),
  boxesACaulk: z.int().min(1).max(1000).optional(),
  /** What one lasts for: a mask for boxes let in and for metres chased, a blade for cuts, a cartridge for openings, a sack for litres. */
  boxesAMask: z.int().min(1).max(1000).optional(),
  chasedMAMask: z.number().min(0.5).max(1000).optional(),
  cutsABlade: z.int().min(1).max(1000).optional(),
  openingsACartridge: z.int().min(1).max(1000).optional(),
  sackLitres: z.number().min(1).max(100).optional(),
  /** Cut out of a wall, rubble takes so many times the room. */
  looseFactor: z.number().min(1).max(5).optional(),
  /** Masks where anything is cut, tapes of a job, and sheets beside one for each room that gets something new: at least. */
  leastMasks: z.int().min(0).max(100).optional(),
  tapes: z.int().min(0).max(100).optional(),
  sheetsAlong: z.int().min(0).max(100).optional(),
  /** What is set aside for each thing that the survey leaves open and may make the job dearer, and for all of them at most, percent. */
  gapPercent: percent.optional(),
  mostGapsPercent: percent.optional(),
});
export type Counts = z.infer<typeof counts>;

/** What asks for a depth of box by itself, whatever its accessory is. */
const depthFeature = z.enum(['usb', 'rcd', 'metal', 'flex-outlet-of-unit', 'third-cable']);

/**
 * The least depth of box, mm, that an accessory or something about it wants by the firm's own makers' sheets. Absent: the
 * usual one, partly from memory.
 */
export const boxDepths = z.partialRecord(z.union([pointKind, depthFeature]), z.number().min(16).max(100));
export type OwnBoxDepths = z.infer<typeof boxDepths>;

export const norms = z.strictObject({
  source: text,
  ratePencePerHour: pence,
  /** Whether the rate is what the customer is charged for an hour, or what it costs the firm. Absent: charged. */
  rateBasis: z.enum(['charged', 'cost']).optional(),
  overhead: overhead.optional(),
  rateOrigin: origin,
  tasks: z.array(norm),
  /** What a job may choose from. Absent: the usual ones, from memory. */
  multipliers: z.array(multiplier).optional(),
  /** Sums that are neither materials nor labour, by name: notification, parking. */
  sums: z.array(z.strictObject({ sum: text.min(1), pence, origin })),
  counts: counts.optional(),
  sold: soldSizes.optional(),
  boxDepths: boxDepths.optional(),
  /** Waste by item group, percent on top of the measured quantity. */
  waste: z.strictObject({ cable: percent, containment: percent, fixings: percent, fillers: percent }),
});
export type Norms = z.infer<typeof norms>;

/** The firm's own limits, replacing the defaults of the rules. Absent: the default. */
export const limits = z.strictObject({
  areaServedM2: z.number().positive().optional(),
  fixedLoadW: z.number().positive().optional(),
  minimumHeightMm: z.number().positive().optional(),
  maximumHeightMm: z.number().positive().optional(),
  sinkClearanceMm: z.number().positive().optional(),
  hobClearanceMm: z.number().positive().optional(),
  cornerClearanceMm: z.number().positive().optional(),
  worktopClearanceMm: z.number().positive().optional(),
  maximumSpurs: z.int().min(0).optional(),
  /** Air that cables lie in, °C, by which capacities are reckoned; the default is 30. */
  ambientC: z.number().min(25).max(60).optional(),
  /** Volt drop allowed in socket circuits, % of nominal; the default is 5. */
  voltDropPercent: z.number().positive().max(100).optional(),
  /** Whether tabulated volt drops are corrected for conductors that run cooler than 70 °C; the default is no. */
  voltDropCorrected: z.boolean().optional(),
  /** How a cold loop reading is compared with a limit for warm conductors; the default is the 80 % rule. */
  coldLoopRule: z.enum(['eighty-percent', 'guide-divisor']).optional(),
});
export type Limits = z.infer<typeof limits>;

/** The heights at which the firm fits plates, by kind, mm from the floor to the middle. Absent: the usual ones, from memory. */
export const ownHeights = z.partialRecord(pointKind, z.number().min(0).max(20_000));
export type OwnHeights = z.infer<typeof ownHeights>;

/** The terms that jobs begin with, and what else is the firm's habit on every job; no job file carries it. */
export const firmTerms = terms.extend({ heights: ownHeights.optional() });

/** What a firm brings to every job. */
export const library = z.strictObject({ firm, prices, norms, limits, terms: firmTerms });
export type Library = z.infer<typeof library>;
