import type { Wiring } from '#tests/engine/connections/wiring-builder.ts';
import {
  fuseOf,
  legEdge,
  newEdge,
  nodeOf,
  onWall,
  placeOf,
  pointOf,
  runOf,
  schemeOf,
  segmentOf,
  spotAt,
  wanted,
} from '#tests/engine/connections/wiring-builder.ts';

const chase = { medium: 'wall-chase', containment: 'oval' } as const;
const UNDER_MM = -110;

/** Down the wall from a box, in a tube. */
function drop(x: number, y: number, heightMm: number) {
  return [
    segmentOf(spotAt(x, y, heightMm), spotAt(x, y, 0), chase),
    segmentOf(spotAt(x, y, 0), spotAt(x, y, UNDER_MM), { medium: 'void-open' }),
  ];
}

function rise(x: number, y: number, heightMm: number) {
  return drop(x, y, heightMm)
    .toReversed()
    .map((segment) => ({ ...segment, from: segment.to, to: segment.from }));
}

const under = (x: number, y: number) => spotAt(x, y, UNDER_MM);

/** 0.3 m between the two sides of a partition. */
const w1 = runOf('c1/1', 'r1', 'w1', [
  ...drop(950, 2500, 300),
  segmentOf(under(950, 2500), under(1080, 2200)),
  ...rise(1080, 2200, 450),
]);

/** From a joint under the floor across two joists and a little along, to the front wall. */
const w2 = runOf('c2/1', 'c2/joint', 'w2', [
  segmentOf(under(2900, 10_900), under(2900, 10_000), { medium: 'void-across', joistsCrossed: 2 }),
  segmentOf(under(2900, 10_000), under(2800, 10_000)),
  ...rise(2800, 10_000, 450),
]);

/** Along a joist bay from wall to wall, the last bit across to a box in a stud wall. */
const w3 = runOf('c3/1', 'r8', 'w3', [
  ...drop(4200, 15_000, 300),
  segmentOf(under(4200, 15_000), under(1050, 15_000)),
  segmentOf(under(1050, 15_000), under(1050, 15_200), { medium: 'void-across' }),
  segmentOf(under(1050, 15_200), spotAt(1050, 15_200, 450), { medium: 'stud-cavity' }),
]);

/** Level along a kitchen wall in a tube. */
const w4 = runOf('c4/1', 'r6', 'w4', [segmentOf(spotAt(0, 9400, 1100), spotAt(0, 8500, 1100), chase)]);

/**
 * A terraced house with four new points: a spur through a partition, one from a joint under the bedroom floor,
 * one from a box that is too shallow, and a boiler's fused unit; an RCBO beside. The wiring of a typical job.
 */
export const terrace: Wiring = {
  job: {
    circuits: [
      {
        id: 'ring',
        name: 'Ring',
        board: 'board',
        use: 'sockets',
        colours: 'old',
        device: { standard: 'BS-EN-60898', curve: 'B', ratingA: 32 },
      },
    ],
  },
  points: [
    pointOf('r1', { kind: 'socket-single' }),
    pointOf('r6', { place: onWall('party') }),
    pointOf('r8', { place: onWall('party'), asFound: { boxDepthMm: 25 } }),
    pointOf('r9'),
    wanted('w1'),
    wanted('w2'),
    wanted('w3', { place: onWall('stud') }),
    wanted('w4', {
      kind: 'fused-unit',
      place: onWall('party', 3000, 1100),
      unit: { switched: true, flexOutlet: true },
      load: { watts: 150, use: 'boiler', fixed: true },
    }),
  ],
  nodes: [
    ...['r1', 'r6', 'r8', 'r9'].map((id) => nodeOf(id)),
    ...['w1', 'w2', 'w3', 'w4'].map((id) => nodeOf(id, { state: 'new' })),
    nodeOf('w4/load', { kind: 'load-terminals', pointId: 'w4', state: 'new' }),
    nodeOf('c2/joint', {
      kind: 'joint',
      pointId: null,
      connectionId: 'c2',
      inLeg: { legId: 'l4', alongMm: 6000 },
      state: 'new',
    }),
  ],
  foundEdges: [
    legEdge('l0', 'ring', 'r1'),
    legEdge('l1', 'r1', 'r6'),
    legEdge('l2', 'r6', 'r8'),
    legEdge('l4/1', 'r8', 'c2/joint', { legId: 'l4' }),
    legEdge('l4/2', 'c2/joint', 'r9', { legId: 'l4' }),
    legEdge('l5', 'r9', 'ring'),
  ],
  newEdges: [
    newEdge('c1/1', 'r1', 'w1'),
    newEdge('c2/1', 'c2/joint', 'w2'),
    newEdge('c3/1', 'r8', 'w3'),
    newEdge('c4/1', 'r6', 'w4'),
    fuseOf('w4'),
  ],
  places: ['r1', 'r6', 'r8', 'c2/joint', 'r9'].map((id) => placeOf(id)),
  runs: [w1, { ...w2, from: { ...w2.from, kind: 'joint' } }, w3, w4],
  scheme: schemeOf({
    connections: [
      { id: 'c1', kind: 'spur', from: { point: 'r1' }, to: 'w1' },
      { id: 'c2', kind: 'spur', from: { leg: 'l4', alongMm: 6000 }, to: 'w2' },
      { id: 'c3', kind: 'spur', from: { point: 'r8' }, to: 'w3' },
      { id: 'c4', kind: 'fused-spur', from: { point: 'r6' }, unit: 'w4', feeds: [] },
    ],
    remedies: [{ kind: 'rcbo', at: 'ring' }],
  }),
};
