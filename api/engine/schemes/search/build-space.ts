import type { CircuitShape } from '../../circuit/shape.ts';
import { isGuess } from '../../plan/is-guess.ts';
import { bindsAsRadial, bindsAsRing } from '../../rules/wiring.ts';
import { attachColumns, sitesBeside } from './attach-columns.ts';
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
import { spotsInTurn } from './spots-in-turn.ts';
import { branchJoints, branchLayers, radialLayer, radialLegs } from './tree-columns.ts';
import type { Workshop } from './workshop.ts';

/** Left out where there is a radial. */
const onRadials: readonly string[] = [
  'A fused unit brought along on a radial: what branches off it needs none.',
  'On a radial, a further cable from where a fused unit that feeds others is joined on.',
];

/** All ways to connect the wanted points, and in plain words what is not among them. */
export interface BuiltSpace {
  readonly space: SearchSpace<SchemeColumn>;
  readonly leftOut: readonly string[];
}

/** Left out of every search, whatever the house. */
const always: readonly string[] = [
  'Spurs from the new points of a ring extension.',
  'Of several orders in which the ring may be carried through the same points, all but the one with the least cable.',
  'Old cable brought into a new point without a joint.',
  'Existing points behind a fused unit: nothing is added to what its fuse carries.',
  'More than one new radial from one board.',
  'After a spur is closed into the ring, more than one further cable from the two points that this frees.',
  'A leg opened for two extensions.',
  'Joints where a leg runs in a wall.',
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
    ...radials.flatMap((shape) => branchLayers(shop, shape)),
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
      ...largerSets(shop),
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
    ...wholeLegs(shape).map((legId) => ({
      id: `leg/${legId}`,
      columns: extensionColumns(shop, shape, legId),
    })),
    ...mendLayers(shop, shape, sites),
  ];
}

/** Of the joints in one leg, for each set of points by each kind the least, and the others in turn where a rule bars that. */
function jointColumns(shop: Workshop, shape: CircuitShape): readonly SchemeColumn[] {
  const sites = sitesBeside(shop, shape.circuitId);
  const legs = wholeLegs(shape).filter((legId) => mayCut(shop.ground, legId));
  return legs.flatMap((legId) => {
    const atSpots = function* (): Generator<SchemeColumn> {
      for (const at of jointAttachments(shop, shape.circuitId, legId)) yield* attachColumns(shop, at, sites);
    };
    return spotsInTurn(atSpots(), atSpots);
  });
}

/** With many points wanted, not every set of them has its columns. */
function largerSets({ sets: { points, largest } }: Workshop): readonly string[] {
  if (largest >= points) return [];
  return [
    `With ${points} points wanted: more than ${largest} of them at one place to join, and more schemes than the best of each kind.`,
  ];
}

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
