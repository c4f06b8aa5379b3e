import { usualGapPercents } from '#engine/price/survey-gaps-of.ts';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import {
  CAPPING_SIZES_MM,
  type Counts,
  DEVICE_RATINGS_A,
  LEVER_CONDUCTORS_MM2,
  OVAL_SIZES_MM,
  SLEEVING_BORES_MM,
  SOLD_SIZES,
} from '#model/library.ts';

/** A length or a count that the firm may have of its own, as its page asks for it. */
export interface CountRow {
  readonly key: keyof Counts;
  readonly label: string;
  readonly unit: string;
  /** The least and the most that can be meant; the file takes no other. */
  readonly min: number;
  readonly max: number;
  readonly whole: boolean;
  /** What it can only be one of; absent: anything between. */
  readonly sizes?: readonly number[];
  /** What is counted by where the firm says nothing. */
  readonly usual: number;
}

/** Lengths and counts that belong together. */
export interface CountGroup {
  readonly title: string;
  readonly rows: readonly CountRow[];
}

type Bounds = Pick<CountRow, 'unit' | 'min' | 'max' | 'whole' | 'sizes'>;

const habit: Bounds = { unit: 'mm', min: 0, max: 20_000, whole: false };
/** A spacing, which nought would make endless. */
const spacing: Bounds = { ...habit, min: 50 };
const sizedBy = (sizes: readonly number[], unit = 'mm'): Bounds => ({
  unit,
  min: Math.min(...sizes),
  max: Math.max(...sizes),
  whole: sizes.every(Number.isInteger),
  sizes,
});
const oval = sizedBy(OVAL_SIZES_MM);
const capping = sizedBy(CAPPING_SIZES_MM);
const bore = sizedBy(SLEEVING_BORES_MM);
const device = sizedBy(DEVICE_RATINGS_A, 'A');
const everyOne: Bounds = { unit: '', min: 1, max: 100, whole: true };
/** So many of a thing, or none. */
const few: Bounds = { unit: '', min: 0, max: 20, whole: true };
const screws: Bounds = { unit: '', min: 0, max: 100, whole: true };
const lasting: Bounds = { unit: '', min: 1, max: 1000, whole: true };
const slotWidth: Bounds = { unit: 'mm', min: 5, max: 200, whole: false };
const offBy: Bounds = { unit: '%', min: 0, max: 100, whole: false };
const setAside: Bounds = { unit: '%', min: 0, max: 100, whole: false };
const slotDepth: Bounds = { ...slotWidth, max: 100 };

const usual: Readonly<Record<keyof Counts, number>> = {
  ...usualCounts,
  ...defaultLengthAllowances,
  ...usualGapPercents,
};

const row = (key: keyof Counts, label: string, bounds: Bounds): CountRow => ({
  key,
  label,
  ...bounds,
  usual: usual[key],
});

/** Every length and count that no drawing tells, in the order in which a firm reads them. */
export const countGroups: readonly CountGroup[] = [
  {
    title: 'Cable, flex and earth',
    rows: [
      row('accessoryEndMm', 'Cable left at an accessory', habit),
      row('jointEndMm', 'Cable left at a joint', habit),
      row('boardEndMm', 'Cable left at a board', habit),
      row('slackMm', 'Slack of a run', habit),
      row('applianceFlexMm', 'Flex of a fixed appliance', habit),
      row('boxTailMm', 'Earth tail of a steel box', habit),
      row('sleeveMm', 'Earth sleeving of a cable end', habit),
      row('sleeveFineBoreMm', 'Earth sleeving’s bore, cpc up to 1.5', bore),
      row('sleeveOneBoreMm', 'Earth sleeving’s bore, cpc 2.5 or 4', bore),
      row('sleeveThickBoreMm', 'Earth sleeving’s bore, thicker cpc', bore),
      row('derivedPercent', 'A length by the plan may be off', offBy),
      row('assumedPercent', 'A length that is assumed may be off', offBy),
      row('enclosureTailsMm', 'Tails to an RCD in its own enclosure', habit),
      row('bondMm', 'Bonding conductor where nobody measured its way', { ...habit, max: 100_000 }),
      row('bondLeastPercent', 'Least of that length of bond', offBy),
      row('bondMostPercent', 'Most of that length of bond', { ...offBy, min: 100, max: 1000 }),
      row('bondMm2', 'Bonding conductor where its size is not known', sizedBy(SOLD_SIZES.bondsMm2, 'mm²')),
    ],
  },
  {
    title: 'Clips, capping, channel and tubes',
    rows: [
      row('metalClipEvery', 'One clip on a surface is of metal in every', everyOne),
      row('metalClipInChannelMm', 'Between metal clips in channel', spacing),
      row('cappingPinMm', 'Between pins of capping', spacing),
      row('channelScrewMm', 'Between screws of channel', spacing),
      row('saddleMm', 'Between saddles of conduit', spacing),
      row('tubePastFloorMm', 'Tube past a floor or ceiling', habit),
      row('ovalFineMm', 'Oval tube over one 1.0 or 1.5', oval),
      row('ovalOneMm', 'Oval tube over one 2.5', oval),
      row('ovalThickMm', 'Oval tube over one 4, 6 or 10', oval),
      row('ovalTwoMm', 'Oval tube over two 2.5', oval),
      row('cappingFineMm', 'Capping over one 1.0 or 1.5', capping),
      row('cappingOneMm', 'Capping over one 2.5, 4 or 6', capping),
      row('cappingTwoFineMm', 'Capping over two 1.0 or 1.5', capping),
      row('cappingTwoMm', 'Capping over two 2.5', capping),
      row('unclippedMm', 'No clip on a stretch shorter than', habit),
    ],
  },
  {
    title: 'Floors',
    rows: [
      row('boardScrews', 'Screws of a board that was lifted', screws),
      row('trapScrews', 'Screws of a trap with its battens', screws),
      row('trapNoggins', 'Battens under a trap', few),
      row('nogginsABoard', 'Noggins per lifted board', { unit: '', min: 0, max: 4, whole: false }),
    ],
  },
  {
    title: 'Chases, boxes and plaster',
    rows: [
      row('chaseWidthMm', 'Width of a chase for one cable', slotWidth),
      row('chaseDepthMm', 'Depth of a chase for one cable', slotDepth),
      row('tubeChaseWidthMm', 'Width of a chase for one tube', slotWidth),
      row('tubeChaseDepthMm', 'Depth of a chase for one tube', slotDepth),
      row('furtherCableMm', 'Wider for each further cable', { ...slotDepth, min: 0 }),
      row('severalDeeperMm', 'Deeper for more than one cable', { ...slotDepth, min: 0, max: 50 }),
      row('thickCableMm', 'Wider and deeper above 4 mm²', { ...slotDepth, min: 0, max: 50 }),
      row('boxHoleMm', 'Hole for a box larger on every side', { ...slotDepth, min: 0, max: 50 }),
      row('oneCoatM2', '25 kg of one-coat cover at 11 mm', { unit: 'm²', min: 0.1, max: 100, whole: false }),
      row('finishMm', 'Thickness of finish', { ...slotDepth, min: 0, max: 20 }),
      row('finishPastMm', 'Finish wider than what is filled by', { ...slotDepth, min: 0, max: 1000 }),
    ],
  },
  {
    title: 'Joints',
    rows: [
      row('enclosureCables', 'Cables in the usual enclosure', { ...few, min: 2 }),
      row('leverMostMm2', 'Usual lever connectors take up to', sizedBy(LEVER_CONDUCTORS_MM2, 'mm²')),
      row('crimpSleeveMm', 'Sleeve over a crimp', habit),
    ],
  },
  {
    title: 'Boxes and boards',
    rows: [
      row('sunkBoxScrews', 'Screws of a box let in', few),
      row('surfaceBoxScrews', 'Screws of a single surface box', few),
      row('suppliedScrewMm', 'Screws that come with a plate', { ...habit, min: 10, max: 75 }),
      row('sunkScrewMm', 'Plate screws of a box let in', sizedBy(SOLD_SIZES.plateScrewsMm)),
      row('boardSpareWays', 'Spare ways on a new consumer unit', few),
      row('surgeDeviceWays', 'Ways that a surge device takes on it', few),
      row('socketsDeviceA', 'Its device for sockets, if unseen now', device),
      row('cookerDeviceA', 'Its device for a cooker, if unseen now', device),
      row('heatingDeviceA', 'Its device for heating, if unseen now', device),
      row('otherDeviceA', 'Its device for others, if unseen now', device),
    ],
  },
  {
    title: 'Used up',
    rows: [
      row('plasterKgAPva', 'Plaster primed with one pack', { unit: 'kg', min: 0.5, max: 1000, whole: false }),
      row('boxesAFiller', 'Boxes let in with one filler', lasting),
      row('boxesACaulk', 'Boxes let in with one caulk', lasting),
      row('tapes', 'Rolls of tape a job', screws),
      row('sheetsAlong', 'Dust sheets beside one a room', screws),
      row('leastMasks', 'Dust masks at least', screws),
      row('boxesAMask', 'Boxes let in with one mask', lasting),
      row('chasedMAMask', 'Chased with one mask', { unit: 'm', min: 0.5, max: 1000, whole: false }),
      row('cutsABlade', 'Openings cut with one blade', lasting),
      row('openingsACartridge', 'Openings sealed with one cartridge', lasting),
      row('looseFactor', 'Rubble takes so many times its room', { unit: '', min: 1, max: 5, whole: false }),
      row('sackLitres', 'Rubble in one sack', { unit: 'litres', min: 1, max: 100, whole: false }),
    ],
  },
  {
    title: 'Set aside for what is open',
    rows: [
      row('gapPercent', 'Contingency for each thing left open', setAside),
      row('mostGapsPercent', 'At most, however much is open', setAside),
    ],
  },
];

/** The usual figure in words: two places are as fine as anybody counts. */
export const usualWords = ({ usual: figure }: CountRow): string =>
  `From memory, while empty: ${Math.round(figure * 100) / 100}`;
