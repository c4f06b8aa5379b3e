import { fittedDepthMm } from '../connections/box-depth.ts';
import type { Worked } from '../connections/worked.ts';
import { roomOfPosition } from '../plan/surroundings.ts';
import { isMasonry, isMasonryCore } from '../ways/lay-in-wall.ts';
import { openedFloors } from '../ways/opened-floors.ts';
import type { Segment } from '../ways/run.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { metreOfChase, roundBox } from './plaster.ts';
import { stretchesOf } from './wall-stretches.ts';

/**
 * What a job uses up, by what it cuts, drills and works in: sheets by rooms, sacks by what comes out of walls, masks and blades by cuts.
 * Every box that is touched counts as cut out, also a found one that may serve: what is carried for dust must not hang on what nobody looked
 * at yet, and whole things of several such boxes do not add up box by box.
 */
export function sundryDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  const boxes = boxWork(worked).filter(({ measured }) => measured > 0);
  const sunk = boxes.filter(({ box }) => box.build !== 'surface');
  const mayBeCut = worked.things.boxes.filter(({ build }) => build !== 'surface');
  const cutIds = [
    ...sunk.map(({ box }) => box.id),
    ...worked.runs
      .filter((run) => run.segments.some((segment) => segment.medium === 'wall-chase'))
      .map((run) => run.id),
  ];
  const everyId = [...worked.runs.map((run) => run.id), ...boxes.map(({ box }) => box.id)];
  const used = (item: string, measured: number, causes: readonly string[]): Demand[] =>
    causes.length === 0 || measured === 0
      ? []
      : [{ item, unit: 'each', group: 'sundries', measured, causes }];
  const chases = stretchesOf(worked.runs, worked.plan, ({ medium }) => medium === 'wall-chase');
  const chasedM = chases.reduce((sum, { lengthMm }) => sum + lengthMm / 1e3, 0);
  const cutLitres =
    chases.reduce((sum, chase) => sum + (metreOfChase(chase, counts).litres * chase.lengthMm) / 1e3, 0) +
    mayBeCut.reduce(
      (sum, { gangs, depthMm, minimumDepthMm }) =>
        sum + roundBox(gangs, Math.max(depthMm, fittedDepthMm(minimumDepthMm)), counts).litres,
      0,
    );
  const masks = Math.ceil(mayBeCut.length / counts.boxesAMask + chasedM / counts.chasedMAMask);
  const cuts =
    mayBeCut.filter(({ build }) => build === 'dry-lining').length +
    openedFloors(worked.runs, worked.plan).length;
  return [
    ...used('insulating-tape', counts.tapes, everyId),
    // Beside one for each room that gets something new, one goes along to where it is joined and floors are opened.
    ...used('dust-sheet', roomsWithNew(worked).size + counts.sheetsAlong, everyId),
    ...used('blade-multitool', Math.max(1, Math.ceil(cuts / counts.cutsABlade)), cutIds),
    ...used('dust-mask', Math.max(counts.leastMasks, masks), cutIds),
    // One for packaging and offcuts.
    ...used('rubble-sack', 1 + Math.ceil((cutLitres * counts.looseFactor) / counts.sackLitres), cutIds),
    // For holes drilled into masonry where nothing else of a wall is cut.
    ...used('dust-mask', 1, cutIds.length > 0 ? [] : drilledIds(worked)),
  ];
}

/** Rooms in which something new is fitted; a place that is in none is one of its own. */
function roomsWithNew({ plan, things }: Worked): ReadonlySet<string> {
  const fitted = things.boxes.filter(({ state }) => state === 'new');
  return new Set(
    fitted.flatMap(({ pointId }) =>
      // A unit that a connection brings along stands beside what it is joined to.
      pointId === null ? [] : (roomOfPosition(plan, plan.positionOfPoint.get(pointId))?.room.id ?? ''),
    ),
  );
}

/** Ways along or through a wall that are fixed to it by drilling. */
const drilledFor: readonly Segment['medium'][] = ['surface-channel', 'surface-clipped', 'through-wall'];

/** Boxes and runs for which holes are drilled into masonry: for their fixings, or right through. */
function drilledIds(worked: Worked): readonly string[] {
  const { plan, runs } = worked;
  const boxes = boxWork(worked).filter(
    ({ box, measured }) => measured > 0 && box.wallCore !== null && isMasonryCore(box.wallCore),
  );
  const drilled = runs.filter(({ segments }) =>
    segments.some(({ medium, wallId }) => {
      const wall = plan.wallById.get(wallId ?? '');
      return wall !== undefined && isMasonry(wall) && drilledFor.includes(medium);
    }),
  );
  return [...boxes.map(({ box }) => box.id), ...drilled.map(({ id }) => id)];
}
