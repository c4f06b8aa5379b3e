import { planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { labelPlacer } from '../label-placer.ts';
import { fixtureShapes } from '../plan/fixtures.ts';
import type { PlanRequest } from '../plan/plan-scene.ts';
import { pointLayer, symbolsUsed } from '../plan/point-layer.ts';
import { roomNames } from '../plan/room-names.ts';
import { extentOf } from '../plan/sheet-layout.ts';
import { wallBoxes, wallShapes } from '../plan/walls.ts';
import type { Ink, Shape } from '../scene.ts';
import { words } from '../scene.ts';
import { drawSymbol, symbolWords } from '../symbols.ts';
import type { Draft, DraftLayer } from './draft.ts';
import { draftCables } from './draft-cables.ts';
import { draftOfShapes } from './draft-of-shapes.ts';

/** Symbols and lettering are as large as they are on paper at 1:50. */
const SCALE = 50;
/** Room round the house for what is written beside it, mm on paper. */
const ROUND_MM = 40;
const ROW_MM = 6;

const layers: Partial<Record<Ink, DraftLayer>> = {
  wall: 'WALLS',
  'wall-light': 'WALLS',
  opening: 'OPENINGS',
  fixture: 'FIXTURES',
  symbol: 'POINTS-FOUND',
  'symbol-solid': 'POINTS-FOUND',
  'symbol-new': 'POINTS-NEW',
  'symbol-new-solid': 'POINTS-NEW',
  'symbol-removed': 'POINTS-REMOVED',
};

/** What is written goes to a layer of its own; what only covers what lies behind it has none. */
const lettered =
  (layer: DraftLayer) =>
  (ink: Ink): DraftLayer | null =>
    layers[ink] ?? (ink.startsWith('text') ? layer : null);

type DraftRequest = Omit<PlanRequest, 'findings'>;

const stateWords = { found: 'found', new: 'new', removed: 'taken out' } as const;

/** What each symbol on the drawing means, under one another at the right of the house. */
function legend(used: ReturnType<typeof symbolsUsed>, rightMm: number, topMm: number): readonly Shape[] {
  return used.flatMap(({ name, state }, row) => {
    const at = sheetPoint(rightMm + ROUND_MM / 2, topMm + 2 + row * (ROW_MM + 2));
    return [
      ...drawSymbol(name, { at, into: [0, -1] }, state),
      words('text', sheetPoint(at[0] + 6, at[1]), `${symbolWords[name]}, ${stateWords[state]}`),
    ];
  });
}

function notesOf(request: DraftRequest, storeyName: string): readonly string[] {
  const { title, reference, schemeName, date, state, demoNote, cautions } = request;
  return [
    `${title} (${reference}): wiring, ${storeyName}`,
    schemeName,
    `${date}, state ${state}`,
    '1 unit is 1 mm. Symbols and lettering are sized for 1:50. Layers that end in -3D hold each cable as it runs, uprights and all; they are frozen.',
    'Dashed: found, its way assumed. Dotted: taken out.',
    ...(demoNote === null ? [] : [demoNote]),
    ...cautions,
  ];
}

/**
 * One storey as a drafting program takes it: the house, its points with the heights of new ones, its cables, a legend and the sheet's words,
 * each on a layer by what it is. Nothing of a storey is left out for want of paper.
 */
export function storeyDraft(request: DraftRequest): Draft {
  const { worked, storeyId } = request;
  const walls = [...worked.plan.wallById.values()].filter((wall) => wall.storeyId === storeyId);
  const points = [...worked.plan.positionOfPoint.values(), ...worked.plan.positionOfBoard.values()];
  const [low, high] = extentOf(
    walls,
    points.filter((at) => at.storeyId === storeyId).map(({ at }) => at),
  );
  const [widthMm, depthMm] = [(high[0] - low[0]) / SCALE, (high[1] - low[1]) / SCALE];
  const frame: SheetFrame = {
    scale: SCALE,
    origin: planPoint(low[0], high[1]),
    at: sheetPoint(ROUND_MM, ROUND_MM),
  };
  const [rightMm, bottomMm] = [ROUND_MM + widthMm, ROUND_MM + depthMm];
  const free = labelPlacer({
    leftMm: 0,
    topMm: 0,
    rightMm: rightMm + ROUND_MM,
    bottomMm: bottomMm + ROUND_MM,
  });
  for (const box of wallBoxes(frame, walls)) free.take(box);
  const fixtures = fixtureShapes(frame, worked.plan, storeyId, free);
  const drawn = pointLayer(worked, storeyId, { frame }, free);
  const cables = draftCables(worked, storeyId, { frame, free });
  const rooms = roomNames(worked, storeyId, { frame }, free);
  const storeyName = worked.plan.storeyById.get(storeyId)?.storey.name ?? 'no storey drawn yet';
  const notes = notesOf(request, storeyName).map((row, i) =>
    words('text', sheetPoint(ROUND_MM, bottomMm + ROUND_MM / 2 + ROW_MM * i), row),
  );
  const on = (shapes: readonly Shape[], layer: DraftLayer): Draft =>
    draftOfShapes(frame, shapes, lettered(layer));
  return [
    ...on(wallShapes(frame, walls), 'NOTES'),
    ...on(fixtures, 'FIXTURES'),
    ...on(rooms, 'ROOM-NAMES'),
    ...cables,
    ...on(drawn.shapes, 'POINT-LABELS'),
    ...on(legend(symbolsUsed(drawn), rightMm, ROUND_MM), 'NOTES'),
    ...on(notes, 'NOTES'),
  ];
}
