import type { Ink } from './scene.ts';

/** The colours of paper, ink and copper, by name: one set for drawings, charts and screens. */
export const tokens = {
  paper: '#f4efe4',
  sheet: '#fcfaf5',
  rule: '#e6dece',
  line: '#cfc6b4',
  ink: '#1d2830',
  inkSoft: '#55616a',
  inkFaint: '#6f7a80',
  removed: '#8a9296',
  copper: '#b4622c',
  copperInk: '#8a4719',
  copperWash: '#f5e4d6',
  pass: '#2d6a4d',
  ask: '#7a5b00',
  askWash: '#f6edcf',
  fail: '#a12b2b',
  failWash: '#f7e2df',
  wall: '#39454d',
  wallLight: '#c9c4b8',
  coreRed: '#c0392b',
  coreBrown: '#8b5a2b',
  coreBlue: '#2f6fb5',
  coreGreen: '#3c8a4a',
} as const;

/** How an ink looks: stroke width in mm on paper (the √2 series), dashes in mm. */
export interface InkLook {
  readonly stroke?: string;
  readonly widthMm?: number;
  readonly fill?: string;
  readonly dashMm?: readonly number[];
}

/** Every ink's look. Found, new and removed differ by width and dash as well as by colour. */
export const inkLooks: Readonly<Record<Ink, InkLook>> = {
  paper: { fill: tokens.sheet },
  frame: { stroke: tokens.ink, widthMm: 0.7 },
  rule: { stroke: tokens.line, widthMm: 0.18 },
  wall: { fill: tokens.wall },
  'wall-light': { fill: tokens.wallLight, stroke: tokens.wall, widthMm: 0.25 },
  opening: { stroke: tokens.wall, widthMm: 0.18 },
  fixture: { stroke: tokens.inkFaint, widthMm: 0.18 },
  found: { stroke: tokens.inkSoft, widthMm: 0.35 },
  'found-assumed': {
    stroke: tokens.inkSoft,
    widthMm: 0.35,
    dashMm: [2.4, 0.8],
  },
  new: { stroke: tokens.copper, widthMm: 0.7 },
  'new-next': { stroke: tokens.copper, widthMm: 0.5, dashMm: [1.6, 1] },
  removed: { stroke: tokens.removed, widthMm: 0.35, dashMm: [1, 1] },
  symbol: { stroke: tokens.ink, widthMm: 0.35, fill: tokens.sheet },
  'symbol-solid': { stroke: tokens.ink, widthMm: 0.35, fill: tokens.ink },
  'symbol-new': {
    stroke: tokens.copper,
    widthMm: 0.5,
    fill: tokens.copperWash,
  },
  'symbol-new-solid': {
    stroke: tokens.copper,
    widthMm: 0.35,
    fill: tokens.copper,
  },
  'symbol-removed': {
    stroke: tokens.removed,
    widthMm: 0.35,
    fill: tokens.sheet,
    dashMm: [0.8, 0.6],
  },
  halo: { fill: tokens.sheet },
  'halo-line': { stroke: tokens.sheet, widthMm: 1 },
  // Wide enough to part a new cable from a dark wall that it lies on, in grey too.
  'halo-new': { stroke: tokens.sheet, widthMm: 1.4 },
  text: { fill: tokens.ink },
  'text-soft': { fill: tokens.inkSoft },
  'text-new': { fill: tokens.copperInk },
  'text-paper': { fill: tokens.sheet },
  fails: { fill: tokens.fail },
  decide: { fill: tokens.ask },
  'not-proven': { fill: tokens.ask },
  advice: { fill: tokens.inkSoft },
  'mark-fails': { stroke: tokens.fail, widthMm: 0.35, fill: tokens.failWash },
  'mark-decide': { stroke: tokens.ask, widthMm: 0.35, fill: tokens.askWash },
  'mark-not-proven': {
    stroke: tokens.ask,
    widthMm: 0.35,
    fill: tokens.sheet,
    dashMm: [0.7, 0.5],
  },
  'mark-advice': { stroke: tokens.inkSoft, widthMm: 0.25, fill: tokens.sheet },
  'scale-bar': { stroke: tokens.ink, widthMm: 0.35 },
  leader: { stroke: tokens.inkSoft, widthMm: 0.18 },
  rise: { stroke: tokens.ink, widthMm: 0.25, fill: tokens.copper },
  dimension: { stroke: tokens.inkSoft, widthMm: 0.18 },
  joist: { stroke: tokens.line, widthMm: 0.18, dashMm: [5, 1.5] },
  hole: { stroke: tokens.ink, widthMm: 0.25, fill: tokens.sheet },
  notch: { stroke: tokens.ink, widthMm: 0.25, fill: tokens.ink },
  'hole-unknown': { stroke: tokens.ink, widthMm: 0.25, fill: tokens.sheet, dashMm: [0.5, 0.4] },
  'hole-barred': { stroke: tokens.fail, widthMm: 0.35 },
  'board-up': { stroke: tokens.ink, widthMm: 0.25, fill: tokens.sheet, dashMm: [0.9, 0.5] },
  'ring-new': { stroke: tokens.copper, widthMm: 0.35 },
  'cross-removed': { stroke: tokens.ink, widthMm: 0.35 },
  // Conductors have their own colours where conductors are meant, and a stroke by function that needs none.
  'core-red': { stroke: tokens.coreRed, widthMm: 0.7 },
  'core-brown': { stroke: tokens.coreBrown, widthMm: 0.7 },
  'core-line': { stroke: tokens.inkSoft, widthMm: 0.7 },
  'core-black': { stroke: tokens.ink, widthMm: 0.5, dashMm: [3, 0.8] },
  'core-blue': { stroke: tokens.coreBlue, widthMm: 0.5, dashMm: [3, 0.8] },
  'core-neutral': { stroke: tokens.inkSoft, widthMm: 0.5, dashMm: [3, 0.8] },
  'core-earth': { stroke: tokens.coreGreen, widthMm: 0.5, dashMm: [0.9, 0.7] },
};

/** Type on drawings and screens; the fallbacks keep its narrow width where the face is not installed. */
export const drawingFont =
  "'Barlow Semi Condensed', 'Barlow', 'Arial Narrow', 'DejaVu Sans Condensed', sans-serif";
