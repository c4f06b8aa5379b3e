import type { Worked } from '#engine/connections/worked.ts';
import { metres } from '#engine/quotation/said.ts';
import { bearingWords } from '#engine/ways/cut-words.ts';
import type { BoardWork, FloorPlaces, JoistWork } from '#engine/work/floors/floor-places.ts';
import type { PlanSide, Tape } from '#engine/work/floors/tape.ts';

const sideWords: Readonly<Record<PlanSide, string>> = {
  left: 'wall on the plan’s left',
  right: 'wall on the plan’s right',
  top: 'wall at the plan’s top',
  foot: 'wall at the plan’s foot',
};

/** How the lengths of these lists are to be read. */
export const TAPE_SAID =
  'Lengths are level, from the inner faces of the room, from the nearer wall on each hand, named as the plan lies on its sheet, not as one faces a wall.';

/** Nearer than this a place is against the wall, mm. */
const AGAINST_MM = 5;

/** Where a place is: "1.40 m from the right-hand side, 0.80 m from the foot". */
const tapeSaid = (tape: Tape | null): string =>
  tape === null
    ? 'between rooms: see the plan'
    : [tape.across, tape.up]
        .map(({ side, lengthMm }) =>
          lengthMm < AGAINST_MM
            ? `against the ${sideWords[side]}`
            : `${metres(lengthMm)} from the ${sideWords[side]}`,
        )
        .join(', ');

/** A joist or a board as a row of a list. */
export interface FloorRow {
  readonly mark: string;
  readonly cables: string;
  readonly where: string;
  /** What is cut or opened. */
  readonly what: string;
  /** What bears on it; empty where there is nothing to say. */
  readonly note: string;
}

/** The rows of one room. */
export interface FloorRows {
  readonly title: string;
  readonly rows: readonly FloorRow[];
}

function cutSaid({ hole: { judged }, bitMm, largestHoleMm, deepestNotchMm }: JoistWork): string {
  const most = largestHoleMm === null ? '' : `, ${largestHoleMm} mm at most`;
  switch (judged) {
    case 'hole':
      return `${bitMm} mm hole on the centre line${most}`;
    case 'notch':
      return `Notch${deepestNotchMm === null ? '' : `, ${deepestNotchMm} mm deep at most`}, steel plate over it`;
    case 'unknown':
      return `${bitMm} mm hole on the centre line, if depth and span allow it: measure first`;
    case 'neither':
      return 'Neither hole nor notch is allowed here: do not cut, take another way';
  }
}

function supportSaid(
  { plan }: Worked,
  { storeyId, hole: { support, fromSupportMm, spanMm, isSpanAssumed } }: JoistWork,
): string {
  if (fromSupportMm === null) return 'supports not known';
  if (support === null) return 'over a support';
  const span =
    spanMm === null ? '' : ` (span ${metres(spanMm)}${isSpanAssumed ? ', assumed: look first' : ''})`;
  return `${metres(fromSupportMm)} from ${bearingWords(plan, support, storeyId)}${span}`;
}

const openingWords: Readonly<Record<BoardWork['opening'], string>> = {
  'lift-board': 'Lift a board',
  'chipboard-trap': 'Cut a trap over bearers',
  'open-fixed-floor': 'Open the fixed floor',
};

const coveringWords = {
  boards: 'boards',
  chipboard: 'chipboard',
  carpet: 'carpet',
  laminate: 'laminate',
  tile: 'tile',
  vinyl: 'vinyl',
  wood: 'wood',
  none: '',
} as const;

function floorSaid({ floor }: BoardWork): string {
  if (floor === null) return 'what floor it is nobody has said';
  const said = [
    coveringWords[floor.covering],
    ...(floor.liftable === false ? ['said not to lift'] : []),
    ...(floor.heated === true ? ['HEATED: cut nothing before its pipes or mats are found'] : []),
  ];
  return said.filter((words) => words !== '').join('; ');
}

/** Rows under the storey and room that they are in, in their order. */
function byRoom<T extends JoistWork | BoardWork>(
  { plan }: Worked,
  all: readonly T[],
  row: (one: T) => FloorRow,
): readonly FloorRows[] {
  const rows = new Map<string, FloorRow[]>();
  for (const one of all) {
    const storey = plan.storeyById.get(one.storeyId)?.storey.name ?? '';
    const title = [storey, one.tape?.roomName ?? 'between rooms'].filter((words) => words !== '').join(', ');
    rows.set(title, [...(rows.get(title) ?? []), row(one)]);
  }
  return [...rows].map(([title, own]) => ({ title, rows: own }));
}

/** The joists that are cut, room by room. */
export const joistRows = (worked: Worked, { joists }: FloorPlaces): readonly FloorRows[] =>
  byRoom(worked, joists, (joist) => ({
    mark: joist.mark,
    cables: joist.cables.join(', '),
    where: tapeSaid(joist.tape),
    what: cutSaid(joist),
    note: supportSaid(worked, joist),
  }));

/** The places where floors are opened, room by room. */
export const boardRows = (worked: Worked, { boards }: FloorPlaces): readonly FloorRows[] =>
  byRoom(worked, boards, (board) => ({
    mark: board.mark,
    cables: board.cables.join(', '),
    where: tapeSaid(board.tape),
    what: openingWords[board.opening],
    note: floorSaid(board),
  }));
