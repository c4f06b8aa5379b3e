/** What a thing of a drafting file belongs to; each is a layer of the file. Cables lie flat on the plan, and once more as they run in the house. */
export type DraftLayer =
  | 'WALLS'
  | 'OPENINGS'
  | 'FIXTURES'
  | 'ROOM-NAMES'
  | 'CABLES-FOUND'
  | 'CABLES-FOUND-ASSUMED'
  | 'CABLES-REMOVED'
  | 'CABLES-NEW'
  | 'CABLES-FOUND-3D'
  | 'CABLES-REMOVED-3D'
  | 'CABLES-NEW-3D'
  | 'CABLE-LABELS'
  | 'JOIST-HOLES'
  | 'POINTS-FOUND'
  | 'POINTS-NEW'
  | 'POINTS-REMOVED'
  | 'POINT-LABELS'
  | 'NOTES';

/** A place in the house, mm: x to the right and y up on plan, z above the job's zero level. */
export type DraftPoint = readonly [xMm: number, yMm: number, zMm: number];

/** One thing of a drafting file, all measures mm of the house. */
export type DraftThing =
  | {
      readonly kind: 'line';
      readonly layer: DraftLayer;
      readonly points: readonly DraftPoint[];
      readonly closed: boolean;
    }
  | {
      readonly kind: 'circle';
      readonly layer: DraftLayer;
      readonly at: DraftPoint;
      readonly radiusMm: number;
    }
  | {
      /** Part of a circle, anticlockwise on plan from `fromDeg` to `toDeg` (0 = right, 90 = up). */
      readonly kind: 'arc';
      readonly layer: DraftLayer;
      readonly at: DraftPoint;
      readonly radiusMm: number;
      readonly fromDeg: number;
      readonly toDeg: number;
    }
  | {
      readonly kind: 'text';
      readonly layer: DraftLayer;
      readonly at: DraftPoint;
      /** Height of its capitals. */
      readonly heightMm: number;
      readonly text: string;
      readonly anchor: 'start' | 'middle' | 'end';
      /** Anticlockwise. */
      readonly angleDeg: number;
    };

/** The drafting file of one storey, in the order in which it is drawn. */
export type Draft = readonly DraftThing[];
