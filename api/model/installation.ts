import { z } from 'zod';
import { cable, end, waypoint } from './cable.ts';
import {
  areaMm2,
  certaintyByField,
  currentA,
  heightMm,
  idOf,
  idRef,
  isoDate,
  lengthMm,
  planAt,
  resistanceOhm,
  text,
} from './primitives.ts';

/** Where something sits: on a wall's face (`alongMm` from the wall's `from`, height of the plate's centre), or free on a storey's plan. */
export const place = z
  .union([
    z.strictObject({ wall: idRef('wall'), side: z.enum(['left', 'right']), alongMm: lengthMm, heightMm }),
    z.strictObject({ storey: idRef('storey'), at: planAt, heightMm }),
  ])
  .meta({ id: 'Place' });
export type Place = z.infer<typeof place>;

/** What residual currents an RCD answers to. */
export const rcdType = z.enum(['AC', 'A', 'F', 'B']);

/** An RCD that waits before it opens, so that one further on opens first (type S); absent: it does not wait. */
const isDelayed = z.literal(true).optional();

/** A service that wants a main bond. */
export const service = z.enum(['water', 'gas', 'oil', 'steel', 'other']);

/** The distributor's supply and what is bonded to it. */
export const supply = z
  .strictObject({
    earthing: z.enum(['TN-S', 'TN-C-S', 'TT']).optional(),
    zeOhm: resistanceOhm.optional(),
    pfcKA: z.number().min(0).max(1000).optional(),
    nominalV: z.literal(230),
    mainFuseA: currentA.optional(),
    tailsMm2: areaMm2.optional(),
    earthingMm2: areaMm2.optional(),
    bonding: z.array(
      z.strictObject({
        service,
        mm2: areaMm2.optional(),
        /** Whether the bond was found there. */
        seen: z.boolean(),
      }),
    ),
    /** Services that wanted no bond when somebody looked: the house has none, or none of metal. */
    absentServices: z.array(service).optional(),
    otherSources: z.array(z.enum(['pv', 'battery', 'ev'])),
    /** Photos of the intake: meter, main fuse, earthing; absent: none. */
    photos: z.array(idRef('asset')).optional(),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Supply' });
export type Supply = z.infer<typeof supply>;

/** A consumer unit or distribution board. */
export const board = z
  .strictObject({
    id: idOf('board'),
    label: text,
    place: place.optional(),
    make: text.optional(),
    ways: z.int().min(0).max(200).optional(),
    spareWays: z.int().min(0).max(200).optional(),
    rcds: z.array(
      z.strictObject({
        id: idOf('RCD'),
        type: rcdType,
        mA: z.number().positive().max(10_000),
        delayed: isDelayed,
        ratingA: currentA.optional(),
      }),
    ),
    rcboAvailable: z.boolean().optional(),
    zdbOhm: resistanceOhm.optional(),
    /** Photos of it, with and without its cover; absent: none. */
    photos: z.array(idRef('asset')).optional(),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Board' });
export type Board = z.infer<typeof board>;

/** A protective device at the origin of a circuit. */
export const device = z
  .strictObject({
    /** Absent where only its rating was told: then it may be a fuse, a breaker or an RCBO. */
    standard: z
      .enum(['BS-EN-60898', 'BS-EN-61009', 'BS-3036', 'BS-1361', 'BS-88-2', 'BS-88-3', 'BS-3871'])
      .optional(),
    curve: z.enum(['B', 'C', 'D', '1', '2', '3']).optional(),
    ratingA: currentA,
    breakingKA: z.number().positive().max(1000).optional(),
    /** I²t that it lets through at the fault current here, by its maker's data, A²s. */
    letThroughA2s: z.number().positive().max(1e9).optional(),
    rcd: z
      .strictObject({ type: rcdType, mA: z.number().positive().max(10_000), delayed: isDelayed })
      .optional(),
  })
  .meta({ id: 'Device' });
export type Device = z.infer<typeof device>;

/** The age of a cable by its cores' colours: before or after harmonisation. */
export const colours = z.enum(['old', 'new', 'mixed']);

/** A circuit of a board as it is labelled and protected. */
export const circuit = z
  .strictObject({
    id: idOf('circuit'),
    name: text,
    board: idRef('board'),
    way: text.optional(),
    use: z.enum(['sockets', 'kitchen', 'cooker', 'heating', 'other']),
    /** What is claimed; what the legs say beats it. */
    shape: z.enum(['ring', 'radial']).optional(),
    device: device.optional(),
    upstreamRcd: idRef('RCD').optional(),
    colours: colours.optional(),
    areaServedM2: z.number().positive().max(100_000).optional(),
    loads: z.array(z.strictObject({ watts: z.number().min(0).max(1e6), use: text })).optional(),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Circuit' });
export type Circuit = z.infer<typeof circuit>;

/** A joint of conductors outside an accessory. */
export const joint = z
  .strictObject({
    kind: z.enum(['screw', 'lever', 'maintenance-free', 'crimp']),
    ratingA: currentA,
    accessible: z.boolean(),
    place: place.optional(),
    /** What its maker says it takes: so many cables, of conductors up to so large. Absent: what is usual for its kind. */
    takes: z.strictObject({ cables: z.int().min(1).max(60).optional(), mm2: areaMm2.optional() }).optional(),
  })
  .meta({ id: 'Joint' });
export type Joint = z.infer<typeof joint>;

/** What stands at a point. */
export const pointKind = z.enum([
  'socket-single',
  'socket-twin',
  'fused-unit',
  'flex-outlet',
  'joint',
  'dp-switch',
  'cooker-control',
  'grid',
  'shaver',
  'blank',
  'other',
]);
export type PointKind = z.infer<typeof pointKind>;

/** How the plate of an accessory looks: white moulded plastic, or metal. */
export const finish = z.enum(['white', 'brushed', 'polished', 'black']);
export type Finish = z.infer<typeof finish>;

const fuseA = z.number().positive().max(13);

/** A place with an accessory or a joint: found, wanted, or to go. */
export const point = z
  .strictObject({
    id: idOf('point'),
    label: text,
    status: z.enum(['existing', 'wanted', 'removed', 'replaced']),
    replaces: idRef('point').optional(),
    circuit: idRef('circuit').optional(),
    kind: pointKind,
    modules: z
      .array(z.strictObject({ kind: text, feeds: idRef('point').optional(), fuseA: fuseA.optional() }))
      .optional(),
    place: place.optional(),
    mount: z.enum(['flush', 'dry-lined', 'surface']).optional(),
    accessible: z.boolean().optional(),
    /** The back box to fit; derived when absent. */
    box: z.strictObject({ depthMm: lengthMm, gangs: z.int().min(1).max(4) }).optional(),
    /** What is done where the box found is too shallow: a spacer frame goes over it. Absent: it is exchanged. */
    shallowBox: z.literal('frame').optional(),
    unit: z
      .strictObject({
        fuseA: fuseA.optional(),
        switched: z.boolean(),
        rcd: z.boolean().optional(),
        flexOutlet: z.boolean().optional(),
        neon: z.boolean().optional(),
      })
      .optional(),
    joint: joint.optional(),
    load: z.strictObject({ watts: z.number().min(0).max(100_000), use: text, fixed: z.boolean() }).optional(),
    features: z.array(z.enum(['usb', 'rcd', 'ip66', 'metal'])),
    /** Of what is fitted here; absent: as the job's terms say. */
    finish: finish.optional(),
    asFound: z
      .strictObject({
        cablesSeen: z.int().min(0).max(20).optional(),
        boxDepthMm: lengthMm.optional(),
        slackMm: lengthMm.optional(),
        colours: colours.optional(),
        lugs: z.union([z.boolean(), text]).optional(),
        role: z.enum(['ring', 'spur']).optional(),
      })
      .optional(),
    photos: z.array(idRef('asset')),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Point' });
export type Point = z.infer<typeof point>;

/** A cable between two ends as found. `certainty` tells `length` and `route` apart. */
export const leg = z
  .strictObject({
    id: idOf('leg'),
    circuit: idRef('circuit'),
    from: end,
    to: end,
    cable: cable.optional(),
    lengthMm: lengthMm.optional(),
    via: z.array(waypoint).optional(),
    /** The plastic channel that it lies in where it runs on a surface, and whether new cable is to go into it. */
    channel: z
      .strictObject({
        size: z.enum(['16x16', '25x16', '40x16', '40x25', '40x40', '50x50']).optional(),
        /** Absent: new channel beside it is set off, and bought. */
        reuse: z.literal(true).optional(),
      })
      .optional(),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Leg' });
export type Leg = z.infer<typeof leg>;

/** Where a reading was taken: a point, or a board for one taken at the origin. */
const takenAt = idRef(['point', 'board']);

const readingCommon = {
  id: idOf('reading'),
  circuit: idRef('circuit').optional(),
  takenOn: isoDate.optional(),
  phase: z.enum(['before', 'after']),
  resolutionOhm: resistanceOhm.optional(),
  nullOhm: resistanceOhm.optional(),
  conductorC: z.number().min(-40).max(120).optional(),
  instrument: text.optional(),
  certainty: certaintyByField.optional(),
};

/** One reading of an instrument. */
export const reading = z
  .discriminatedUnion('kind', [
    z.strictObject({
      ...readingCommon,
      kind: z.literal('loop'),
      loop: z.enum(['L-N', 'L-cpc', 'L', 'N', 'cpc']),
      from: z.enum(['end-to-end', 'A', 'B', 'crossed']),
      at: takenAt.optional(),
      linkedAt: takenAt.optional(),
      ohm: resistanceOhm,
    }),
    z.strictObject({
      ...readingCommon,
      kind: z.literal('insulation'),
      between: z.enum(['L-N', 'L-cpc', 'N-cpc', 'LN-cpc']),
      at: takenAt.optional(),
      megohm: z.number().min(0).max(1e6),
      testV: z.number().positive().max(10_000),
    }),
    z.strictObject({ ...readingCommon, kind: z.literal('zs'), at: takenAt.optional(), ohm: resistanceOhm }),
    z.strictObject({ ...readingCommon, kind: z.literal('ze'), at: takenAt.optional(), ohm: resistanceOhm }),
    z.strictObject({
      ...readingCommon,
      kind: z.literal('pfc'),
      at: takenAt.optional(),
      kA: z.number().min(0).max(1000),
    }),
    z.strictObject({
      ...readingCommon,
      kind: z.literal('rcd'),
      at: takenAt.optional(),
      mA: z.number().positive().max(10_000),
      ms: z.number().min(0).max(100_000),
    }),
    z.strictObject({ ...readingCommon, kind: z.literal('polarity'), at: takenAt, ok: z.boolean() }),
    // Whether a residual current device opened by its own test button.
    z.strictObject({
      ...readingCommon,
      kind: z.literal('rcd-button'),
      at: takenAt.optional(),
      ok: z.boolean(),
    }),
    // Whether an arc fault detection device opened by its own test button.
    z.strictObject({
      ...readingCommon,
      kind: z.literal('afdd-button'),
      at: takenAt.optional(),
      ok: z.boolean(),
    }),
    // Whether a surge protective device shows that it still protects.
    z.strictObject({
      ...readingCommon,
      kind: z.literal('spd-indicator'),
      at: takenAt.optional(),
      ok: z.boolean(),
    }),
  ])
  .meta({ id: 'Reading' });
export type Reading = z.infer<typeof reading>;
