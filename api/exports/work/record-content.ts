import type { Content, TableCell } from 'pdfmake/interfaces.js';
import {
  cableCells,
  commentWords,
  controlSaid,
  fieldExpected,
  fieldLimit,
  fromSaid,
} from '#drawing/work/record-words.ts';
import type { FoundComment } from '#engine/work/record/found-comments.ts';
import type { RecordField } from '#engine/work/record/record-field.ts';
import type { CircuitRecord, WorkRecord } from '#engine/work/record/record-shape.ts';
import {
  form,
  heading,
  listUnder,
  passage,
  ruledTable,
  subheading,
  TEXT_WIDTH_MM,
  together,
} from '../quotation/pdf-parts.ts';

/** A blank of a row's height to write in, and one for what takes more words. */
const ROOM: Content = { text: ' ', margin: [0, 3, 0, 3] };
const LARGE_ROOM: Content = { text: ' ', margin: [0, 12, 0, 12] };
const wordy: ReadonlySet<string> = new Set(['departures', 'limitations']);

const ITEM_MM = 58;
const FROM_MM = 42;
const FIELD_MM = TEXT_WIDTH_MM - ITEM_MM - FROM_MM;

/** What a field holds with what is to be borne in mind below it; room to write where it is empty, with nothing printed in it. */
function valueCell({ id, value, note, keepsLimit }: RecordField): Content {
  if (value === null) return wordy.has(id) ? LARGE_ROOM : ROOM;
  const under = [
    ...(keepsLimit === false ? ['Beyond the limit, or wrong.'] : []),
    ...(note === null ? [] : [note]),
  ];
  return {
    stack: [
      { text: value, bold: true, style: 'figures' },
      ...under.map((text): Content => ({ text, style: 'label', bold: keepsLimit === false })),
    ],
  };
}

/** What is to be borne in mind of an empty field: outside the room to write in. */
const besideRoom = ({ value, note }: RecordField): readonly Content[] =>
  value === null && note !== null ? [{ text: note, style: 'label' }] : [];

/** Fields in a table, with room for what is not known. */
export const fieldTable = (title: string, fields: readonly RecordField[]): Content =>
  ruledTable({
    title: { text: title, style: 'subheading' },
    heads: ['Item', 'For the form', 'Where it is from'],
    rows: fields.map((field) => [
      { stack: [field.label, ...besideRoom(field)] },
      valueCell(field),
      { text: fromSaid(field), style: 'label' },
    ]),
    widthsMm: [ITEM_MM, FIELD_MM, FROM_MM],
  });

const LIMIT_MM = 28;
const EXPECTED_MM = 46;

const expectedOf = (field: RecordField): readonly Content[] =>
  field.expected === null ? [] : [{ text: fieldExpected(field), style: 'label' }];

/** Readings apart from what is only expected. */
const testTable = (fields: readonly RecordField[]): Content =>
  ruledTable({
    title: {
      text: 'Test results',
      style: 'subheading',
      under:
        'Only what was read after the work stands under Measured. What is expected is reckoned: it is never a result.',
    },
    heads: ['Test', 'Measured after the work', 'Limit', 'Expected, no result'],
    rows: fields.map((field) => [
      field.label,
      valueCell(field),
      { text: fieldLimit(field), style: 'figures' },
      { stack: [...expectedOf(field), ...besideRoom(field)] },
    ]),
    widthsMm: [ITEM_MM, TEXT_WIDTH_MM - ITEM_MM - LIMIT_MM - EXPECTED_MM, LIMIT_MM, EXPECTED_MM],
  });

const cableTable = ({ cables }: CircuitRecord): readonly Content[] =>
  cables.length === 0
    ? []
    : [
        ruledTable({
          title: { text: 'Wiring', style: 'subheading' },
          heads: ['Cables', 'Type', 'Reference method', 'Live', 'cpc', 'Where it is from'],
          rows: cables.map((cable) =>
            cableCells(cable).map((text, i): TableCell => (text === '' ? ROOM : cellOf(text, i))),
          ),
          widthsMm: [46, 32, 30, 18, 18, 30],
        }),
      ];

const cellOf = (text: string, i: number): TableCell => (i === 5 ? { text, style: 'label' } : text);

/** A circuit: what is done to it, its particulars, its cables, its results. */
export const circuitContent = (circuit: CircuitRecord): readonly Content[] => [
  ...listUnder(
    [
      heading(`Circuit: ${circuit.name}`),
      subheading(circuit.isNew ? 'A new circuit' : 'Description of the work'),
    ],
    circuit.described.length === 0
      ? ['Nothing is joined to it; it is tested as altered, for its board or device is.']
      : circuit.described,
  ),
  fieldTable('Particulars', circuit.particulars),
  ...cableTable(circuit),
  testTable(circuit.tests),
  fieldTable('With what, and what could not be tested', circuit.means),
];

/** A comment's words, remedy and check. */
const commentRow = ({ words, remedy, rule, title }: FoundComment): readonly TableCell[] => [
  words,
  remedy ?? '',
  { text: `${title} (${rule})`, style: 'label' },
];

const COMMENTS = 'Comments on the existing installation (644.1.2)';
const COMMENTS_SAID =
  'Found, and not caused by this work. Whoever signs settles what of it goes on the form.';

/** What is commented on the existing installation, gravest first, with room for what is found on the day. */
export function commentContent({ comments }: WorkRecord): readonly Content[] {
  const outcomes = [...new Set(comments.map(({ outcome }) => outcome))];
  const tables = outcomes.map((outcome, i) =>
    ruledTable({
      // Never parted from its first rows, as a heading by itself would be.
      title:
        i === 0
          ? { text: COMMENTS, style: 'heading', under: `${COMMENTS_SAID} ${commentWords[outcome]}:` }
          : { text: commentWords[outcome], style: 'subheading' },
      heads: ['What was found', 'What would put it right', 'Check'],
      rows: comments.filter((comment) => comment.outcome === outcome).map(commentRow),
      widthsMm: [78, 62, 34],
    }),
  );
  const seen = form({
    heading: comments.length === 0 ? COMMENTS : 'Seen on the day',
    intro:
      comments.length === 0 ? ['The checks found nothing to comment on; the day may show something.'] : [],
    lines: ['1', '2', '3'].map((label) => ({ label, value: '' })),
  });
  return [...tables, seen];
}

/** Building control, and the lines that are signed on the form: one after the other, so that no page has these lines alone. */
export const lastContent = (record: WorkRecord): readonly Content[] => [
  together([
    ...passage({ heading: 'Building control', paragraphs: controlSaid(record) }),
    form({ heading: 'Declaration', ...record.declaration }),
  ]),
];
