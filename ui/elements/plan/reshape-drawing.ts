import { type SVGTemplateResult, svg } from 'lit';
import { drawnFixtures, fixtureOutline, worktopOutlines } from '#drawing/plan/fixtures.ts';
import { boxDimensions, ghostShapes, letteringRoom } from '#drawing/plan/screen-placing.ts';
import { sideFigures } from '#drawing/plan/side-figures.ts';
import { shapesOfWall, studsFirst } from '#drawing/plan/walls.ts';
import type { Shape } from '#drawing/scene.ts';
import type { Plan } from '#engine/plan/plan.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, type SheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { Storey } from '#model/building.ts';
import type { Board } from '#model/installation.ts';
import { fixtureStand } from '../../house/fixture-place.ts';
import { cornersOf, type HousePart, roomsAt, type StretchPart } from '../../house/house-parts.ts';
import type { MovedParts } from '../../house/moved-parts.ts';
import { roomSides } from '../../house/room-sides.ts';
import { faceOfWall, placeOfMark } from '../../house/stretch-marks.ts';
import type { Vector } from '../../house/vector.ts';
import { isSamePlace, type Stretch } from '../../house/wall-line.ts';
import { inksTogether } from './inks-together.ts';
import type { PlaceDrawing } from './plan-tool.ts';
import { linePath, shapeTemplate } from './shape-template.ts';

/** What is drawn while walls, corners and fixtures are moved. */
export interface ReshapeSight {
  readonly storey: Storey;
  readonly plan: Plan;
  /** What is not as it is drawn on the plan: it is drawn here. */
  readonly moved: MovedParts;
  readonly boards: readonly Board[];
  readonly isRefused: boolean;
  readonly chosen: HousePart | null;
  /** What a mouse is over; null for nothing. */
  readonly over: HousePart | null;
  readonly guides: readonly Stretch[];
}

/** Lettering of lengths, units of the scene: 16 px, also at a desk: they are what is looked at. */
const FIGURES = 3.2;
const HANDLE = 0.9;
const HANDLE_CHOSEN = 1.8;

const sheetOf = (frame: SheetFrame, [x, y]: Vector): SheetPoint => toSheet(frame, planPoint(x, y));

/** The corners as handles, what is in hand, the lengths of the sides of the rooms that change, and the house where it has moved. */
export function reshapeDrawing(frame: SheetFrame, sight: ReshapeSight): PlaceDrawing {
  const figures = sight.chosen === null ? [] : figuresOf(frame, sight, sight.chosen);
  return {
    template: svg`<g class=${sight.isRefused ? 'house-parts refused' : 'house-parts'} aria-hidden="true">
      ${movedHouse(frame, sight)}
      ${sight.over === null ? '' : partTemplate(frame, sight.storey, sight.over, 'under')}
      ${sight.guides.map(({ from, to }) => svg`<path class="guide" d=${linePath([sheetOf(frame, from), sheetOf(frame, to)], false)}/>`)}
      ${handles(frame, sight)}
      ${sight.chosen === null ? '' : partTemplate(frame, sight.storey, sight.chosen, 'in-hand')}
      ${figures.map(shapeTemplate)}
    </g>`,
    written: letteringRoom(figures),
  };
}

/** The lengths that change with a part: the sides of its rooms, or how far it is from the corners of its wall. */
function figuresOf(frame: SheetFrame, sight: ReshapeSight, part: HousePart): readonly Shape[] {
  const { storey, plan } = sight;
  if (part.part === 'fixture') {
    const fixture = storey.fixtures.find(({ id }) => id === part.fixtureId);
    const stand = fixture === undefined ? null : fixtureStand(storey, fixture.outline, plan.wallById);
    return stand === null ? [] : boxDimensions(frame, stand.side, stand.box, FIGURES);
  }
  if (part.part === 'stretch') return stretchFigures(frame, sight, part);
  return sideFigures(
    frame,
    roomsAt(storey, part).flatMap((room) => roomSides(storey, room, plan.wallById)),
    FIGURES,
  );
}

/** How far the marks are from the inside corners; of none nothing. */
function stretchFigures(
  frame: SheetFrame,
  { storey, plan }: ReshapeSight,
  part: StretchPart,
): readonly Shape[] {
  const { lowMm, highMm } = faceOfWall(storey, part, plan.wallById);
  const corners = [lowMm, highMm].map((mm) => placeOfMark(storey, part, mm));
  const [from, to] = part.side === 'left' ? corners : corners.toReversed();
  if (from == null || to == null || part.marks.length === 0) return [];
  const [low, high] = [Math.min(...part.marks), Math.max(...part.marks)];
  // Who looks at a wall's left face has its `to` on the left hand.
  const leftMm = part.side === 'left' ? highMm - high : low - lowMm;
  return boxDimensions(
    frame,
    { from, to, lengthMm: highMm - lowMm },
    { leftMm, widthMm: high - low },
    FIGURES,
  );
}

/** What is elsewhere than before: walls with those they meet, what stands on them, and, once one fixture goes with a wall, all fixtures. */
function movedHouse(
  frame: SheetFrame,
  { storey, plan, moved, boards }: ReshapeSight,
): readonly SVGTemplateResult[] {
  const all = [...plan.wallById.values()];
  const walls = studsFirst(all.filter(({ wall }) => moved.walls.has(wall.id))).flatMap((wall) =>
    shapesOfWall(frame, wall, all),
  );
  const symbols = [
    // What is only wanted is not on the plan as found either.
    ...[...plan.pointById.values()].filter(({ status }) => status !== 'wanted'),
    ...boards.map((board) => ({ ...board, kind: 'board' as const })),
  ].flatMap(({ id, kind, place }) =>
    place === undefined || !moved.points.has(id)
      ? []
      : ghostShapes(frame, plan, place, { symbol: kind, state: 'found' }),
  );
  const fixtures = moved.fixtures
    ? [
        ...worktopOutlines(frame, plan, storey.id),
        ...drawnFixtures(frame, plan, storey.id).map(fixtureOutline),
      ]
    : [];
  return inksTogether([...fixtures, ...walls, ...symbols]);
}

const handles = (frame: SheetFrame, { storey, chosen }: ReshapeSight): SVGTemplateResult[] =>
  cornersOf(storey).map((corner) => {
    const [x, y] = sheetOf(frame, corner);
    const isChosen = chosen?.part === 'corner' && isSamePlace(chosen.at, corner);
    return svg`<circle class=${isChosen ? 'handle-chosen' : 'handle'} cx=${x} cy=${y} r=${isChosen ? HANDLE_CHOSEN : HANDLE}/>`;
  });

function partTemplate(
  frame: SheetFrame,
  storey: Storey,
  part: HousePart,
  look: 'under' | 'in-hand',
): SVGTemplateResult | readonly SVGTemplateResult[] | '' {
  if (part.part === 'corner') {
    const [x, y] = sheetOf(frame, part.at);
    return svg`<circle class=${look} cx=${x} cy=${y} r=${HANDLE_CHOSEN + 1}/>`;
  }
  if (part.part === 'fixture') {
    const fixture = storey.fixtures.find(({ id }) => id === part.fixtureId);
    if (fixture === undefined) return '';
    const corners = fixture.outline.map((at) => sheetOf(frame, at));
    return svg`<path class=${look} d=${linePath(corners, corners.length > 2)}/>`;
  }
  const wall = storey.walls.find(({ id }) => id === part.wallId);
  if (wall === undefined) return '';
  if (part.part === 'stretch') return stretchTemplate(frame, storey, part);
  return svg`<path class=${look} d=${linePath([sheetOf(frame, wall.from), sheetOf(frame, wall.to)], false)}/>`;
}

/** The wall of a stretch faintly, its marks as dots, what is between them in hand. */
function stretchTemplate(frame: SheetFrame, storey: Storey, part: StretchPart): readonly SVGTemplateResult[] {
  const face = faceOfWall(storey, part);
  const on = (mm: number): SheetPoint => sheetOf(frame, placeOfMark(storey, part, mm) ?? [0, 0]);
  const whole = svg`<path class="under" d=${linePath([on(face.lowMm), on(face.highMm)], false)}/>`;
  const between =
    part.marks.length < 2 ? [] : [svg`<path class="in-hand" d=${linePath(part.marks.map(on), false)}/>`];
  const marks = part.marks.map((mm) => {
    const [x, y] = on(mm);
    return svg`<circle class="handle-chosen" cx=${x} cy=${y} r=${HANDLE_CHOSEN}/>`;
  });
  return [whole, ...between, ...marks];
}
