import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { seededRandom } from '../engine/proof/readings/simulated-readings.ts';
import { placesOf } from './places-of.ts';
import { type HousePoint, ringLegs } from './rings-of.ts';
import { type Cell, gridOf, rowDepthsOf, type StoreyWalls, storeyWalls } from './storey-of.ts';

/** How large an invented house is. */
export interface HouseSize {
  readonly seed: number;
  /** On both storeys together, four at least. */
  readonly rooms: number;
  /** New points, spread over the house; the fourth of every four is a fused unit for a boiler. */
  readonly wanted: number;
  /** Whether an RCD at the board guards the rings; absent: yes. Without it every ring asks for an RCBO of its own. */
  readonly rcd?: boolean;
  /** Outlets that are there, on the rings in turn through the rooms; absent: one in each room. */
  readonly outlets?: number;
}

/** Outlets on one ring. */
const OUTLETS_A_RING = 10;

const storeys = [
  { id: 'ground', name: 'Ground floor', floorLevelMm: 0, heightMm: 2500, voidMm: 450, joistDepthMm: 100 },
  { id: 'first', name: 'First floor', floorLevelMm: 2725, heightMm: 2450, voidMm: 225, joistDepthMm: 175 },
] as const;

const answers = [
  ['board-condition', 'sound'],
  ['isolation', 'main-switch'],
  ['asbestos', 'none-suspected'],
  ['borrowed-neutral', false],
  ['hidden-services', 'traced'],
  ['decorated-recently', false],
  ['parking-at-the-house', true],
] as const;

/**
 * An invented house of two storeys, the same for the same seed: rooms in rows, timber floors and a loft, a board near
 * the middle, a ring for every ten outlets with every leg in order, and new points all over it.
 */
export function houseOf(size: HouseSize): Job {
  const read = readJob(JSON.parse(JSON.stringify(jobOf(size))));
  if (!read.ok) throw new Error(read.faults.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return read.job;
}

interface BuiltStorey {
  readonly storey: (typeof storeys)[number];
  readonly built: StoreyWalls;
  readonly take: ReturnType<typeof placesOf>;
}

interface HouseRoom extends BuiltStorey {
  readonly index: number;
}

function jobOf(size: HouseSize): object {
  const next = seededRandom(size.seed);
  const built = storeysOf(size.rooms, next);
  const rooms = built.flatMap(roomsInTurn);
  const board = boardPoint(built);
  const outlets = size.outlets ?? rooms.length;
  const found = Array.from({ length: outlets }, (_, i) =>
    pointIn(roomAt(rooms, i, outlets), `found-${i + 1}`, 450),
  );
  const wanted = Array.from({ length: size.wanted }, (_, i) =>
    pointIn(roomAt(rooms, i + 0.5, size.wanted), `wanted-${i + 1}`, i % 4 === 3 ? 1100 : 450),
  );
  const rings = Math.max(1, Math.round(outlets / OUTLETS_A_RING));
  const ringOf = (i: number) => `ring-${Math.min(rings, Math.floor((i * rings) / outlets) + 1)}`;
  const ringIds = Array.from({ length: rings }, (_, i) => `ring-${i + 1}`);
  return {
    ...{ format: 'ringwright-job', version: 1, id: `house-${size.seed}`, reference: `HOUSE-${size.seed}` },
    ...{ title: `Invented house of ${size.rooms} rooms`, edition: 'BS 7671:2018+A4:2026' },
    site: siteOf(),
    storeys: built.map((each) => storeyOf(each)),
    supply: supplyOf(),
    boards: [boardOf(board, rings, size.rcd ?? true)],
    circuits: ringIds.map((id, i) => circuitOf(id, i, size.rcd ?? true)),
    points: [
      ...found.map((point, i) => ({ ...outletOf(point, i), status: 'existing', circuit: ringOf(i) })),
      ...wanted.map((point, i) => ({ ...wantedOf(point, i), status: 'wanted' })),
    ],
    legs: ringIds.flatMap((id) => {
      const own = found.filter((_, i) => ringOf(i) === id);
      return ringLegs(id, own, board);
    }),
    ...{ readings: [], schemes: [], stock: [], assets: [] },
    answers: answers.map(([question, value]) => ({ question, value, certainty: 'seen' })),
    terms: { labour: 'typical', markupPercent: 20, contingencyPercent: 5, vat: 'standard', travelMin: 30 },
  };
}

/** Both storeys stand on the same brick walls between the rows; the studs within a row are each storey's own. */
function storeysOf(rooms: number, next: () => number): readonly BuiltStorey[] {
  const counts = [Math.ceil(rooms / 2), Math.floor(rooms / 2)];
  const depthsMm = rowDepthsOf(counts[0] ?? 1, next);
  return storeys.map((storey, i) => {
    const built = storeyWalls(storey.id, gridOf(counts[i] ?? 0, depthsMm, next));
    return { storey, built, take: placesOf(built, next) };
  });
}

/** Rooms row by row, every other row from the right, so that each is beside the one before it. */
function roomsInTurn(on: BuiltStorey): readonly HouseRoom[] {
  const { cells } = on.built;
  const turn = ({ row, column }: Cell): number => (row % 2 === 0 ? column : -column);
  return cells
    .map((cell, index) => ({ ...on, cell, index }))
    .toSorted((a, b) => a.cell.row - b.cell.row || turn(a.cell) - turn(b.cell));
}

/** The room of the i-th of so many that are spread over all rooms in turn. */
function roomAt(rooms: readonly HouseRoom[], i: number, of: number): HouseRoom {
  const room = rooms[Math.floor((i * rooms.length) / of)];
  if (room === undefined) throw new Error('A house without rooms has no room for a point.');
  return room;
}

function boardPoint([ground]: readonly BuiltStorey[]): HousePoint {
  if (ground === undefined) throw new Error('A house without storeys has no board.');
  const index = Math.floor(ground.built.cells.length / 2);
  return pointIn({ ...ground, index }, 'board', 1900);
}

function pointIn({ storey, take, index }: HouseRoom, id: string, heightMm: number): HousePoint {
  return { id, storey: storey.id, floorLevelMm: storey.floorLevelMm, heightMm, place: take(index) };
}

function storeyOf({ storey, built }: BuiltStorey): object {
  const { id, name, floorLevelMm, heightMm, voidMm, joistDepthMm } = storey;
  const isTop = id === 'first';
  return {
    ...{ id, name, floorLevelMm, heightMm },
    floor: {
      ...{ build: 'suspended-timber', voidMm, joistDepthMm, joistWidthMm: 50, joistSpacingMm: 400 },
      ...{ joistsRunDeg: 90, covering: 'boards', liftable: true, heated: false, insulationMm: 0 },
    },
    ceiling: { lining: 'plasterboard', loft: isTop, ...(isTop ? { insulationMm: 200 } : {}) },
    walls: built.walls,
    rooms: built.cells.map((_, i) => ({
      ...{ id: `${id}-room-${i}`, name: `${isTop ? 'Bedroom' : 'Room'} ${i + 1}` },
      use: i === 0 ? (isTop ? 'landing' : 'hall') : isTop ? 'bedroom' : 'living',
      block: 'main',
      walls: built.sides[i],
    })),
    fixtures: built.walls.flatMap((wall) => radiatorUnder(wall)),
    stairwells: [],
  };
}

/** A radiator inside under a window of the front or the back. */
function radiatorUnder({
  id,
  from,
  to,
  openings,
  thicknessMm,
}: StoreyWalls['walls'][number]): readonly object[] {
  const [window] = openings;
  if (window?.kind !== 'window' || from[1] !== to[1]) return [];
  const inwards = from[1] === 0 ? 1 : -1;
  const [lowX, highX] = [from[0] + window.alongMm, from[0] + window.alongMm + window.widthMm];
  const face = from[1] + (inwards * thicknessMm) / 2;
  const outline = [
    [lowX, face],
    [highX, face],
    [highX, face + inwards * 100],
    [lowX, face + inwards * 100],
  ];
  return [{ id: `${id}-radiator`, kind: 'radiator', outline, fromMm: 100, toMm: 550 }];
}

function outletOf({ id, place, heightMm }: HousePoint, i: number): object {
  const { wall, side, alongMm, isStud } = place;
  return {
    ...{ id, label: `R${i + 1}`, kind: 'socket-twin', mount: isStud ? 'dry-lined' : 'flush' },
    place: { wall, side, alongMm, heightMm },
    asFound: { cablesSeen: 2, boxDepthMm: 35, role: 'ring', colours: 'old' },
    ...{ features: [], photos: [] },
  };
}

function wantedOf({ id, place, heightMm }: HousePoint, i: number): object {
  const { wall, side, alongMm, isStud } = place;
  const boiler = {
    kind: 'fused-unit',
    unit: { fuseA: 3, switched: true, flexOutlet: true },
    load: { watts: 150, use: 'boiler', fixed: true },
  };
  return {
    ...{ id, label: `W${i + 1}`, kind: 'socket-twin', mount: isStud ? 'dry-lined' : 'flush' },
    ...(i % 4 === 3 ? boiler : {}),
    place: { wall, side, alongMm, heightMm },
    ...{ features: [], photos: [] },
  };
}

const siteOf = (): object => ({
  ...{ customer: 'The occupier', address: ['An invented house'], nation: 'england', premises: 'house' },
  ...{ tenure: 'owner', occupied: true, builtBefore2000: true, surveyedOn: '2026-11-18' },
});

const supplyOf = (): object => ({
  ...{ earthing: 'TN-C-S', zeOhm: 0.24, pfcKA: 0.96, nominalV: 230 },
  ...{ mainFuseA: 80, tailsMm2: 25, earthingMm2: 16 },
  bonding: ['water', 'gas'].map((service) => ({ service, mm2: 10, seen: true })),
  otherSources: [],
  certainty: { zeOhm: 'measured', pfcKA: 'measured' },
});

const boardOf = ({ id, place, heightMm }: HousePoint, rings: number, rcd: boolean): object => ({
  ...{ id, label: 'Consumer unit', ways: rings + 6, spareWays: 2, rcboAvailable: true },
  rcds: rcd ? [{ id: 'rcd', type: 'A', mA: 30, ratingA: 80 }] : [],
  place: { wall: place.wall, side: place.side, alongMm: place.alongMm, heightMm },
});

const circuitOf = (id: string, i: number, rcd: boolean): object => ({
  ...(rcd ? { upstreamRcd: 'rcd' } : {}),
  ...{ id, name: `Socket ring ${i + 1}`, board: 'board', way: String(i + 1), use: 'sockets', shape: 'ring' },
  device: { standard: 'BS-EN-60898', curve: 'B', ratingA: 32, breakingKA: 6 },
  ...{ colours: 'old', areaServedM2: 90, certainty: { shape: 'measured', order: 'measured' } },
});
