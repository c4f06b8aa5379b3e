import { bindsAsRadial, bindsAsRing } from '../../circuit/binds-as.ts';
import type { CircuitShape } from '../../circuit/shape.ts';
import { isGuess } from '../../plan/is-guess.ts';
import { attachColumns, attachColumnsBySite, sitesBeside } from './attach-columns.ts';
import {
  isJoinable,
  jointAttachments,
  mayCut,
  originAttachment,
  ringPointAttachments,
  wholeLegs,
} from './attachments.ts';
import { extensionColumns } from './extension-columns.ts';
import { mendLayers } from './mend-columns.ts';
import type { SchemeColumn } from './scheme-column.ts';
import type { Layer, SearchSpace } from './search-space.ts';
import { SHARING_POINTS } from './settled-columns.ts';
import { spotsInTurn } from './spots-in-turn.ts';
import { branchJoints, branchLayers, radialLayer, radialLegs } from './tree-columns.ts';
import type { Workshop } from './workshop.ts';

/** Left out where there is a radial. */
const onRadials: readonly string[] = [
  'A fused unit brought along on a radial: what branches off it needs none.',
  'On a radial, a further cable from where a fused unit that feeds others is joined on.',
];

/** Left out where a point is taken out: it may be cheaper, where the joint in its old box is nearest and can stay there. */
const atRemoved = 'A further cable from the joint left where a point is taken out.';

/** All ways to connect the wanted points, and in plain words what is not among them. */
export interface BuiltSpace {
  readonly space: SearchSpace<SchemeColumn>;
  readonly leftOut: readonly string[];
}

/**
 * Left out of every search, whatever the house. What is proved is proved of all but this, and the screen says so. In order:
 *
 * - Spurs from new points of an extension: may be cheaper where a point lies off the ring's new way (in a prototype by 3 % at
 *   the most, and seldom); left out since they double the sets that are weighed.
 * - Other orders through the same points by the same opening: never cheaper with each cable by itself, since ends and accessories cost
 *   the same in every order; they could matter where a rule bars the cheapest order and not a dearer one, or where a dearer one shares
 *   more boards. The same goes for other openings, trees and places of a unit, but that those come in turn where a rule bars the first.
 * - What cables of several connections share: a board that is up for both is paid by each of them, so no bound that adds connections
 *   up would hold with it; the price in full counts it once.
 * - Old cable brought into a new point without a joint: may save a joint where the leg has slack enough; nobody knows that before
 *   the leg is open, so it is found on the day and not planned.
 * - Behind an existing fused unit: may be cheaper; what its fuse carries already is a person's to know.
 * - A second new radial from one board: costs a second device, its tests and its way to the board, against one more cable from the
 *   first; cheaper only where points lie on opposite sides of the board.
 * - A second cable from the points that a closed spur frees: may be cheaper by a few metres of cable.
 * - A leg opened for two extensions: never cheaper than one extension through both sets, for two joints or terminals and a
 *   stretch between the openings are saved; but for sets so far apart along a long leg that the old cable between them is worth more.
 * - Joints in a wall: a box is let in and made good, dearer than one in the void below; and none comes near it again.
 * - A unit brought along elsewhere than beside where its cable starts or beside a point that it feeds: between these it saves no
 *   cable, for what leads to it and away from it lies on the same wall; off them it may suit somebody, and costs a way of its own.
 * - A unit in an old spur elsewhere than at its source: never cheaper, for its load side needs the same unit, and a joint more.
 * - More than three cables at a device: its terminals take no more.
 */
const always: readonly string[] = [
  'Spurs from the new points of a ring extension.',
  'Of several orders in which the ring may be carried through the same points, all but the cheapest, each cable counted by itself.',
  'Other openings of a leg, branchings or places of a fused unit that cost more cable by cable and save by what their cables share.',
  'What the cables of several connections share: a floor that is opened or a chase that is cut once for both is counted for each, until the price in full.',
  'Old cable brought into a new point without a joint.',
  'Existing points behind a fused unit: nothing is added to what its fuse carries.',
  'More than one new radial from one board.',
  'After a spur is closed into the ring, more than one further cable from the two points that this frees.',
  'A leg opened for two extensions.',
  'Joints where a leg runs in a wall.',
  'A fused unit brought along that stands elsewhere than beside where its cable starts or beside a point that it feeds.',
  'A fused unit in the leg of an old spur elsewhere than beside its source.',
  'More than three cables of one circuit at its device.',
];

/** Finds every attachment of a house and weighs its columns. */
export function buildSpace(shop: Workshop): BuiltSpace {
  const { ground } = shop;
  const shapes = [...ground.shapes.values()].filter(({ circuitId }) => isJoinable(ground, circuitId));
  const rings = shapes.filter((shape) => bindsAsRing(shape));
  const radials = shapes.filter((shape) => bindsAsRadial(shape));
  const boards = ground.house.job.boards.filter(
    ({ spareWays, certainty }) => (spareWays ?? 0) > 0 && !isGuess(certainty?.spareWays),
  );
  const layers = [
    ...rings.flatMap((shape) => ringLayers(shop, shape)),
    ...radials.flatMap((shape) => [
      ...branchLayers(shop, shape),
      ...legLayers(shop, shape, radialLegs(ground, shape)),
    ]),
    ...boards.map((board) => radialLayer(shop, board)),
  ].filter(({ columns }) => columns.length > 0);
  const free = [
    ...rings.flatMap((shape) => jointColumns(shop, shape)),
    ...radials.flatMap((shape) => branchJoints(shop, shape)),
  ];
  return {
    space: { points: ground.wanted.length, layers, free },
    leftOut: [
      ...ground.leftOut,
      ...always,
      ...(ground.house.job.points.some(({ status }) => status === 'removed') ? [atRemoved] : []),
      ...largerSets(shop),
      ...(ground.wanted.length > SHARING_POINTS ? [notShared(ground.wanted.length)] : []),
      ...[...rings, ...radials].flatMap((shape) => assumedLegs(shop, shape)),
      ...(radials.length > 0 ? onRadials : []),
      ...ground.wanted.flatMap(({ point, isUnit, mayFeed }) =>
        isUnit && !mayFeed ? [`Points fed from ${point.label}, whose fuse is for its own load.`] : [],
      ),
      ...withoutWay(shop),
    ],
  };
}

function ringLayers(shop: Workshop, shape: CircuitShape): readonly Layer<SchemeColumn>[] {
  const sites = sitesBeside(shop, shape.circuitId);
  const attachments = [...ringPointAttachments(shop, shape), ...originAttachment(shop, shape)];
  return [
    ...attachments.map((at) => ({ id: at.key, columns: attachColumns(shop, at, sites) })),
    ...legLayers(shop, shape, wholeLegs(shape)),
    ...mendLayers(shop, shape, sites),
  ];
}

/** Legs to open, each once. */
function legLayers(
  shop: Workshop,
  shape: CircuitShape,
  legIds: readonly string[],
): readonly Layer<SchemeColumn>[] {
  return legIds.map((legId) => ({ id: `leg/${legId}`, columns: extensionColumns(shop, shape, legId) }));
}

/** Of the joints in one leg, for each set of points by each kind the least, and the others in turn where a rule bars that. */
function jointColumns(shop: Workshop, shape: CircuitShape): readonly SchemeColumn[] {
  const sites = sitesBeside(shop, shape.circuitId);
  const legs = wholeLegs(shape).filter((legId) => mayCut(shop.ground, legId));
  return legs.flatMap((legId) => {
    const atSpots = function* (columnsAt: typeof attachColumns): Generator<SchemeColumn> {
      for (const at of jointAttachments(shop, shape.circuitId, legId)) yield* columnsAt(shop, at, sites);
    };
    return spotsInTurn(atSpots(attachColumns), () => atSpots(attachColumnsBySite));
  });
}

/** With many points wanted, not every set of them has its columns. */
function largerSets({ sets: { points, largest } }: Workshop): readonly string[] {
  if (largest >= points) return [];
  return [
    `With ${points} points wanted: more than ${largest} of them at one place to join, and more schemes than the best of each kind.`,
  ];
}

const notShared = (points: number): string =>
  `With ${points} points wanted, more than ${SHARING_POINTS}: what the cables of one connection share.`;

function assumedLegs({ ground }: Workshop, shape: CircuitShape): readonly string[] {
  const assumed = (bindsAsRing(shape) ? wholeLegs(shape) : radialLegs(ground, shape)).filter(
    (legId) => !mayCut(ground, legId),
  );
  if (assumed.length === 0) return [];
  const name = ground.network.circuits.find(({ id }) => id === shape.circuitId)?.name ?? shape.circuitId;
  const legs = assumed.length === 1 ? 'one leg' : `${assumed.length} legs`;
  return [`Joints in ${legs} of ${name} whose way is only assumed: a cable is not cut by guess.`];
}

function withoutWay({ ground }: Workshop): readonly string[] {
  return ground.house.job.boards.flatMap(({ label, spareWays, certainty }) => {
    if (spareWays !== undefined && !isGuess(certainty?.spareWays))
      return spareWays > 0 ? [] : [`A new radial from ${label}: it has no spare way.`];
    return [`A new radial from ${label}: nobody has counted its spare ways.`];
  });
}
