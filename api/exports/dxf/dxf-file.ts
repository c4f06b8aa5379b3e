import {
  DxfWriter,
  LayerFlags,
  LWPolylineFlags,
  PolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  Units,
} from '@tarikjabiri/dxf';
import type { Draft, DraftLayer, DraftPoint, DraftThing } from '#drawing/draft/draft.ts';
import { MAKER } from '#engine/engine-version.ts';
import { asciiWords } from './ascii-words.ts';

/** How a layer is drawn where the reader's own style says nothing else; `colour` by the numbers of the format, 7 is black on white. */
interface LayerLook {
  readonly colour: number;
  readonly lines: 'CONTINUOUS' | 'DASHED' | 'DOT';
  /** True for what is out of sight until somebody asks for it. */
  readonly isFrozen?: boolean;
}

const plainLook: LayerLook = { colour: 7, lines: 'CONTINUOUS' };
const soft: LayerLook = { colour: 8, lines: 'CONTINUOUS' };
const fresh: LayerLook = { colour: 30, lines: 'CONTINUOUS' };
const out: LayerLook = { colour: 8, lines: 'DOT' };

const looks: Readonly<Record<DraftLayer, LayerLook>> = {
  WALLS: plainLook,
  OPENINGS: soft,
  FIXTURES: soft,
  'ROOM-NAMES': soft,
  'CABLES-FOUND': plainLook,
  'CABLES-FOUND-ASSUMED': { colour: 7, lines: 'DASHED' },
  'CABLES-REMOVED': out,
  'CABLES-NEW': fresh,
  'CABLES-FOUND-3D': { ...plainLook, isFrozen: true },
  'CABLES-REMOVED-3D': { ...out, isFrozen: true },
  'CABLES-NEW-3D': { ...fresh, isFrozen: true },
  'CABLE-LABELS': fresh,
  'JOIST-HOLES': fresh,
  'POINTS-FOUND': plainLook,
  'POINTS-NEW': fresh,
  'POINTS-REMOVED': out,
  'POINT-LABELS': plainLook,
  NOTES: plainLook,
};

/** Strokes and gaps of a line, mm of the house: 2.4 and 0.8 mm, 0.2 and 1 mm at 1:50. By names that programs know, since some draw only those. */
const lineTypes = [
  { name: 'DASHED', words: 'found, way assumed __ __ __', dashesMm: [120, -40] },
  { name: 'DOT', words: 'taken out . . . .', dashesMm: [10, -50] },
] as const;

const alignments = {
  start: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  end: TextHorizontalAlignment.Right,
} as const;

/** Figures finer than this are noise of the arithmetic, mm. */
const FINE_MM = 1e-4;
const tidy = (mm: number): number => Math.round(mm / FINE_MM) * FINE_MM;
const place = ([x, y, z]: DraftPoint) => point3d(tidy(x), tidy(y), tidy(z));
const turned = (deg: number): number => ((deg % 360) + 360) % 360;

/** What lies on level 0 is drawn as a flat line, all else as one in space. */
function writeLine(dxf: DxfWriter, { points, closed, layer }: Extract<DraftThing, { kind: 'line' }>): void {
  const isFlat = points.every(([, , z]) => z === 0);
  if (isFlat) {
    dxf.addLWPolyline(
      points.map(([x, y]) => ({ point: point2d(tidy(x), tidy(y)) })),
      { layerName: layer, flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
    );
    return;
  }
  const line = dxf.addPolyline3D(
    points.map((at) => ({ point: place(at) })),
    { layerName: layer, flags: PolylineFlags.Polyline3D },
  );
  // Some programs draw it on the layer of its corners.
  for (const vertex of line.vertices) vertex.layerName = layer;
}

function writeText(dxf: DxfWriter, thing: Extract<DraftThing, { kind: 'text' }>): void {
  const { at, heightMm, text, anchor, angleDeg, layer } = thing;
  dxf.addText(place(at), heightMm, asciiWords(text), {
    layerName: layer,
    rotation: turned(angleDeg),
    horizontalAlignment: alignments[anchor],
    verticalAlignment: TextVerticalAlignment.BaseLine,
    // Other than at the left the second place is the one that counts.
    ...(anchor === 'start' ? {} : { secondAlignmentPoint: place(at) }),
  });
}

function write(dxf: DxfWriter, thing: DraftThing): void {
  switch (thing.kind) {
    case 'line':
      writeLine(dxf, thing);
      return;
    case 'circle':
      dxf.addCircle(place(thing.at), thing.radiusMm, { layerName: thing.layer });
      return;
    case 'arc':
      dxf.addArc(place(thing.at), thing.radiusMm, turned(thing.fromDeg), turned(thing.toDeg), {
        layerName: thing.layer,
      });
      return;
    case 'text':
      writeText(dxf, thing);
      return;
  }
}

/** Every figure a file may hold: a drafting program would take what is none for anything. */
function assertFinite(thing: DraftThing): void {
  const places = thing.kind === 'line' ? thing.points : [thing.at];
  if (!places.flat().every(Number.isFinite))
    throw new Error(`A ${thing.kind} on ${thing.layer} has no place that can be drawn.`);
}

/**
 * A draft as DXF (AC1021), in millimetres, each thing on the layer of what it is. Written in ASCII; equal drafts make equal files.
 */
export function dxfFile(draft: Draft): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  for (const { name, words, dashesMm } of lineTypes) dxf.addLType(name, words, [...dashesMm]);
  for (const [name, { colour, lines, isFrozen = false }] of Object.entries(looks))
    dxf.addLayer(name, colour, lines, isFrozen ? LayerFlags.Frozen : LayerFlags.None);
  for (const thing of draft) {
    assertFinite(thing);
    write(dxf, thing);
  }
  // A comment, by the group code that is one.
  return `999\n${MAKER}\n${dxf.stringify()}`;
}
