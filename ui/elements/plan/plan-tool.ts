import type { nothing, SVGTemplateResult, TemplateResult } from 'lit';
import type { Rectangle } from '#drawing/label-placer.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { PlanPoint } from '#engine/plan/plane.ts';
import type { SheetFrame } from '#engine/plan/sheet-frame.ts';
import type { MovedParts } from '../../house/moved-parts.ts';
import type { Grip } from './plan-gestures.ts';

/** What a hand is at, drawn, and where its figures are written. */
export interface PlaceDrawing {
  readonly template: SVGTemplateResult | typeof nothing;
  readonly written: readonly Rectangle[];
}

/** What a tool has of its own that a hand takes hold of: walls, corners. */
export interface ToolGrips {
  /** What a place means, by a name that the tool knows; null for nothing. */
  readonly at: (at: PlanPoint) => string | null;
  readonly gripOf: (subject: string) => Grip;
  /** Pulled by so many mm of the house from where it was taken. */
  readonly dragged: (
    subject: string,
    byMm: readonly [number, number],
    phase: 'begin' | 'move' | 'end',
  ) => void;
  /** A key let go of: what it moved has come to rest. */
  readonly letGo: () => void;
  /** What is drawn faintly as it was, since the tool draws it as it would be; null while nothing is held. */
  readonly aside: () => MovedParts | null;
}

/** What the hand does on the plan while it does not choose things: it picks a place, or draws a way. */
export interface PlanTool {
  /** The plan's name for a screen reader, with the keys that work on it. */
  readonly name: string;
  /** Where the hand is at this moment, in words; null for nothing. */
  readonly telling: string | null;
  /** What can be done, at the foot of the plan. */
  readonly hint: TemplateResult;
  readonly drawing: (frame: SheetFrame) => PlaceDrawing;
  readonly hovered: (at: PlanPoint) => void;
  /** @param subject the thing that was tapped; null for none. */
  readonly tapped: (at: PlanPoint, subject: string | null) => void;
  /** Does what a key means for it; false for a key that means nothing. */
  readonly keyed: (key: string, isFine: boolean) => boolean;
  readonly giveUp: () => void;
  /** True where it works on things: keys go from one to the next, and a finger's width beside one means it. */
  readonly onThings?: boolean;
  readonly grips?: ToolGrips;
  /** It was taken up by keyboard, and has to show where that begins. */
  readonly reachedByKeys?: () => void;
}

/** What a tool works on, as it is at each moment, and whom it tells. */
export interface ToolPlace {
  readonly worked: Worked;
  readonly storeyId: string;
  readonly hasWalls: boolean;
  /** Millimetres of the house to a pixel. */
  readonly mmPerPx: number;
  /** Lettering of lengths, units of the scene. */
  readonly figuresMm: number;
}
