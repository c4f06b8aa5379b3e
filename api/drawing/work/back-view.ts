import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type {
  CableEnd,
  Conductor,
  ConnectionPlace,
  Lead,
  TerminalName,
} from '#engine/work/connection-place.ts';
import { boxCorners, textWidthMm } from '../label-placer.ts';
import { line, type Scene, type Shape, words } from '../scene.ts';
import { colourLetters, coreInk, coreLetters, terminalWords } from './core-words.ts';

/** Cores come in on multiples of this, conductors go into terminals half way between: so that no upright lies on another; mm. */
const LATTICE = 1.6;
/** From one conductor to the next where a cable comes in, and from one cable to the next at the least; mm. */
const CORE_PITCH = 3 * LATTICE;
const CABLE_GAP = 3;
/** From one terminal to the next at the least; from one screw of a bar to the next; the height of a conductor's own level. */
const TERMINAL_PITCH = 12;
const BAR_PITCH = 4 * LATTICE;
const LANE = 1.9;
const LETTERING = 2.5;
const MARGIN = 2;
const SCREW_Y = 13;
const SCREW = 2.4;

/** Terminals from left to right, as this picture has them; makers place them as they like, and mark them. */
const terminalOrder: readonly TerminalName[] = [
  'N',
  'N-in',
  'N-bar',
  'device-N',
  'L-in',
  'E',
  'E1',
  'E2',
  'E-bar',
  'L',
  'L-out',
  'N-out',
  'device',
];

/** A terminal in the picture: of a grid each module has its own, of a board each device. */
interface Terminal {
  readonly key: string;
  readonly name: TerminalName;
  readonly x: number;
  /** Where its conductors go in, from left to right. */
  readonly stems: readonly number[];
}

/** A cable or a lead as it comes in from below. */
interface Column {
  readonly mark: string;
  readonly isNew: boolean;
  readonly isOfDevice: boolean;
  readonly x: number;
  readonly cores: readonly { readonly conductor: Conductor; readonly key: string }[];
}

/**
 * The back of an accessory, a joint or the terminals of a board, with every conductor from its cable to its terminal: own
 * artwork, no maker's. Line is a whole stroke, neutral long dashes, earth short ones, each with the letters of its colour.
 */
export function backView(place: ConnectionPlace): Scene {
  const columns = columnsOf(place);
  const terminals = terminalsOf(columns);
  const wide = Math.max(...columns.map(({ x, mark, cores }) => x + halfWidth(mark, cores.length)), 0);
  const widthMm =
    Math.max(wide, ...terminals.map((each) => each.x + pitchOf(each.name, each.stems.length) / 2)) + MARGIN;
  const lanes = columns.reduce((sum, { cores }) => sum + cores.length, 0);
  const lanesEnd = SCREW_Y + SCREW + 2.4 + lanes * LANE;
  const footY = lanesEnd + 9;
  return {
    title: `Connections of ${place.mark}, seen from behind`,
    widthMm,
    heightMm: footY + 7,
    scale: null,
    layers: [
      { name: 'plate', shapes: plate(place, widthMm, lanesEnd + 2) },
      { name: 'conductors', shapes: conductors(columns, terminals, footY) },
      { name: 'terminals', shapes: terminals.flatMap(terminal) },
    ],
  };
}

const halfWidth = (mark: string, cores: number): number =>
  Math.max((cores * CORE_PITCH) / 2, textWidthMm(mark, LETTERING) / 2);

/** Modules of a grid have load sides of their own, circuits their devices: such terminals are told apart by the side. */
const keyOf = (side: string, name: TerminalName): string =>
  name.endsWith('-out') || name.startsWith('device') ? `${side} ${name}` : name;

function columnsOf({ sides, leads }: ConnectionPlace): readonly Column[] {
  const load = sides.at(-1)?.nodeId ?? '';
  const all = [
    ...sides.flatMap(({ nodeId, ends }) =>
      ends.map((end) => ({ ...endMark(end), of: end.conductors, nodeId })),
    ),
    ...leads.map(({ kind, conductors: of }) => ({
      mark: leadMarks[kind],
      isNew: true,
      isOfDevice: kind === 'rcbo-neutral' || kind === 'rcbo-earth',
      of,
      nodeId: load,
    })),
  ];
  let x = MARGIN;
  return all.map(({ mark, isNew, isOfDevice, of, nodeId }) => {
    const half = halfWidth(mark, of.length);
    const toFirst = ((of.length - 1) / 2) * CORE_PITCH;
    const at = Math.ceil((x + half - toFirst) / LATTICE) * LATTICE + toFirst;
    x = at + half + CABLE_GAP;
    const cores = of.map((conductor) => ({ conductor, key: keyOf(nodeId, conductor.terminal) }));
    return { mark, isNew, isOfDevice, x: at, cores };
  });
}

/** Leads as they are called under the picture. */
const leadMarks: Readonly<Record<Lead['kind'], string>> = {
  flex: 'flex',
  'box-tail': 'box',
  'rcbo-neutral': 'N lead',
  'rcbo-earth': 'E lead',
};

const endMark = ({ mark, state, ringEnd }: CableEnd): Pick<Column, 'mark' | 'isNew' | 'isOfDevice'> => ({
  mark: mark === null ? 'not recorded' : ringEnd === null ? mark : `end ${ringEnd}`,
  isNew: state === 'new',
  isOfDevice: false,
});

function terminalsOf(columns: readonly Column[]): readonly Terminal[] {
  const seen = new Map<string, { readonly name: TerminalName; readonly count: number }>();
  for (const { conductor, key } of columns.flatMap(({ cores }) => cores))
    seen.set(key, { name: conductor.terminal, count: (seen.get(key)?.count ?? 0) + 1 });
  const sorted = [...seen].toSorted(
    ([, a], [, b]) => terminalOrder.indexOf(a.name) - terminalOrder.indexOf(b.name),
  );
  let edge = MARGIN;
  return sorted.map(([key, { name, count }]) => {
    const pitch = pitchOf(name, count);
    const step = isBar(name) ? BAR_PITCH : LATTICE;
    const toFirst = ((count - 1) / 2) * step;
    const first = (Math.ceil((edge + pitch / 2 - toFirst) / LATTICE - 0.5) + 0.5) * LATTICE;
    const x = first + toFirst;
    edge = x + pitch / 2;
    return { key, name, x, stems: Array.from({ length: count }, (_, i) => first + i * step) };
  });
}

/** A bar has a screw for each conductor; in a terminal they share one. */
const isBar = (name: TerminalName): boolean => name.endsWith('-bar');

/** Of a screw that so many conductors go into. */
const radiusOf = (count: number): number => Math.max(SCREW, (count * LATTICE) / 2);

/** What a terminal takes of the row, its name above it too. */
function pitchOf(name: TerminalName, count: number): number {
  const own = isBar(name) ? count * BAR_PITCH + CABLE_GAP : 2 * radiusOf(count) + CABLE_GAP;
  return Math.max(TERMINAL_PITCH, own, textWidthMm(terminalWords[name], LETTERING) + 2);
}

/** The outline of what is seen: a plate with rounded corners, a board's or joint's enclosure square. */
function plate({ kind }: ConnectionPlace, widthMm: number, bottom: number): readonly Shape[] {
  const cut = kind === 'board' || kind === 'joint' ? 0 : 2;
  const [left, right, top] = [0.5, widthMm - 0.5, 1];
  const corners = [
    [left + cut, top],
    [right - cut, top],
    [right, top + cut],
    [right, bottom - cut],
    [right - cut, bottom],
    [left + cut, bottom],
    [left, bottom - cut],
    [left, top + cut],
  ] as const;
  return [
    line(
      'symbol',
      corners.map(([x, y]) => sheetPoint(x, y)),
      true,
    ),
  ];
}

/** A terminal's screw, of a bar one for each conductor along it, with the name above. */
function terminal({ x, name, stems }: Terminal): readonly Shape[] {
  const screws = isBar(name) ? stems.flatMap((at) => screw(at, SCREW)) : screw(x, radiusOf(stems.length));
  const [first = x] = stems;
  const half = x - first + SCREW + 0.6;
  const bar = boxCorners({
    leftMm: x - half,
    rightMm: x + half,
    topMm: SCREW_Y - SCREW - 0.6,
    bottomMm: SCREW_Y + SCREW + 0.6,
  });
  return [
    ...(isBar(name) ? [line('symbol', bar, true)] : []),
    ...screws,
    words('text', sheetPoint(x, SCREW_Y - SCREW - 2), terminalWords[name], {
      sizeMm: LETTERING,
      anchor: 'middle',
      strong: true,
    }),
  ];
}

/** A screw with its slot. */
const screw = (x: number, radiusMm: number): readonly Shape[] => [
  { kind: 'circle', at: sheetPoint(x, SCREW_Y), radiusMm, ink: 'symbol' },
  line('opening', [sheetPoint(x - 1.2, SCREW_Y - 1.2), sheetPoint(x + 1.2, SCREW_Y + 1.2)]),
];

/** A conductor as it is drawn: where it comes in below, where it goes into its terminal. */
interface Wire {
  readonly column: number;
  readonly conductor: Conductor;
  readonly x: number;
  readonly into: number;
}

function wiresOf(columns: readonly Column[], terminals: readonly Terminal[]): readonly Wire[] {
  const used = new Map<string, number>();
  return columns.flatMap(({ cores, x: middle }, column) =>
    cores.map(({ conductor, key }, i) => {
      const x = middle + (i - (cores.length - 1) / 2) * CORE_PITCH;
      const nth = used.get(key) ?? 0;
      used.set(key, nth + 1);
      return { column, conductor, x, into: terminals.find((each) => each.key === key)?.stems[nth] ?? x };
    }),
  );
}

/** Each conductor goes up from its cable to a level of its own, along it, and up into its terminal: none lies on another. */
function conductors(
  columns: readonly Column[],
  terminals: readonly Terminal[],
  footY: number,
): readonly Shape[] {
  const wires = wiresOf(columns, terminals);
  const levels = levelsOf(wires);
  return columns.flatMap((column, at) => [
    ...wires.flatMap(({ column: own, conductor, x, into }, i) => {
      if (own !== at) return [];
      const y = SCREW_Y + SCREW + 2.4 + levels.indexOf(i) * LANE;
      return [
        line(coreInk(conductor), [
          sheetPoint(x, footY - 1.6),
          sheetPoint(x, y),
          sheetPoint(into, y),
          sheetPoint(into, SCREW_Y),
        ]),
        // A device's own leads have no colours but their maker's: their name below says which is which.
        ...(column.isOfDevice ? [] : letters(conductor, sheetPoint(x, footY - 4))),
      ];
    }),
    ...jacket(column, footY),
  ]);
}

/** Nearer than this a core below and a conductor above it are read as one where their heights overlap, mm. */
const NEAR = LATTICE;

/**
 * The conductors from the highest level to the lowest: each above those whose cores come in right below its terminal, so that both stand
 * clear of each other; else in their order. Where that goes round in a ring the lattice alone keeps them apart.
 */
function levelsOf(wires: readonly Wire[]): readonly number[] {
  const left = new Set(wires.keys());
  const isHeld = (i: number): boolean =>
    [...left].some((j) => j !== i && Math.abs((wires[i]?.x ?? 0) - (wires[j]?.into ?? 0)) < NEAR);
  return wires.flatMap(() => {
    const next = [...left].find((i) => !isHeld(i)) ?? [...left][0];
    if (next === undefined) return [];
    left.delete(next);
    return [next];
  });
}

/** The letters of a core's colour; of one that has to be looked at its function, with a question mark. */
function letters({ afterColour, core }: Conductor, [x, y]: SheetPoint): readonly Shape[] {
  const text = afterColour === null ? `${coreLetters[core]}?` : colourLetters[afterColour];
  const half = textWidthMm(text, LETTERING) / 2 + 0.3;
  const corners = boxCorners({ leftMm: x - half, rightMm: x + half, topMm: y - 1.4, bottomMm: y + 1.4 });
  return [
    line('halo', corners, true),
    words('text', sheetPoint(x, y + 0.9), text, { sizeMm: LETTERING, anchor: 'middle' }),
  ];
}

/** The sheath that the cores come out of, with the cable's name below. */
function jacket({ x, mark, isNew, cores }: Column, footY: number): readonly Shape[] {
  const half = (cores.length * CORE_PITCH) / 2 - 0.6;
  const corners = boxCorners({
    leftMm: x - half,
    rightMm: x + half,
    topMm: footY - 1.6,
    bottomMm: footY + 1.4,
  });
  return [
    line(isNew ? 'symbol-new' : 'symbol', corners, true),
    words(isNew ? 'text-new' : 'text', sheetPoint(x, footY + 5), mark, {
      sizeMm: LETTERING,
      anchor: 'middle',
      strong: isNew,
    }),
  ];
}
