import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { line, type Shape, words } from '../scene.ts';
import { LETTERS_MM } from './sheet/lettering.ts';
import type { SheetLayout } from './sheet-layout.ts';
import { wrapped } from './text-rows.ts';

/** What the title block at the foot of a sheet says: the data fields of ISO 7200. */
export interface TitleBlockContent {
  /** Legal owner: the firm. */
  readonly firm: string;
  readonly title: string;
  readonly reference: string;
  /** Document type, and of what: "Wiring plan, Ground floor". */
  readonly documentType: string;
  readonly schemeName: string;
  readonly date: string;
  /** The name of the job’s state, by which one issue is told from another. */
  readonly state: string;
  /** How far it has got: "For the work", "Draft: a check fails". */
  readonly status: string;
  readonly demoNote: string | null;
  readonly edition: string;
  /** Which sheet of how many. */
  readonly sheet: { readonly number: number; readonly of: number };
}

/** Height of the title block, mm on paper. */
export const TITLE_BLOCK_MM = 77;

const NOTE_ROWS = 3;

interface Field {
  readonly name: string;
  readonly value: string;
  /** Of the block's width, from its left. */
  readonly from: number;
  readonly to: number;
  readonly rows: number;
  readonly isTitle?: boolean;
}

/** A row of fields, and how tall it is. */
interface FieldRow {
  readonly heightMm: number;
  readonly fields: readonly Omit<Field, 'rows'>[];
  readonly rows: number;
}

/** As many rows of a value as there is room for; the last ends in dots when more is left. */
function shownRows({ value, from, to, rows, isTitle = false }: Field, fullMm: number): readonly string[] {
  const sizeMm = isTitle ? LETTERS_MM.names : LETTERS_MM.notes;
  const all = wrapped(value, (to - from) * fullMm - 4, sizeMm);
  if (all.length <= rows) return all;
  const last = (all[rows - 1] ?? '').slice(0, -2);
  return [...all.slice(0, rows - 1), `${last} …`];
}

function fieldShapes(
  field: Field,
  topMm: number,
  { leftMm, rightMm }: SheetLayout['panel'],
): readonly Shape[] {
  const full = rightMm - leftMm;
  const x = leftMm + field.from * full + 2;
  const sizeMm = field.isTitle === true ? LETTERS_MM.names : LETTERS_MM.notes;
  return [
    words('text-soft', sheetPoint(x, topMm + 2.9), field.name, { sizeMm: LETTERS_MM.notes }),
    ...shownRows(field, full).map((row, i) =>
      words('text', sheetPoint(x, topMm + 3.1 + (sizeMm + 0.8) * (i + 1)), row, {
        sizeMm,
        strong: field.isTitle === true,
      }),
    ),
  ];
}

function rowsOf(layout: SheetLayout, content: TitleBlockContent, isPlan: boolean): readonly FieldRow[] {
  const { sheetName, frame } = layout;
  const scale = isPlan ? `1:${frame.scale} on ${sheetName}` : `none, ${sheetName}`;
  const half = { left: { from: 0, to: 0.58 }, right: { from: 0.58, to: 1 } };
  const third = [
    { from: 0, to: 0.32 },
    { from: 0.32, to: 0.64 },
    { from: 0.64, to: 1 },
  ] as const;
  return [
    { heightMm: 7.6, rows: 1, fields: [{ name: 'Owner', value: content.firm, from: 0, to: 1 }] },
    {
      heightMm: 13,
      rows: 2,
      fields: [{ name: 'Title', value: content.title, from: 0, to: 1, isTitle: true }],
    },
    {
      heightMm: 10.8,
      rows: 2,
      fields: [{ name: 'Way of connecting', value: content.schemeName, from: 0, to: 1 }],
    },
    {
      heightMm: 10.8,
      rows: 2,
      fields: [
        { name: 'Document type', value: content.documentType, ...half.left },
        { name: 'Drawing number', value: content.reference, ...half.right },
      ],
    },
    {
      heightMm: 9,
      rows: 1,
      // To be signed by hand: nobody has drawn or approved it but those who will answer for it.
      fields: [
        { name: 'Created by', value: '', ...half.left },
        { name: 'Approved by', value: '', ...half.right },
      ],
    },
    {
      heightMm: 7.6,
      rows: 1,
      fields: [
        { name: 'Issued', value: content.date, ...third[0] },
        { name: 'State', value: content.state, ...third[1] },
        { name: 'Sheet', value: `${content.sheet.number} of ${content.sheet.of}`, ...third[2] },
      ],
    },
    {
      heightMm: 7.6,
      rows: 1,
      fields: [
        { name: 'Status', value: content.status, ...half.left },
        { name: 'Scale', value: scale, ...half.right },
      ],
    },
  ];
}

/**
 * The title block in the bottom right corner of the frame, with the data fields of ISO 7200 (from memory).
 *
 * @param isPlan whether the sheet is drawn to scale.
 */
export function titleBlock(
  layout: SheetLayout,
  content: TitleBlockContent,
  isPlan: boolean,
): readonly Shape[] {
  const { leftMm, rightMm, bottomMm } = layout.panel;
  let top = bottomMm - TITLE_BLOCK_MM;
  const shapes: Shape[] = [line('frame', [sheetPoint(leftMm, top), sheetPoint(rightMm, top)])];
  for (const { heightMm, rows, fields } of rowsOf(layout, content, isPlan)) {
    for (const field of fields) shapes.push(...fieldShapes({ ...field, rows }, top, layout.panel));
    top += heightMm;
    shapes.push(line('rule', [sheetPoint(leftMm, top), sheetPoint(rightMm, top)]));
  }
  const note = [
    `In mm; h: middle above floor. ${content.edition}.`,
    ...(content.demoNote === null ? [] : [content.demoNote]),
  ];
  const rows = note.flatMap((text) => wrapped(text, (rightMm - leftMm - 4) * 1.1, LETTERS_MM.notes));
  for (const [i, row] of rows.slice(0, NOTE_ROWS).entries())
    shapes.push(
      words('text-soft', sheetPoint(leftMm + 2, top + 3 + 3.2 * i), row, { sizeMm: LETTERS_MM.notes }),
    );
  return shapes;
}
