import { z } from 'zod';
import { cable, end, waypoint } from './cable.ts';
import { device, joint, place, service } from './installation.ts';
import { idOf, idRef, lengthMm, text } from './primitives.ts';

/** Where a new cable is joined on. `alongMm` is cable length from the leg's `from`. */
export const tap = z
  .union([
    z.strictObject({ point: idRef('point') }),
    z.strictObject({ leg: idRef('leg'), alongMm: lengthMm, joint: joint.optional() }),
    z.strictObject({ origin: idRef('circuit') }),
  ])
  .meta({ id: 'Tap' });
export type Tap = z.infer<typeof tap>;

/** How an opened ring leg is joined to the new cable on one side. */
export const cut = z
  .discriminatedUnion('how', [
    z.strictObject({ how: z.literal('terminals') }),
    z.strictObject({ how: z.literal('joint'), alongMm: lengthMm, joint: joint.optional() }),
    z.strictObject({ how: z.literal('old-cable'), alongMm: lengthMm }),
  ])
  .meta({ id: 'Cut' });
export type Cut = z.infer<typeof cut>;

/** A fused unit: a wanted or existing point, or one that the connection brings along. */
const unitOrPoint = z.union([
  idRef('point'),
  z.strictObject({ fuseA: z.number().positive().max(13).optional(), place: place.optional() }),
]);

/** One cable behind a fused unit (`from` may be the word `unit`) or of a radial (`origin`). */
function feedFrom(start: 'unit' | 'origin') {
  return z.strictObject({ from: idRef('point', () => [start]), to: idRef('point') });
}
const unitFeed = feedFrom('unit');
const originFeed = feedFrom('origin');
export type Feed = z.infer<typeof unitFeed>;

const common = {
  id: idOf('connection'),
  cable: cable.optional(),
  /** Runs pinned by hand; the others are found. */
  runs: z.array(z.strictObject({ from: end, to: end, via: z.array(waypoint) })).optional(),
};

/** How new points are joined to the circuits. */
export const connection = z
  .discriminatedUnion('kind', [
    z.strictObject({ ...common, kind: z.literal('spur'), from: tap, to: idRef('point') }),
    z.strictObject({
      ...common,
      kind: z.literal('fused-spur'),
      from: tap,
      unit: unitOrPoint,
      feeds: z.array(unitFeed),
    }),
    z.strictObject({
      ...common,
      kind: z.literal('ring-extension'),
      circuit: idRef('circuit'),
      between: z.tuple([end, end]),
      leg: idRef('leg').optional(),
      out: cut,
      back: cut,
      through: z.array(idRef('point')),
    }),
    z.strictObject({
      ...common,
      kind: z.literal('radial'),
      board: idRef('board'),
      device,
      feeds: z.array(originFeed),
    }),
    z.strictObject({
      ...common,
      kind: z.literal('fuse-down'),
      leg: idRef('leg'),
      alongMm: lengthMm.optional(),
      unit: unitOrPoint,
      feeds: z.array(unitFeed),
    }),
    z.strictObject({
      ...common,
      kind: z.literal('close-spur'),
      point: idRef('point'),
      leg: idRef('leg'),
      back: cut,
    }),
  ])
  .meta({ id: 'Connection' });
export type Connection = z.infer<typeof connection>;
export type ConnectionKind = Connection['kind'];

/** The services whose bonding a `bond-upgrade` may name instead of an id. */
function bondedServices(owner: unknown): readonly string[] {
  return (owner as { kind?: unknown }).kind === 'bond-upgrade' ? service.options : [];
}

/** A change to what is there, beside the connections. */
export const remedy = z
  .strictObject({
    kind: z.enum([
      'rcbo',
      'rcd-enclosure',
      'rcd-unit',
      'rcd-outlet',
      'bond-upgrade',
      're-box',
      'single-to-twin',
      'lower-device',
      'new-board',
    ]),
    /** What it is done to: a point, a circuit or a board; for `bond-upgrade` also a service's name. */
    at: idRef(['point', 'circuit', 'board'], bondedServices).optional(),
    device: device.optional(),
  })
  .meta({ id: 'Remedy' });
export type Remedy = z.infer<typeof remedy>;

/** One complete way to connect every wanted point. */
export const scheme = z
  .strictObject({
    id: idOf('scheme'),
    name: text,
    connections: z.array(connection),
    remedies: z.array(remedy),
    locks: z.array(idRef('connection')),
  })
  .meta({ id: 'Scheme' });
export type Scheme = z.infer<typeof scheme>;
