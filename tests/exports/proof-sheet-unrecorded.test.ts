import type { Worksheet } from 'exceljs';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { wiredJob } from '#tests/engine/proof/wired-job.ts';
import { jobOf, pointOf } from '#tests/engine/rules/facts-builder.ts';
import { countedBook } from './counted-book.ts';
import { openBook } from './spreadsheet.ts';

/** A ring by the survey’s word alone, its points in no place, and a spur from one of them. */
function toldRing() {
  const { supply, boards, circuits, points } = wiredJob([{ from: 'p1', to: 'p2', lengthM: 5 }]);
  const wanted = pointOf('w1', { status: 'wanted' });
  const spur = { id: 'k1', kind: 'spur', from: { point: 'p1' }, to: 'w1' } as const;
  return jobOf({
    supply,
    boards,
    circuits,
    points: [...points, wanted],
    schemes: [{ id: 's', name: 'Spur', connections: [spur], remedies: [], locks: [] }],
  });
}

describe('the proof of a circuit whose cable nobody recorded', () => {
  let rows: readonly (readonly string[])[];

  beforeAll(async () => {
    const bytes = await countedBook(estimateOf(toldRing()), 's', demoLibrary());
    const sheet: Worksheet | undefined = (await openBook(bytes)).getWorksheet('Proof');
    if (sheet === undefined) throw new Error('no sheet');
    rows = Array.from({ length: sheet.rowCount }, (_, i) =>
      Array.from({ length: 9 }, (_, column) => sheet.getCell(i + 1, column + 1).text),
    );
  });

  it('says what the survey was told, and that it was told', () => {
    expect(rows.some(([first]) => first?.endsWith(': ring (as told), no cable recorded'))).toBe(true);
  });

  it('does not claim that the new cable carries nothing, and says its size', () => {
    const cables = rows.filter(([, , cable]) => cable?.startsWith('new'));
    expect(cables.map(([, , cable, , , current]) => [cable, current])).toEqual([
      ['new, 2.5/1.5 mm²', 'not known'],
    ]);
  });

  it('has no table of other loads where nothing can be worked out under any', () => {
    expect(rows.some(([first]) => first === 'The same circuit under other loads')).toBe(false);
  });
});
