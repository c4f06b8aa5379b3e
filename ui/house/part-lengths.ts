import type { Plan } from '#engine/plan/plan.ts';
import type { Storey } from '#model/building.ts';
import { cornerForLength, cornerLengths } from './corner-lengths.ts';
import { broughtAlong, fixtureStand } from './fixture-place.ts';
import type { HousePart, StretchPart } from './house-parts.ts';
import type { Reshape } from './reshape.ts';
import { faceOfWall, fromCorners, markFrom } from './stretch-marks.ts';
import { moveForDepth, wallDepths } from './wall-depths.ts';
import { wallMap } from './wall-map.ts';

type Drawn = Pick<Storey, 'walls' | 'rooms' | 'fixtures'>;

/** A length of what is in hand, which can be typed. */
export interface PartLength {
  /** Which it is, among those of its part. */
  readonly id: string;
  readonly words: string;
  /** Null where there is none yet. */
  readonly lengthMm: number | null;
  /** The least that can be meant, mm. */
  readonly leastMm: number;
}

/** What comes of a typed length: a part that is marked otherwise, or the house reshaped; else why nothing does. */
export type LengthTyped =
  | { readonly do: 'part'; readonly part: HousePart }
  | { readonly do: 'reshape'; readonly asked: Reshape }
  | { readonly do: 'nothing'; readonly why: string };

/**
 * The lengths of a part in hand: how deep the rooms beside a wall are, how long the sides at a corner, how far a fixture or a mark is from the
 * corners of its wall, and how far a marked stretch is to be pushed.
 */
export function partLengths(
  storey: Drawn,
  part: HousePart,
  map: Plan['wallById'] = wallMap(storey),
): readonly PartLength[] {
  switch (part.part) {
    case 'wall':
      return wallDepths(storey, part.wallId, map).map(({ words, lengthMm }, at) => ({
        id: String(at),
        words,
        lengthMm,
        leastMm: 1,
      }));
    case 'corner':
      return cornerLengths(storey, part.at, map).map(({ wallId, words, lengthMm }) => ({
        id: wallId,
        words,
        lengthMm,
        leastMm: 1,
      }));
    case 'fixture':
      return fixtureLengths(storey, part.fixtureId, map);
    case 'stretch':
      return stretchLengths(storey, part, map);
  }
}

function fixtureLengths(storey: Drawn, fixtureId: string, map: Plan['wallById']): readonly PartLength[] {
  const fixture = storey.fixtures.find(({ id }) => id === fixtureId);
  const stand = fixture === undefined ? null : fixtureStand(storey, fixture.outline, map);
  if (stand === null) return [];
  const { side, box } = stand;
  return [
    { id: 'left', words: 'From left corner', lengthMm: box.leftMm, leastMm: 0 },
    {
      id: 'right',
      words: 'From right corner',
      lengthMm: side.lengthMm - box.leftMm - box.widthMm,
      leastMm: 0,
    },
  ];
}

function stretchLengths(storey: Drawn, part: StretchPart, map: Plan['wallById']): readonly PartLength[] {
  const face = faceOfWall(storey, part, map);
  const [left, right] = [leftmost(part), rightmost(part)];
  const marks: readonly PartLength[] = [
    {
      id: 'left',
      words: 'From left corner',
      lengthMm: left === null ? null : fromCorners(face, part.side, left).leftMm,
      leastMm: 0,
    },
    {
      id: 'right',
      words: 'From right corner',
      lengthMm: right === null ? null : fromCorners(face, part.side, right).rightMm,
      leastMm: 0,
    },
  ];
  if (part.marks.length < 2) return marks;
  const room = face.room ?? 'the left side';
  return [
    ...marks,
    { id: 'out', words: `Push out of ${room}`, lengthMm: null, leastMm: 1 },
    { id: 'in', words: `Push into ${room}`, lengthMm: null, leastMm: 1 },
  ];
}

/** Who looks at a wall's left face has its `to` on the left hand. One mark alone is that on the left. */
const leftmost = ({ side, marks }: StretchPart): number | null =>
  marks.length === 0 ? null : side === 'left' ? Math.max(...marks) : Math.min(...marks);
const rightmost = ({ side, marks }: StretchPart): number | null =>
  marks.length < 2 ? null : side === 'left' ? Math.min(...marks) : Math.max(...marks);

/** What a typed length of a part means. */
export function lengthTyped(
  storey: Drawn,
  part: HousePart,
  { id, mm }: { readonly id: string; readonly mm: number },
  map: Plan['wallById'] = wallMap(storey),
): LengthTyped {
  switch (part.part) {
    case 'wall': {
      const depth = wallDepths(storey, part.wallId, map)[Number(id)];
      if (depth === undefined) return nothing('That side is not there any more.');
      return { do: 'reshape', asked: { ...part, byMm: moveForDepth(depth, mm) } };
    }
    case 'corner': {
      const to = cornerForLength(storey, part.at, { wallId: id, lengthMm: mm });
      if (to === null) return nothing('No place of the corner makes that side so long.');
      return { do: 'reshape', asked: { part: 'corner', at: part.at, to } };
    }
    case 'fixture':
      return fixtureTyped(storey, part, { id, mm }, map);
    case 'stretch':
      return stretchTyped(storey, part, { id, mm }, map);
  }
}

const nothing = (why: string): LengthTyped => ({ do: 'nothing', why });

function fixtureTyped(
  storey: Drawn,
  { fixtureId }: Extract<HousePart, { part: 'fixture' }>,
  { id, mm }: { readonly id: string; readonly mm: number },
  map: Plan['wallById'],
): LengthTyped {
  const at = storey.fixtures.find((one) => one.id === fixtureId)?.outline;
  const stand = at === undefined ? null : fixtureStand(storey, at, map);
  if (at === undefined || stand === null) return nothing('It stands in no room that closes.');
  const { side, box } = stand;
  const leftMm = id === 'left' ? mm : side.lengthMm - mm - box.widthMm;
  if (leftMm < -1 || leftMm + box.widthMm > side.lengthMm + 1)
    return nothing('It would reach past the end of its wall.');
  const to = broughtAlong(at, stand, { side, leftMm, offMm: box.offMm });
  return { do: 'reshape', asked: { part: 'fixture', fixtureId, at, to, isMeasured: true } };
}

function stretchTyped(
  storey: Drawn,
  part: StretchPart,
  { id, mm }: { readonly id: string; readonly mm: number },
  map: Plan['wallById'],
): LengthTyped {
  const face = faceOfWall(storey, part, map);
  const [left, right] = [leftmost(part), rightmost(part)];
  if (id === 'left' || id === 'right') {
    const typed = markFrom(face, part.side, [id, mm]);
    if (typed < face.lowMm - 1 || typed > face.highMm + 1) return nothing('That wall is not so long.');
    const other = id === 'left' ? right : (left ?? markFrom(face, part.side, ['left', 0]));
    return { do: 'part', part: { ...part, marks: other === null ? [typed] : [typed, other] } };
  }
  const [a, b] = part.marks;
  if (a === undefined || b === undefined) return nothing('Mark two places of the wall first.');
  // Out of the room on its left is to the wall's right.
  const sign = (id === 'out') === (part.side === 'left') ? -1 : 1;
  return {
    do: 'reshape',
    asked: { part: 'stretch', wallId: part.wallId, side: part.side, marks: [a, b], byMm: mm * sign },
  };
}
