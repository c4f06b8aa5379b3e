import type { SheetPoint } from '#engine/plan/sheet-frame.ts';

/** What a stroke, a fill or a text stands for; `ink.ts` says how each looks. */
export type Ink =
  | 'paper'
  | 'frame'
  | 'rule'
  | 'wall'
  | 'wall-light'
  | 'opening'
  | 'fixture'
  | 'found'
  | 'found-assumed'
  | 'new'
  | 'new-next'
  | 'removed'
  | 'symbol'
  | 'symbol-solid'
  | 'symbol-new'
  | 'symbol-new-solid'
  | 'symbol-removed'
  | 'halo'
  | 'halo-line'
  | 'halo-new'
  | 'text'
  | 'text-soft'
  | 'text-new'
  | 'text-paper'
  | 'fails'
  | 'decide'
  | 'not-proven'
  | 'advice'
  | 'mark-fails'
  | 'mark-decide'
  | 'mark-not-proven'
  | 'mark-advice'
  | 'scale-bar'
  | 'dimension'
  | 'leader'
  | 'rise'
  | 'joist'
  | 'hole'
  | 'notch'
  | 'hole-unknown'
  | 'hole-barred'
  | 'board-up'
  | 'ring-new'
  | 'cross-removed'
  | 'core-red'
  | 'core-brown'
  | 'core-line'
  | 'core-black'
  | 'core-blue'
  | 'core-neutral'
  | 'core-earth';

/** One typed shape on the sheet; all measures mm on paper. */
export type Shape =
  | {
      readonly kind: 'line';
      readonly points: readonly SheetPoint[];
      readonly closed: boolean;
      readonly ink: Ink;
    }
  | {
      readonly kind: 'circle';
      readonly at: SheetPoint;
      readonly radiusMm: number;
      readonly ink: Ink;
    }
  | {
      /** Part of a circle, clockwise on paper from `fromDeg` to `toDeg` (0 = right, 90 = down). */
      readonly kind: 'arc';
      readonly at: SheetPoint;
      readonly radiusMm: number;
      readonly fromDeg: number;
      readonly toDeg: number;
      readonly closed: boolean;
      readonly ink: Ink;
    }
  | {
      readonly kind: 'text';
      readonly at: SheetPoint;
      readonly text: string;
      readonly sizeMm: number;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly angleDeg: number;
      readonly strong: boolean;
      readonly ink: Ink;
    }
  | {
      /** Shapes that belong to one thing of the job: touching any of them means `subject`. */
      readonly kind: 'group';
      readonly subject: string;
      readonly title: string;
      readonly shapes: readonly Shape[];
    };

/** A drawing: a sheet of paper with layers from back to front. */
export interface Scene {
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** 1:`scale`; null where the drawing is not to scale. */
  readonly scale: number | null;
  readonly layers: readonly {
    readonly name: string;
    readonly shapes: readonly Shape[];
  }[];
}

/** An open or closed line. */
export const line = (ink: Ink, points: readonly SheetPoint[], closed = false): Shape => ({
  kind: 'line',
  points,
  closed,
  ink,
});

/** Upright text, unless an angle is given. */
export const words = (
  ink: Ink,
  at: SheetPoint,
  text: string,
  options: {
    readonly sizeMm?: number;
    readonly anchor?: 'start' | 'middle' | 'end';
    readonly angleDeg?: number;
    readonly strong?: boolean;
  } = {},
): Shape => ({
  kind: 'text',
  at,
  text,
  sizeMm: options.sizeMm ?? 2.5,
  anchor: options.anchor ?? 'start',
  angleDeg: options.angleDeg ?? 0,
  strong: options.strong ?? false,
  ink,
});
