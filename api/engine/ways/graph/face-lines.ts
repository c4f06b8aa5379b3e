import type { Plan } from '../../plan/plan.ts';
import type { Position } from '../../plan/plane.ts';
import { facePosition } from '../../plan/position-of-place.ts';
import { remembered } from '../../plan/remembered.ts';
import { type VoidSpace, voidAbove, voidBelow } from '../../plan/voids.ts';
import { chaseCost } from '../chase-cost.ts';
import { ZONE_MM } from '../concealed-cable.ts';
import { layInWall, onInVoid } from '../lay-in-wall.ts';
import type { Mount } from '../route.ts';
import { type Lay, openLay } from '../segment.ts';
import { studsUpTo } from '../studs.ts';
import { noWork, times, type WayTariff, type WorkCost } from '../way-tariff.ts';
import {
  blocksLevel,
  blocksPlumb,
  type FaceRange,
  type FlatFace,
  rangeAt,
  type Span,
  spotOn,
  without,
} from './flat-face.ts';
import { type LinePart, SAME_MM, type Sheet, type WayLine } from './line.ts';
import { obstaclesOnFace } from './obstacles.ts';

/** What lines on faces are made from. */
export interface FaceMaterial {
  readonly plan: Plan;
  readonly tariff: WayTariff;
}

/** How a line lies on its wall, and how its parts are weighed beside their price. */
export interface Laid extends Pick<LinePart, 'poor' | 'onSurface'> {
  readonly mount: Mount;
}

/** In the wall, wherever the wall lets it. */
export const inTheWall: Laid = { mount: null };

/** A face as a sheet: along it, and height above its storey's floor. */
function faceSheet(plan: Plan, face: FlatFace, { mount }: Laid): Sheet {
  // Cable in a wall and cable on it never change into one another half-way.
  return {
    key: `${mount === 'surface' ? 'surface' : 'face'} ${face.key}`,
    positionAt: (a, b) => positionOnFace(plan, face, a, b),
  };
}

function positionOnFace(plan: Plan, face: FlatFace, alongMm: number, heightMm: number): Position {
  const on = facePosition(plan, spotOn(face, alongMm), heightMm);
  if (on === null) throw new Error(`No wall for ${face.key}.`);
  if (heightMm >= 0 && heightMm <= face.heightMm) return on;
  const { onWall: _, ...free } = on;
  if (heightMm < 0) return free;
  const space = voidAbove(plan, { ...on, heightMm: face.heightMm });
  const storeyId = space?.storeyId ?? face.storeyId;
  const floorMm = plan.storeyById.get(storeyId)?.storey.floorLevelMm ?? 0;
  return { ...free, storeyId, heightMm: on.levelMm - floorMm };
}

/** Level lines across a face at a height, between what is in the way. */
export function levelLines(
  material: FaceMaterial,
  face: FlatFace,
  heightMm: number,
  laid: Laid = inTheWall,
): readonly WayLine[] {
  const blocks = [
    ...blocksLevel(face, heightMm),
    ...obstaclesOnFace(material.plan, face)
      .filter(({ heights }) => heightMm > heights[0] && heightMm < heights[1])
      .map(({ span }) => span),
  ];
  const sheet = faceSheet(material.plan, face, laid);
  return without([face.lowMm, face.highMm], blocks).map((span) => ({
    sheet,
    axis: 0,
    fixedMm: heightMm,
    parts: face.ranges.flatMap((range) => levelPart(material, { face, range, heightMm }, span, laid)),
  }));
}

function levelPart(
  { tariff }: FaceMaterial,
  {
    face,
    range,
    heightMm,
  }: { readonly face: FlatFace; readonly range: FaceRange; readonly heightMm: number },
  span: Span,
  { mount, ...weighed }: Laid,
): readonly LinePart[] {
  const [fromMm, toMm] = [Math.max(span[0], range.fromMm), Math.min(span[1], range.toMm)];
  if (toMm - fromMm < 1e-6) return [];
  const lay = layInWall(range.wall, mount, tariff.chased);
  const part: LinePart = {
    fromMm,
    toMm,
    lay,
    details: detailsOf(range),
    perM: workIn(tariff, lay, range),
    unliked: isPartyChase(lay, range) || isWhereNailsGo(lay, face, heightMm),
    warm: isWarmStud(lay, range),
  };
  if (lay.medium !== 'stud-cavity') return [{ ...part, ...weighed }];
  const crossedBefore = (tMm: number) => range.sense * studsUpTo((tMm - range.startMm) * range.sense);
  return [{ ...part, crossedBefore, perCrossing: tariff.stud, ...weighed }];
}

/** A stud wall full of insulation is too warm for the 20 A of a ring and its spurs. Source: BS 7671 Table 4D5, method 103. */
const isWarmStud = ({ medium }: Lay, { wall }: FaceRange): boolean =>
  medium === 'stud-cavity' && wall.wall.insulated === true;

const isPartyChase = ({ medium }: Lay, { wall }: FaceRange): boolean =>
  medium === 'wall-chase' && wall.wall.party === true;

/** Level cable in a wall above this, and below the zone along its top, is where pictures hang, mm. Common practice, no source. */
const NAILS_FROM_MM = 1200;

const isWhereNailsGo = ({ medium }: Lay, { heightMm: topMm }: FlatFace, heightMm: number): boolean =>
  medium !== 'surface-channel' && heightMm > NAILS_FROM_MM && heightMm < topMm - ZONE_MM;

const detailsOf = ({ wall, side }: FaceRange) => ({
  wallId: wall.wall.id,
  side,
  storeyId: wall.storeyId,
});

/** What a metre of cable takes in or on a wall. */
function workIn(tariff: WayTariff, lay: Lay, { wall, side }: FaceRange): WorkCost {
  if (lay.medium === 'surface-channel') return tariff.channel;
  if (lay.medium === 'surface-clipped') return tariff.clip;
  return lay.medium === 'wall-chase' ? chaseCost(tariff, wall, side) : tariff.thread;
}

/** The voids that plumb lines of a face lead into at a place along it. */
export function voidsAt(
  plan: Plan,
  face: FlatFace,
  alongMm: number,
): { readonly below: VoidSpace | null; readonly above: VoidSpace | null } {
  const spot = facePosition(plan, spotOn(face, alongMm), 0);
  if (spot === null) return { below: null, above: null };
  return {
    below: voidBelow(plan, spot),
    above: voidAbove(plan, { ...spot, heightMm: face.heightMm }),
  };
}

/** A plumb line, and the voids that its ends are in. */
export interface PlumbLine {
  readonly line: WayLine;
  readonly below: VoidSpace | null;
  readonly above: VoidSpace | null;
}

/** Plumb lines at a place along a face, from void to void, between what is in the way. */
export function plumbLines(
  material: FaceMaterial,
  face: FlatFace,
  alongMm: number,
  laid: Laid = inTheWall,
): readonly PlumbLine[] {
  const { plan, tariff } = material;
  const blocks = [
    ...blocksPlumb(face, alongMm),
    ...obstaclesOnFace(plan, face)
      .filter(({ span }) => alongMm > span[0] && alongMm < span[1])
      .map(({ heights }) => heights),
  ];
  const range = rangeAt(face, alongMm);
  const { mount, ...weighed } = laid;
  const inZone = layInWall(range.wall, mount, tariff.chased);
  // What is in no zone is only assumed to be possible.
  const lay: Lay = weighed.poor === true ? { ...inZone, certainty: 'assumed' } : inZone;
  const floorMm = plan.storeyById.get(face.storeyId)?.storey.floorLevelMm ?? 0;
  const { below, above } = voidsAt(plan, face, alongMm);
  const sheet = faceSheet(plan, face, laid);
  return without([0, face.heightMm], blocks).map(([fromMm, toMm]): PlumbLine => {
    const inWall: LinePart = {
      fromMm,
      toMm,
      lay,
      details: detailsOf(range),
      perM: workIn(tariff, lay, range),
      unliked: isPartyChase(lay, range),
      warm: isWarmStud(lay, range),
      ...weighed,
    };
    const down = fromMm === 0 ? below : null;
    const up = toMm === face.heightMm ? above : null;
    const parts = [
      ...(down === null ? [] : [voidPart(material, lay, down, [down.levelMm - floorMm, 0])]),
      inWall,
      ...(up === null ? [] : [voidPart(material, lay, up, [face.heightMm, up.levelMm - floorMm])]),
    ];
    const line: WayLine = { sheet, axis: 1, fixedMm: alongMm, parts };
    return { line: { ...line, ...atTurnsOf(lay, tariff) }, below: down, above: up };
  });
}

const atTurnsOf = (lay: Lay, tariff: WayTariff): Pick<WayLine, 'atEnd' | 'atTurn'> => ({
  ...(isFished(lay) ? { atEnd: halfDrop(tariff) } : {}),
  ...(lay.medium === 'surface-channel' ? { atTurn: tariff.channelTurn.flat } : {}),
});

/** A drop in a stud wall is fished, once from its one end to its other. */
const isFished = ({ medium }: Lay): boolean => medium === 'stud-cavity';

/** What one of the two ends of a drop takes of it. */
const halfDrop = remembered(({ fish }: WayTariff): WorkCost => times(fish, 0.5));

/** A slip along a drop from a box, in which the drop begins, mm. */
const SLIP_MM = 1;

/** A plumb line with a box on it: a drop from the box begins there, up or down. */
export function fromBox(line: WayLine, boxMm: number): WayLine {
  const { atEnd } = line;
  if (atEnd === undefined) return { ...line, boxMm };
  const { parts } = line;
  return { ...line, boxMm, parts: parts.flatMap((part) => beginningAt(part, boxMm, atEnd)) };
}

/** A part of a drop, with what beginning one takes in a slip to either side of the box, as far as they are in it. */
function beginningAt(part: LinePart, boxMm: number, once: WorkCost): readonly LinePart[] {
  if (boxMm < part.fromMm || boxMm > part.toMm) return [part];
  const pieces = [
    { fromMm: part.fromMm, toMm: boxMm - SLIP_MM },
    { fromMm: boxMm - SLIP_MM, toMm: boxMm, once },
    { fromMm: boxMm, toMm: boxMm + SLIP_MM, once },
    { fromMm: boxMm + SLIP_MM, toMm: part.toMm },
  ];
  return pieces
    .map((piece) => ({
      ...part,
      ...piece,
      fromMm: Math.max(part.fromMm, piece.fromMm),
      toMm: Math.min(part.toMm, piece.toMm),
    }))
    .filter(({ fromMm, toMm }) => toMm - fromMm > SAME_MM);
}

/** From the wall's foot or top on into a void. */
function voidPart({ tariff }: FaceMaterial, lay: Lay, space: VoidSpace, [fromMm, toMm]: Span): LinePart {
  const open = openLay(space.kind === 'loft' ? 'loft' : 'void-open', 'derived');
  const containment = onInVoid(lay);
  return {
    fromMm,
    toMm,
    lay: { ...open, containment },
    details: { storeyId: space.storeyId },
    perM: tariff.thread,
    once: isFished(lay) ? halfDrop(tariff) : noWork,
  };
}
