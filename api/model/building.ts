import { z } from 'zod';
import {
  certaintyByField,
  heightMm,
  idOf,
  idRef,
  isoDate,
  lengthMm,
  planAt,
  sizeMm,
  text,
} from './primitives.ts';

/** Whose house it is, where, and what the law asks by its kind. */
export const site = z.strictObject({
  customer: text,
  address: z.array(text),
  nation: z.enum(['england', 'wales', 'scotland', 'northern-ireland']),
  premises: z.enum(['house', 'flat', 'hmo', 'higher-risk', 'student', 'care']),
  tenure: z.enum(['owner', 'tenant', 'leaseholder']).optional(),
  occupied: z.boolean().optional(),
  builtBefore2000: z.boolean().optional(),
  surveyedOn: isoDate.optional(),
  /** What the conductors are at when they are tested, °C; readings that say nothing else were taken at it. */
  conductorC: z.number().min(-40).max(120).optional(),
  notes: text.optional(),
  certainty: certaintyByField.optional(),
});
export type Site = z.infer<typeof site>;

/** A closed outline on plan, at least three corners. */
export const outline = z.array(planAt).min(3).meta({ id: 'Outline' });

/** How a storey's or a room's floor is built. */
export const floor = z
  .strictObject({
    build: z.enum(['suspended-timber', 'solid', 'concrete']),
    /** Depth of the void under this floor, joists included. */
    voidMm: lengthMm,
    joistDepthMm: sizeMm.optional(),
    joistWidthMm: sizeMm.optional(),
    joistSpacingMm: sizeMm.optional(),
    /** Direction in which the joists run on plan, anticlockwise from x. */
    joistsRunDeg: z.number().min(-360).max(360).optional(),
    covering: z.enum(['boards', 'chipboard', 'carpet', 'laminate', 'tile', 'vinyl', 'wood', 'none']),
    liftable: z.boolean().optional(),
    heated: z.boolean().optional(),
    insulationMm: lengthMm.optional(),
    levelOffsetMm: z.number().min(-5000).max(5000).optional(),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Floor' });
export type Floor = z.infer<typeof floor>;

/** How a ceiling is lined; the void above it belongs to the floor above. */
export const ceiling = z
  .strictObject({
    lining: z.enum(['plasterboard', 'lath-and-plaster', 'none']),
    loft: z.boolean(),
    insulationMm: lengthMm.optional(),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Ceiling' });
export type Ceiling = z.infer<typeof ceiling>;

/** One face of a wall. */
export const face = z
  .strictObject({
    finish: z.enum(['plaster', 'plasterboard', 'lath-and-plaster', 'tile', 'bare', 'panelling']),
    lining: z.enum(['none', 'dot-and-dab', 'battens']),
    gapMm: lengthMm.optional(),
  })
  .meta({ id: 'Face' });
export type Face = z.infer<typeof face>;

/** A side of a wall, looking from its `from` to its `to`. */
export const side = z.enum(['left', 'right']);
export type Side = z.infer<typeof side>;

/** A door, a window, a plain opening or a chimney breast in a wall. */
export const opening = z
  .strictObject({
    id: idOf('opening'),
    kind: z.enum(['door', 'window', 'opening', 'breast']),
    /** From the wall's `from` along the centre line to the opening's near edge. */
    alongMm: lengthMm,
    widthMm: sizeMm,
    sillMm: lengthMm,
    headMm: lengthMm,
    side: side.optional(),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Opening' });
export type Opening = z.infer<typeof opening>;

/** A wall by its centre line; walls are split at every junction. */
export const wall = z
  .strictObject({
    id: idOf('wall'),
    from: planAt,
    to: planAt,
    /** Nought is possible where there is no wall (`open`). */
    thicknessMm: lengthMm,
    core: z.enum([
      'brick',
      'hard-brick',
      'block',
      'aerated-block',
      'concrete',
      'timber-stud',
      'metal-stud',
      'open',
    ]),
    external: z.boolean(),
    party: z.boolean().optional(),
    structural: z.boolean().optional(),
    insulated: z.boolean().optional(),
    faces: z.strictObject({ left: face, right: face }),
    openings: z.array(opening),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Wall' });
export type Wall = z.infer<typeof wall>;

/** A room, bounded by faces of walls. */
export const room = z
  .strictObject({
    id: idOf('room'),
    name: text,
    use: z.enum([
      'living',
      'dining',
      'kitchen',
      'utility',
      'bedroom',
      'bathroom',
      'wc',
      'hall',
      'landing',
      'garage',
      'loft',
      'store',
      'outside',
    ]),
    block: z.enum(['main', 'conservatory', 'detached']),
    /** The walls in order round the room, each with the face that looks into it. */
    walls: z.array(z.strictObject({ wall: idRef('wall'), side })),
    floor: floor.optional(),
    ceiling: ceiling.optional(),
    /** Photos of it; absent: none. */
    photos: z.array(idRef('asset')).optional(),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Room' });
export type Room = z.infer<typeof room>;

/** Something fixed that cables and points keep clear of, or stand over. */
export const fixture = z
  .strictObject({
    id: idOf('fixture'),
    kind: z.enum([
      'sink',
      'hob',
      'oven',
      'bath',
      'shower',
      'basin',
      'gas-meter',
      'gas-pipe',
      'radiator',
      'worktop',
      'boiler',
      'cupboard',
    ]),
    outline: z.array(planAt).min(1),
    fromMm: heightMm.optional(),
    toMm: heightMm.optional(),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Fixture' });
export type Fixture = z.infer<typeof fixture>;

/** A picture under the plan, such as a photo of a floor plan that was straightened: what is drawn is traced over it. */
export const underlay = z
  .strictObject({
    asset: idRef('asset'),
    /** Where the picture's middle lies on the plan. */
    at: planAt,
    widthPx: z.int().min(1).max(20_000),
    heightPx: z.int().min(1).max(20_000),
    scaleMmPerPx: z.number().positive().max(10_000),
    /** How far it is turned, anticlockwise. */
    angleDeg: z.number().min(-360).max(360),
    /** 0: not to be seen; 1: as it is. */
    opacity: z.number().min(0).max(1),
    /** True while it is put out of sight. */
    hidden: z.literal(true).optional(),
  })
  .meta({ id: 'Underlay' });
export type Underlay = z.infer<typeof underlay>;

/** One floor of the house with all that stands on it. */
export const storey = z
  .strictObject({
    id: idOf('storey'),
    name: text,
    floorLevelMm: z.number().min(-50_000).max(200_000),
    /** Floor to ceiling. */
    heightMm: sizeMm,
    floor,
    ceiling,
    walls: z.array(wall),
    rooms: z.array(room),
    fixtures: z.array(fixture),
    stairwells: z.array(outline),
    /** A picture that is traced; absent: none. */
    underlay: underlay.optional(),
    certainty: certaintyByField.optional(),
  })
  .meta({ id: 'Storey' });
export type Storey = z.infer<typeof storey>;
