import type { Content } from 'pdfmake/interfaces.js';
import { cableSaid, orderScene } from '#drawing/work/order-scene.ts';
import { evidenceWords, shapeWords } from '#drawing/work/order-words.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { type CircuitOrder, circuitOrder } from '#engine/work/circuit-order.ts';
import { referencesOf } from '#engine/work/references.ts';
import { heading, mm, paragraph, subheading, TEXT_WIDTH_MM, together } from '../quotation/pdf-parts.ts';
import { picture } from './picture.ts';

/** The circuits that a scheme touches, place after place, as found and as they will be: lengths, sizes and colours. */
export function ordersContent({ worked }: SchemeEstimate): readonly Content[] {
  const references = referencesOf(worked);
  return worked.circuitIds.flatMap((id) => {
    const found = circuitOrder(worked, 'found', id, references);
    const proposed = circuitOrder(worked, 'proposed', id, references);
    return [heading(`${(proposed ?? found)?.name ?? id}, in order`), ...bothOrders(found, proposed)];
  });
}

/** The two beside each other where both go on a page so, else one after the other. */
function bothOrders(found: CircuitOrder | null, proposed: CircuitOrder | null): readonly Content[] {
  if (found === null)
    return [
      paragraph('A new circuit: there is nothing of it yet.'),
      ...(proposed === null ? [] : orderContent('As it will be', proposed, TEXT_WIDTH_MM)),
    ];
  if (proposed === null) return orderContent('As found', found, TEXT_WIDTH_MM);
  const both = [
    { title: 'As found', told: found },
    { title: 'As it will be', told: proposed },
  ];
  if (both.some(({ told }) => told.rows.length > ROWS_A_PAGE))
    return both.flatMap(({ title, told }) => orderContent(title, told, TEXT_WIDTH_MM));
  return [
    {
      unbreakable: true,
      columnGap: mm(GAP_MM),
      columns: both.map(({ title, told }) => ({
        width: mm(HALF_MM),
        stack: [...orderContent(title, told, HALF_MM)],
      })),
    },
  ];
}

const GAP_MM = 6;
const HALF_MM = (TEXT_WIDTH_MM - GAP_MM) / 2;

/** A picture of so many rows goes on a page. */
const ROWS_A_PAGE = 22;

function orderContent(title: string, told: CircuitOrder, widthMm: number): readonly Content[] {
  const { evidence, rows, others, unwired } = told;
  const head = [subheading(title), paragraph(`${shapeWords(told)}, ${evidenceWords[evidence]}.`)];
  const parts = rows.flatMap((_, i) => (i % ROWS_A_PAGE === 0 ? [rows.slice(i, i + ROWS_A_PAGE)] : []));
  const pictures =
    rows.length < 2 ? [] : parts.map((some) => picture(orderScene({ ...told, rows: some }), widthMm));
  const [first, ...rest] = pictures;
  return [
    together(first === undefined ? head : [...head, first]),
    ...rest,
    ...(others.length === 0 ? [] : [paragraph(`Beside this order: ${others.map(cableSaid).join('; ')}.`)]),
    ...(unwired.length === 0 ? [] : [paragraph(`No cable is recorded to ${unwired.join(', ')}.`)]),
  ];
}
