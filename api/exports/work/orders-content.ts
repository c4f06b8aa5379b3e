import type { Content } from 'pdfmake/interfaces.js';
import { cableSaid, orderScene } from '#drawing/work/order-scene.ts';
import { evidenceWords, shapeWords } from '#drawing/work/order-words.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { type CircuitOrder, circuitOrder } from '#engine/work/circuit-order.ts';
import { referencesOf } from '#engine/work/references.ts';
import { heading, paragraph, subheading, TEXT_WIDTH_MM, together } from '../quotation/pdf-parts.ts';
import { picture } from './picture.ts';

/** The circuits that a scheme touches, place after place, as found and as they will be: lengths, sizes and colours. */
export function ordersContent({ worked }: SchemeEstimate): readonly Content[] {
  const references = referencesOf(worked);
  return worked.circuitIds.flatMap((id) => {
    const found = circuitOrder(worked, 'found', id, references);
    const proposed = circuitOrder(worked, 'proposed', id, references);
    return [
      heading(`${(proposed ?? found)?.name ?? id}, in order`),
      ...(found === null
        ? [paragraph('A new circuit: there is nothing of it yet.')]
        : orderContent('As found', found)),
      ...(proposed === null ? [] : orderContent('As it will be', proposed)),
    ];
  });
}

/** A picture of so many rows goes on a page. */
const ROWS_A_PAGE = 22;

function orderContent(title: string, told: CircuitOrder): readonly Content[] {
  const { evidence, rows, others, unwired } = told;
  const head = [subheading(title), paragraph(`${shapeWords(told)}, ${evidenceWords[evidence]}.`)];
  const parts = rows.flatMap((_, i) => (i % ROWS_A_PAGE === 0 ? [rows.slice(i, i + ROWS_A_PAGE)] : []));
  const pictures =
    rows.length < 2 ? [] : parts.map((some) => picture(orderScene({ ...told, rows: some }), TEXT_WIDTH_MM));
  const [first, ...rest] = pictures;
  return [
    together(first === undefined ? head : [...head, first]),
    ...rest,
    ...(others.length === 0 ? [] : [paragraph(`Beside this order: ${others.map(cableSaid).join('; ')}.`)]),
    ...(unwired.length === 0 ? [] : [paragraph(`No cable is recorded to ${unwired.join(', ')}.`)]),
  ];
}
