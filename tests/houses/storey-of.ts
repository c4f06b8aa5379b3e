/** Where a house stands on its plan, and by what its size is told. */
export interface Grid {
  /** Rows of rooms from the front to the back; the depth of each between centre lines, mm. */
  readonly rowDepthsMm: readonly number[];
  /** By row: where its walls across stand, x in mm, from the left outside wall to the right one. */
  readonly cutsMm: readonly (readonly number[])[];
}

/** A room of a storey, before the job file's words for it. */
export interface Cell {
  readonly row: number;
  readonly column: number;
  readonly x: readonly [lowMm: number, highMm: number];
  readonly y: readonly [lowMm: number, highMm: number];
}

/** A wall of a storey, in the job file's words. */
export interface HouseWall {
  readonly id: string;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly thicknessMm: number;
  readonly core: 'brick' | 'timber-stud';
  readonly external: boolean;
  readonly faces: { readonly left: object; readonly right: object };
  readonly openings: readonly HouseOpening[];
}

/** A door or a window of a wall. */
export interface HouseOpening {
  readonly id: string;
  readonly kind: 'door' | 'window';
  readonly alongMm: number;
  readonly widthMm: number;
  readonly sillMm: number;
  readonly headMm: number;
}

/** A room's own side of a wall. */
export interface RoomSide {
  readonly wall: string;
  readonly side: 'left' | 'right';
}

/** A storey's rooms and walls; `sides` are in order round each room, anticlockwise from its front. */
export interface StoreyWalls {
  readonly cells: readonly Cell[];
  readonly walls: readonly HouseWall[];
  readonly sides: readonly (readonly RoomSide[])[];
}

const plaster = { finish: 'plaster', lining: 'none' };
const board = { finish: 'plasterboard', lining: 'none' };
const bare = { finish: 'bare', lining: 'none' };

/** A room's width on average, between centre lines, mm. */
const ROOM_WIDE_MM = 3300;

/** The nearest a door's or window's edge comes to its wall's end, mm. */
const CLEAR_MM = 300;

/** So many rooms in rows, as square as may be; the rows' walls across do not stand in line. */
export function gridOf(rooms: number, rowDepthsMm: readonly number[], next: () => number): Grid {
  const rows = rowDepthsMm.length;
  const inRow = (row: number) => Math.floor(rooms / rows) + (row < rooms % rows ? 1 : 0);
  const wideMm = inRow(0) * ROOM_WIDE_MM;
  const cutsMm = rowDepthsMm.map((_, row) => {
    const apartMm = wideMm / inRow(row);
    return Array.from({ length: inRow(row) + 1 }, (_unused, i) => {
      const isOutside = i === 0 || i === inRow(row);
      return Math.round(i * apartMm + (isOutside ? 0 : (next() - 0.5) * 0.2 * apartMm));
    });
  });
  return { rowDepthsMm, cutsMm };
}

/** The depths of as many rows as so many rooms take. */
export const rowDepthsOf = (rooms: number, next: () => number): readonly number[] =>
  Array.from({ length: Math.max(2, Math.round(Math.sqrt(rooms))) }, () => 2900 + Math.round(next() * 600));

/**
 * Walls and rooms of one storey. Brick outside and between the rows, which carry the joists; studs within a row. Each
 * room opens to its left neighbour, the first of a row to the row before; every room outside has a window.
 */
export function storeyWalls(prefix: string, grid: Grid): StoreyWalls {
  const yMm = [0];
  for (const depthMm of grid.rowDepthsMm) yMm.push((yMm.at(-1) ?? 0) + depthMm);
  const cells = cellsOf(grid, yMm);
  const along = yMm.map((y, line) => wallsAlong(prefix, grid, { line, y }));
  const across = grid.cutsMm.map((cuts, row) =>
    cuts.map((x, i) => wallAcross(prefix, { row, x, i, last: cuts.length - 1, y: spanOf(yMm, row) })),
  );
  const sides = cells.map(({ row, column, x }): readonly RoomSide[] => [
    ...within(along[row] ?? [], x).map(({ id }) => ({ wall: id, side: 'left' as const })),
    { wall: across[row]?.[column + 1]?.id ?? '', side: 'left' },
    ...within(along[row + 1] ?? [], x)
      .toReversed()
      .map(({ id }) => ({ wall: id, side: 'right' as const })),
    { wall: across[row]?.[column]?.id ?? '', side: 'right' },
  ]);
  return { cells, walls: [...along.flat(), ...across.flat()], sides };
}

const spanOf = (ys: readonly number[], row: number): readonly [number, number] => [
  ys[row] ?? 0,
  ys[row + 1] ?? 0,
];

function cellsOf({ cutsMm }: Grid, yMm: readonly number[]): readonly Cell[] {
  return cutsMm.flatMap((cuts, row) =>
    cuts.slice(1).map((high, column): Cell => {
      const low = cuts[column] ?? 0;
      return { row, column, x: [low, high], y: spanOf(yMm, row) };
    }),
  );
}

/** The walls of one line from left to right, split wherever a wall branches off before it or behind it. */
function wallsAlong(
  prefix: string,
  { cutsMm }: Grid,
  { line, y }: { readonly line: number; readonly y: number },
): readonly HouseWall[] {
  const cuts = new Set([...(cutsMm[line - 1] ?? []), ...(cutsMm[line] ?? [])]);
  const xs = [...cuts].toSorted((a, b) => a - b);
  const isFront = line === 0;
  const external = isFront || line === cutsMm.length;
  return xs.slice(1).map((to, i): HouseWall => {
    const from = xs[i] ?? 0;
    const id = `${prefix}-a${line}-${i}`;
    const openings = external
      ? opening(id, 'window', 1200, to - from)
      : i === 0
        ? opening(id, 'door', 760, to - from)
        : [];
    const outer = { left: isFront ? plaster : bare, right: isFront ? bare : plaster };
    return {
      ...{ id, from: [from, y], to: [to, y], thicknessMm: external ? 300 : 130, core: 'brick', external },
      faces: external ? outer : { left: plaster, right: plaster },
      openings,
    };
  });
}

function wallAcross(
  prefix: string,
  at: {
    readonly row: number;
    readonly x: number;
    readonly i: number;
    readonly last: number;
    readonly y: readonly [number, number];
  },
): HouseWall {
  const { row, x, i, last, y } = at;
  const id = `${prefix}-c${row}-${i}`;
  const external = i === 0 || i === last;
  const outer = { left: i === 0 ? bare : plaster, right: i === 0 ? plaster : bare };
  return {
    ...{ id, from: [x, y[0]], to: [x, y[1]], thicknessMm: external ? 300 : 100, external },
    core: external ? 'brick' : 'timber-stud',
    faces: external ? outer : { left: board, right: board },
    openings: opening(id, external ? 'window' : 'door', external ? 1200 : 760, y[1] - y[0]),
  };
}

/** An opening a third of the way along a wall; none where the wall is too short for it. */
function opening(
  wallId: string,
  kind: HouseOpening['kind'],
  widthMm: number,
  wallMm: number,
): readonly HouseOpening[] {
  const spareMm = wallMm - widthMm - 2 * CLEAR_MM;
  if (spareMm < 0) return [];
  const alongMm = Math.round(CLEAR_MM + spareMm / 3);
  const heights = kind === 'door' ? { sillMm: 0, headMm: 2000 } : { sillMm: 900, headMm: 2100 };
  return [{ id: `${wallId}-${kind}`, kind, alongMm, widthMm, ...heights }];
}

const within = (walls: readonly HouseWall[], [low, high]: readonly [number, number]): readonly HouseWall[] =>
  walls.filter(({ from, to }) => from[0] >= low && to[0] <= high);
