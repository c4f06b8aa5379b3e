import { z } from 'zod';
import { areaMm2, heightMm, idRef, lengthMm, planAt, text } from './primitives.ts';

/** What a stretch of cable lies in. */
export const medium = z
  .enum([
    'void-along',
    'void-across',
    'void-open',
    'wall-chase',
    'stud-cavity',
    'surface-clipped',
    'surface-channel',
    'through-wall',
    'riser',
    'loft',
    'buried',
    'outside',
  ])
  .meta({ id: 'Medium' });
export type Medium = z.infer<typeof medium>;

/** A cable by its construction and areas; a `cpcMm2` of nought has no protective conductor. */
export const cable = z
  .strictObject({
    type: z.enum(['flat-twin', 'flat-single', 'steel-wire-armoured', 'flex', 'imperial']),
    lineMm2: areaMm2,
    cpcMm2: z.number().min(0).max(1000),
    era: text.optional(),
  })
  .meta({ id: 'Cable' });
export type Cable = z.infer<typeof cable>;

/** What protects or carries a stretch of cable. */
export const containment = z
  .enum(['none', 'capping', 'oval', 'channel', 'conduit'])
  .meta({ id: 'Containment' });
export type Containment = z.infer<typeof containment>;

/** A corner of a cable's path. The optional keys say what the stretch arriving here is. */
export const waypoint = z
  .strictObject({
    storey: idRef('storey'),
    at: planAt,
    heightMm,
    medium: medium.optional(),
    wall: idRef('wall').optional(),
    side: z.enum(['left', 'right']).optional(),
    depthMm: lengthMm.optional(),
    insulation: z.enum(['none', 'touching', 'surrounded']).optional(),
    bundle: z.string().min(1).max(64).optional(),
    containment: containment.optional(),
  })
  .meta({ id: 'Waypoint' });
export type Waypoint = z.infer<typeof waypoint>;

/** Where a cable ends: a point's terminals (of a fused unit, which side), or the circuit's origin. */
export const end = z
  .union([
    z.strictObject({ point: idRef('point'), side: z.enum(['supply', 'load']).optional() }),
    z.strictObject({ origin: idRef('circuit'), end: z.enum(['A', 'B']).optional() }),
  ])
  .meta({ id: 'End' });
export type End = z.infer<typeof end>;
