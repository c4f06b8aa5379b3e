import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { line, type Shape, words } from '../scene.ts';
import type { SheetLayout } from './sheet-layout.ts';
import { wrapped } from './text-rows.ts';

/** What the title block at the foot of a sheet says. */
export interface TitleBlockContent {
  readonly title: string;
  readonly reference: string;
  readonly storeyName: string;
  readonly schemeName: string;
  readonly date: string;
  readonly state: string;
  readonly demoNote: string | null;
  readonly edition: string;
}

/** Height of the title block, mm on paper. */
export const TITLE_BLOCK_MM = 50;

interface Field {
  readonly atMm: readonly [number, number];
  readonly widthMm: number;
  readonly name: string;
  readonly value: string;
  readonly sizeMm: number;
  readonly strong?: boolean;
}

/** A named field; its value takes up to two rows, the second of which ends in dots when more is left. */
function fieldShapes({ atMm, widthMm, name, value, sizeMm, strong = false }: Field): readonly Shape[] {
  const rows = wrapped(value, widthMm - 4, sizeMm);
  const shown = rows.length <= 2 ? rows : [rows[0] ?? '', `${rows[1] ?? ''} …`];
  const [x, y] = atMm;
  return [
    words('text-soft', sheetPoint(x + 2, y), name, { sizeMm: 1.8 }),
    ...shown.map((row, i) =>
      words('text', sheetPoint(x + 2, y + (sizeMm + 0.9) * (i + 1)), row, { sizeMm, strong }),
    ),
  ];
}

/** The title block in the bottom right corner of the frame. */
export function titleBlock(layout: SheetLayout, content: TitleBlockContent): readonly Shape[] {
  const { leftMm, rightMm, bottomMm } = layout.panel;
  const top = bottomMm - TITLE_BLOCK_MM;
  const full = rightMm - leftMm;
  const middle = leftMm + full * 0.6;
  const rule = (y: number): Shape =>
    line('rule', [sheetPoint(leftMm, top + y), sheetPoint(rightMm, top + y)]);
  const scale = `1:${layout.frame.scale} on ${layout.sheetName}`;
  const fields: readonly Field[] = [
    { atMm: [leftMm, top + 3], widthMm: full, name: 'Job', value: content.title, sizeMm: 3, strong: true },
    {
      atMm: [leftMm, top + 15],
      widthMm: full,
      name: 'Way of connecting',
      value: content.schemeName,
      sizeMm: 2.5,
    },
    {
      atMm: [leftMm, top + 27],
      widthMm: full * 0.6,
      name: 'Drawing',
      value: `Wiring plan, ${content.storeyName}`,
      sizeMm: 2.5,
    },
    {
      atMm: [middle, top + 27],
      widthMm: full * 0.4,
      name: 'Reference',
      value: content.reference,
      sizeMm: 2.5,
    },
    { atMm: [leftMm, top + 36], widthMm: full * 0.3, name: 'Date', value: content.date, sizeMm: 2.5 },
    {
      atMm: [leftMm + full * 0.35, top + 36],
      widthMm: full * 0.25,
      name: 'State',
      value: content.state,
      sizeMm: 2.5,
    },
    { atMm: [middle, top + 36], widthMm: full * 0.4, name: 'Scale', value: scale, sizeMm: 2.5 },
  ];
  return [
    line('frame', [sheetPoint(leftMm, top), sheetPoint(rightMm, top)]),
    ...fields.flatMap(fieldShapes),
    ...[12, 24, 33, 42].map(rule),
    words(
      'text-soft',
      sheetPoint(leftMm + 2, top + 45),
      `Dimensions mm, heights above floor. ${content.edition}`,
      { sizeMm: 1.8 },
    ),
    ...(content.demoNote === null
      ? []
      : [words('text', sheetPoint(leftMm + 2, top + 48.3), content.demoNote, { sizeMm: 1.8 })]),
  ];
}
