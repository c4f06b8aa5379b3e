import type { Library, Norms, Price, Prices, SoldSizes } from '#model/library.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';

/** Sizes that merchants sell, in rising order: ways of consumer units, main bonds, ways of lever connectors, spare plate screws. */
export type Sold = { readonly [Family in keyof SoldSizes]-?: readonly number[] };

/** Where the firm does not say what of them it buys. Merchants' sizes, from memory. */
export const usualSold: Sold = {
  boardWays: [6, 8, 10, 12, 16, 20, 24],
  bondsMm2: [6, 10, 16, 25],
  leverWays: [2, 3, 5],
  plateScrewsMm: [40, 50, 75],
};

/** Lengths and counts that no drawing tells. */
export interface KitCounts {
  /** Flex of a fixed appliance. */
  readonly applianceFlexMm: number;
  /** From a steel box's earth terminal to the accessory's. */
  readonly boxTailMm: number;
  /** Sleeving over the bare protective conductor of one cable end. */
  readonly sleeveMm: number;
  /** Bore of that sleeving over conductors up to 1.5 mm², up to 4 mm² and thicker. */
  readonly sleeveFineBoreMm: number;
  readonly sleeveOneBoreMm: number;
  readonly sleeveThickBoreMm: number;
  /** Sleeve over one crimp. */
  readonly crimpSleeveMm: number;
  /** The thickest conductor of the usual lever connectors, mm²; above it the larger body. */
  readonly leverMostMm2: number;
  /** Cables that the usual enclosure takes through its clamps and has room for; more want the large one. */
  readonly enclosureCables: number;
  /** On a surface one clip in so many is of metal, so that cable does not hang low in a fire. */
  readonly metalClipEvery: number;
  /** Metal clips inside plastic channel, for the same reason, mm apart. */
  readonly metalClipInChannelMm: number;
  /** Between pins of capping, mm apart; one more stands at the end of all but the shortest. */
  readonly cappingPinMm: number;
  /** Between screws of channel beside its adhesive, mm apart; one more stands at the end of all but the shortest. */
  readonly channelScrewMm: number;
  /** Between saddles of rigid conduit, mm apart; one more stands at the end of all but the shortest. */
  readonly saddleMm: number;
  /** Oval tube over one cable up to 1.5, 2.5 and 10 mm², and over two up to 2.5 mm², nominal mm. */
  readonly ovalFineMm: number;
  readonly ovalOneMm: number;
  readonly ovalThickMm: number;
  readonly ovalTwoMm: number;
  /** Capping over one cable up to 1.5 and 6 mm², and over two up to 1.5 and 2.5 mm², mm wide. */
  readonly cappingFineMm: number;
  readonly cappingOneMm: number;
  readonly cappingTwoFineMm: number;
  readonly cappingTwoMm: number;
  /** A tube goes this far past the floor or ceiling that it leads through. */
  readonly tubePastFloorMm: number;
  /** A stretch shorter than this is held by the clips of its neighbours. */
  readonly unclippedMm: number;
  /** Screws of a box let into masonry, and of a surface box of one gang. */
  readonly sunkBoxScrews: number;
  readonly surfaceBoxScrews: number;
  /** Tails to an RCD in an enclosure of its own. */
  readonly enclosureTailsMm: number;
  /** Ways that are left on a new board for what comes later. */
  readonly boardSpareWays: number;
  /** Ways that a surge device takes on a new board. */
  readonly surgeDeviceWays: number;
  /** What a circuit of a use has on a new board where nobody looked at its device, A; a kitchen's is as of sockets. */
  readonly socketsDeviceA: number;
  readonly cookerDeviceA: number;
  readonly heatingDeviceA: number;
  readonly otherDeviceA: number;
  /** Screws that come with a plate, mm long, and those that a plate over a box let in takes. */
  readonly suppliedScrewMm: number;
  readonly sunkScrewMm: number;
  /** Bonding conductor to a service where nobody has measured the way, mm. */
  readonly bondMm: number;
  /** What the way may come to at least and at most, percent of that. */
  readonly bondLeastPercent: number;
  readonly bondMostPercent: number;
  /** A main bond where nobody can say how much is asked for, mm². */
  readonly bondMm2: number;
  /** Floor screws of a lifted board, and of a trap with its battens. */
  readonly boardScrews: number;
  readonly trapScrews: number;
  /** Battens that a trap lies on. */
  readonly trapNoggins: number;
  /** Noggins under a lifted board, where a cut end comes to lie on no joist. */
  readonly nogginsABoard: number;
  /** The slot of one cable, wide and deep, on its own and in a tube; so much wider for each further one. */
  readonly chaseWidthMm: number;
  readonly chaseDepthMm: number;
  readonly tubeChaseWidthMm: number;
  readonly tubeChaseDepthMm: number;
  readonly furtherCableMm: number;
  /** With more than one cable the slot is so much deeper; for cable above 4 mm² so much wider and deeper. */
  readonly severalDeeperMm: number;
  readonly thickCableMm: number;
  /** By how much the hole for a box is larger, on every side. */
  readonly boxHoleMm: number;
  /** What 25 kg of one-coat plaster cover at 11 mm, m². */
  readonly oneCoatM2: number;
  /** Finish goes on so thick, and so far past what is filled, both sides together. */
  readonly finishMm: number;
  readonly finishPastMm: number;
  /** What one small pack of each lasts for: kilograms of plaster over its priming, boxes let in. */
  readonly plasterKgAPva: number;
  readonly boxesAFiller: number;
  readonly boxesACaulk: number;
  /** What one lasts for: boxes let in or metres chased, cuts in board and floor, openings closed, litres out of walls. */
  readonly boxesAMask: number;
  readonly chasedMAMask: number;
  readonly cutsABlade: number;
  readonly openingsACartridge: number;
  readonly sackLitres: number;
  /** What comes out of a wall takes so many times its room once it is loose. */
  readonly looseFactor: number;
  /** Masks where anything is cut, for two people or two days; tapes of a job; sheets beside one for each room with something new. */
  readonly leastMasks: number;
  readonly tapes: number;
  readonly sheetsAlong: number;
  /** The length that the price list sells an item in, by item, mm; of what it does not say it of, nothing. */
  readonly soldMm: ReadonlyMap<string, number>;
  /** Of what comes in sizes, those that the firm buys. */
  readonly sold: Sold;
}

/**
 * Where the firm says nothing of its own. Common practice, no source (sleeves are 100 to 150 mm); metal clips, boards and
 * screws, bonds, enclosures of joints, what one-coat covers, and what masks, blades, sealant and sacks last for are from memory. Slots are what a wall
 * chaser cuts; by hand they come out 50 to 80 mm wide and 30 to 40 mm deep (apexdoma.com, "What does a rewire involve").
 * Saddles of conduit up to 25 mm: IET On-Site Guide Table D3, from memory (1.5 m level).
 */
export const usualCounts: KitCounts = {
  applianceFlexMm: 2000,
  boxTailMm: 150,
  sleeveMm: 120,
  sleeveFineBoreMm: 3,
  sleeveOneBoreMm: 4,
  sleeveThickBoreMm: 6,
  crimpSleeveMm: 100,
  leverMostMm2: 4,
  enclosureCables: 3,
  metalClipEvery: 3,
  metalClipInChannelMm: 1000,
  cappingPinMm: 300,
  channelScrewMm: 500,
  saddleMm: 1500,
  ovalFineMm: 16,
  ovalOneMm: 20,
  ovalThickMm: 25,
  ovalTwoMm: 32,
  cappingFineMm: 13,
  cappingOneMm: 25,
  cappingTwoFineMm: 25,
  cappingTwoMm: 38,
  tubePastFloorMm: 100,
  unclippedMm: 150,
  sunkBoxScrews: 2,
  surfaceBoxScrews: 2,
  enclosureTailsMm: 1000,
  boardSpareWays: 2,
  surgeDeviceWays: 2,
  socketsDeviceA: 32,
  cookerDeviceA: 32,
  heatingDeviceA: 16,
  otherDeviceA: 6,
  suppliedScrewMm: 25,
  sunkScrewMm: 50,
  bondMm: 10_000,
  bondLeastPercent: 40,
  bondMostPercent: 200,
  bondMm2: 10,
  boardScrews: 4,
  trapScrews: 8,
  trapNoggins: 2,
  nogginsABoard: 2 / 3,
  chaseWidthMm: 25,
  chaseDepthMm: 20,
  tubeChaseWidthMm: 30,
  tubeChaseDepthMm: 25,
  furtherCableMm: 20,
  severalDeeperMm: 5,
  thickCableMm: 5,
  boxHoleMm: 10,
  oneCoatM2: 2.25,
  finishMm: 2,
  finishPastMm: 20,
  plasterKgAPva: 20,
  boxesAFiller: 8,
  boxesACaulk: 8,
  boxesAMask: 4,
  chasedMAMask: 8,
  cutsABlade: 8,
  openingsACartridge: 4,
  sackLitres: 15,
  looseFactor: 1.5,
  leastMasks: 2,
  tapes: 1,
  sheetsAlong: 1,
  soldMm: new Map(),
  sold: usualSold,
};

/** The length of an item's own row, where it is sold in lengths; else the longest of its further sizes that are. */
function soldLengthM({ unit, kind, packQuantity, packs = [] }: Price): number | null {
  if (unit !== 'm') return null;
  const isLength = kind === 'length' || (kind === undefined && (packQuantity ?? 1) > 1);
  if (isLength && packQuantity !== undefined) return packQuantity;
  const lengths = packs.flatMap((pack) => (pack.kind === 'length' ? [pack.quantity] : []));
  return lengths.length === 0 ? null : Math.max(...lengths);
}

const soldLengths = ({ items }: Prices): ReadonlyMap<string, number> =>
  new Map(
    items.flatMap((price): readonly (readonly [string, number])[] => {
      const lengthM = soldLengthM(price);
      return lengthM === null ? [] : [[price.item, lengthM * 1000]];
    }),
  );

/** The sizes of every family that the firm buys, rising. */
function soldBy(own: SoldSizes = {}): Sold {
  const rising = (sizes: readonly number[]): readonly number[] => sizes.toSorted((a, b) => a - b);
  return {
    boardWays: rising(own.boardWays ?? usualSold.boardWays),
    bondsMm2: rising(own.bondsMm2 ?? usualSold.bondsMm2),
    leverWays: rising(own.leverWays ?? usualSold.leverWays),
    plateScrewsMm: rising(own.plateScrewsMm ?? usualSold.plateScrewsMm),
  };
}

type Figures = Omit<KitCounts, 'soldMm' | 'sold'>;
const { soldMm: _none, sold: _all, ...usualFigures } = usualCounts;
const figureKeys = Object.keys(usualFigures) as (keyof Figures)[];

const countsBy = rememberedOfTwo(({ counts = {}, sold }: Norms, prices: Prices): KitCounts => {
  const own = figureKeys.flatMap((key) => (counts[key] === undefined ? [] : [[key, counts[key]] as const]));
  return {
    ...{ ...usualFigures, ...Object.fromEntries(own) },
    soldMm: soldLengths(prices),
    sold: soldBy(sold),
  };
});

/** The usual counts with the firm's own in their place, and what its price list sells by the length; the same object for the same norms and prices. */
export const kitCountsOf = ({ norms, prices }: Pick<Library, 'norms' | 'prices'>): KitCounts =>
  countsBy(norms, prices);
