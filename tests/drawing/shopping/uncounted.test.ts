import { describe, expect, it } from 'vitest';
import { shoppingRows } from '#drawing/shopping/shopping-rows.ts';
import { entriesOf } from '#drawing/shopping/shopping-sheet.ts';
import { merchantText, shoppingText } from '#drawing/shopping/shopping-text.ts';
import type { Extra } from '#model/extra.ts';
import { saltglassShopped } from './sheet-of.ts';

const extras: readonly Extra[] = [
  { id: 'joist', words: 'Double a rotten joist', typicalMin: 90, materialsPence: 2450 },
  { id: 'wait', words: 'Wait for the gas engineer', typicalMin: 60 },
];
const plain = saltglassShopped().sheet;
const { sheet } = saltglassShopped({ job: (job) => ({ ...job, extras: [...extras] }) });

describe('materials of extra work', () => {
  it('are named after what is counted, with what the price takes them to cost', () => {
    expect(plain.uncounted).toEqual([]);
    expect(sheet.uncounted).toEqual(['Double a rotten joist: £24.50 of materials']);
    const text = shoppingText(sheet);
    expect(text).toContain(
      'ALSO BRING ALONG, NOT COUNTED HERE\n[ ] Double a rotten joist: £24.50 of materials\n',
    );
    expect(shoppingText(plain)).not.toContain('NOT COUNTED');
  });

  it('stand in no sum, on no counter and in no message to a merchant', () => {
    expect([sheet.list.pence, entriesOf(sheet.list).length]).toEqual([
      plain.list.pence,
      entriesOf(plain.list).length,
    ]);
    expect(merchantText(sheet, new Set())).toBe(merchantText(plain, new Set()));
    const heads = shoppingRows(sheet)[0] ?? [];
    const own = shoppingRows(sheet).filter(([where]) => where === 'not counted');
    expect(own.map((row) => row[heads.indexOf('description')])).toEqual(sheet.uncounted);
    expect(own.map((row) => row[heads.indexOf('cost, pounds')])).toEqual(['']);
  });
});
