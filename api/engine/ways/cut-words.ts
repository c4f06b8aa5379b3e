import type { Cable } from '#model/cable.ts';
import type { Plan } from '../plan/plan.ts';
import { wallWords } from '../plan/wall-words.ts';
import type { ChaseCut } from './chase-cut.ts';
import type { FloorOpening } from './floor-opening.ts';
import type { PlacedHole } from './holes-placed.ts';
import type { Bearing } from './joist-supports.ts';
import { deepestNotchMm, type JoistCut, joistHoleMm } from './joist-window.ts';
import { rangeWords } from './length-words.ts';
import type { OpenedFloor, StretchCuts } from './run-cuts.ts';

/** What a stretch of a cable cuts and opens, in words that follow on its own: each begins with a comma; empty where it is nothing. */
export function cutWords(plan: Plan, { holes, chase, opened }: StretchCuts, { lineMm2 }: Cable): string {
  const bit = `${joistHoleMm(lineMm2)} mm`;
  return [chase === null ? '' : chaseWords(chase), ...holesInWords(plan, holes, bit), openedWords(opened)]
    .filter((words) => words !== '')
    .map((words) => `, ${words}`)
    .join('');
}

/** What a run cuts and opens as a whole: "2 joists drilled, 1 joist notched, 3 boards up"; empty where that is nothing. */
export function cutsInShort(cuts: readonly StretchCuts[]): string {
  const holes = cuts.flatMap((each) => each.holes);
  const notched = holes.filter(({ judged }) => judged === 'notch').length;
  const barred = holes.filter(({ judged }) => judged === 'neither').length;
  const drilled = holes.length - notched - barred;
  return [
    drilled === 0 ? '' : `${joistsInWords(drilled)} drilled`,
    barred === 0 ? '' : `${joistsInWords(barred)} that may not be cut`,
    notched === 0 ? '' : `${joistsInWords(notched)} notched`,
    openedWords(cuts.flatMap((each) => each.opened)),
  ]
    .filter((words) => words !== '')
    .join(', ');
}

export const joistsInWords = (count: number): string => `${count} ${count === 1 ? 'joist' : 'joists'}`;

/** In the order in which they are said. */
const judgements: readonly JoistCut[] = ['hole', 'notch', 'unknown', 'neither'];

/** The joists of a stretch by what is done to them. */
function holesInWords(plan: Plan, holes: readonly PlacedHole[], bit: string): readonly string[] {
  return judgements.flatMap((judged) => {
    const own = holes.filter((hole) => hole.judged === judged);
    const [first] = own;
    return first === undefined ? [] : [joistWords(plan, own, { bit, judged, first })];
  });
}

interface Judged {
  readonly bit: string;
  readonly judged: JoistCut;
  readonly first: PlacedHole;
}

function joistWords(plan: Plan, holes: readonly PlacedHole[], { bit, judged, first }: Judged): string {
  const [through, isOne] = [`through ${joistsInWords(holes.length)}`, holes.length === 1];
  const drilled = `${bit} ${isOne ? 'hole' : 'holes'} on the centre line`;
  const where = placeWords(plan, holes);
  switch (judged) {
    case 'hole':
      return `${through} (${drilled}, ${where})`;
    case 'notch':
      return `over ${joistsInWords(holes.length)} in ${isOne ? 'a notch' : 'notches'} (${notchDepth(first)}${where}), a steel plate over ${isOne ? 'it' : 'each'}`;
    case 'unknown':
      return `${through} (${drilled}${where === '' ? '; the span is not known' : `, ${where}`})`;
    case 'neither':
      return `${through} where neither hole nor notch is allowed${where === '' ? '' : ` (${where})`}`;
  }
}

const notchDepth = ({ joistDepthMm }: PlacedHole): string =>
  joistDepthMm === null ? '' : `${Math.floor(deepestNotchMm(joistDepthMm))} mm deep at most, `;

/** Nearer than this a hole is at the support, mm. */
const AT_SUPPORT_MM = 10;

/** How far joists are cut from what they bear on, support by support; empty where none of that is known. */
export function placeWords(plan: Plan, holes: readonly PlacedHole[]): string {
  const bySupport = new Map<string, number[]>();
  for (const { support, fromSupportMm, storeyId } of holes) {
    if (fromSupportMm === null) continue;
    const near = fromSupportMm < AT_SUPPORT_MM ? 'at' : 'from';
    const words = support === null ? 'over a support' : `${near} ${bearingWords(plan, support, storeyId)}`;
    bySupport.set(words, [...(bySupport.get(words) ?? []), fromSupportMm]);
  }
  const places = [...bySupport].map(([words, far]) =>
    words.startsWith('from') ? `${rangeWords(Math.min(...far), Math.max(...far))} ${words}` : words,
  );
  const isAssumed = holes.some(({ isSpanAssumed, fromSupportMm }) => isSpanAssumed && fromSupportMm !== null);
  return `${places.join(' and ')}${isAssumed ? ', the span assumed' : ''}`;
}

/** What a joist of a storey bears on: "the wall of Kitchen", "the wall between Hall and Living room below". */
export function bearingWords(plan: Plan, { on, wallId }: Bearing, storeyId: string): string {
  const wall = plan.wallById.get(wallId ?? '');
  if (on === 'trimmer') return 'the edge of the stairwell';
  if (on === 'breast') return 'the chimney breast';
  if (on === 'edge' || wall === undefined) return 'the edge of the room';
  return `${wallWords(plan, wall.wall.id)}${wall.storeyId === storeyId ? '' : ' below'}`;
}

/** How deep a chase is into the masonry against what is allowed, whole mm, the limit rounded down. */
function chaseWords({ intoMm, limitMm, isBehindBoard }: ChaseCut): string {
  const allowed = `${Math.floor(limitMm)} mm`;
  if (intoMm === null) return `no deeper than ${allowed} into the masonry`;
  if (isBehindBoard) return 'the board cut along it, the masonry not';
  if (intoMm === 0) return 'in the plaster alone, the masonry not cut';
  const into = `${Math.round(intoMm)} mm into the masonry`;
  return intoMm > limitMm
    ? `${into}, too deep for this wall: ${allowed} allowed`
    : `${into} of ${allowed} allowed`;
}

function openedWords(opened: readonly OpenedFloor[]): string {
  const count = (kind: FloorOpening): number => opened.filter(({ opening }) => opening === kind).length;
  const [boards, traps, fixed] = [count('lift-board'), count('chipboard-trap'), count('open-fixed-floor')];
  return [
    ...(boards === 0 ? [] : [boards === 1 ? 'a board up' : `${boards} boards up`]),
    ...(traps === 0
      ? []
      : [traps === 1 ? 'a trap cut in the chipboard' : `${traps} traps cut in the chipboard`]),
    ...(fixed === 0
      ? []
      : [fixed === 1 ? 'the floor opened in a place' : `the floor opened in ${fixed} places`]),
  ].join(', ');
}
