import { pounds } from './cell-value.ts';
import type { SummaryRow } from './summary-row.ts';

/** A percentage that may be changed. */
export function percentRow(label: string, name: string, percent: number, remark: string): SummaryRow {
  return { label, value: percent / 100, name, remark, role: 'input', format: 'percent' };
}

/** A sum of money that follows from a formula; pence as the engine has them. */
export function moneyRow(label: string, name: string, formula: string, pence: number): SummaryRow {
  return { label, name, value: { formula, result: pounds(pence) }, role: 'number', format: 'money' };
}
