import type { Worksheet } from 'exceljs';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { temperatureWords, testLimitWords } from '#drawing/proof/test-words.ts';
import type { CircuitProof, ExpectedAt } from '#engine/proof/circuit-proof.ts';
import { comparedReadings } from '#engine/proof/compared-readings.ts';
import { type DemoName, demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { countedBook } from './counted-book.ts';
import { openBook } from './spreadsheet.ts';

async function proofSheet(
  name: DemoName,
  schemeId: string,
): Promise<{ sheet: Worksheet; proofs: readonly CircuitProof[] }> {
  const estimate = demoEstimate(name);
  const bytes = await countedBook(estimate, schemeId, demoLibrary());
  const sheet = (await openBook(bytes)).getWorksheet('Proof');
  if (sheet === undefined) throw new Error('no sheet');
  return { sheet, proofs: schemeOf(estimate, schemeId).proof };
}

/** The row under a heading in the first column, and how many rows of figures follow its header. */
function tableAt(sheet: Worksheet, heading: string): { first: number; count: number } {
  for (let row = 1; row <= sheet.rowCount; row++)
    if (sheet.getCell(row, 1).text === heading) {
      let count = 0;
      while (sheet.getCell(row + 2 + count, 1).text !== '') count++;
      return { first: row + 2, count };
    }
  throw new Error(`no table "${heading}"`);
}

/** How many cells of a row's bar are filled. */
const filled = (sheet: Worksheet, row: number): number =>
  Array.from({ length: 24 }, (_, i) => sheet.getCell(row, 10 + i)).filter(
    ({ fill }) => fill?.type === 'pattern' && fill.pattern !== 'none',
  ).length;

describe('the sheet of the proof', () => {
  let sheet: Worksheet;
  let proof: CircuitProof;

  beforeAll(async () => {
    const made = await proofSheet('saltglass-row', 'spurs-rcbo');
    const [first] = made.proofs;
    if (first === undefined) throw new Error('no proof');
    [sheet, proof] = [made.sheet, first];
  });

  it('sets what was measured before the work beside what is expected of the circuit as found', () => {
    const heading = 'Expected against measured, before the work; the band is ours: 0.05 Ω or 5 %';
    const { first, count } = tableAt(sheet, heading);
    const { asFound } = demoEstimate('saltglass-row');
    const [found] = asFound.proof;
    if (found === undefined) throw new Error('no proof');
    const compared = comparedReadings(found, asFound.worked.job.readings, 'before').filter(
      ({ measuredOhm }) => measuredOhm !== null,
    );
    expect(compared.length).toBeGreaterThan(20);
    expect(count).toBe(compared.length);
    compared.forEach(({ expectedOhm, measuredOhm, fits }, i) => {
      expect(sheet.getCell(first + i, 3).value).toBe(expectedOhm);
      expect(sheet.getCell(first + i, 6).value).toBe(measuredOhm);
      expect(sheet.getCell(first + i, 9).text).toBe(fits === false ? 'does not fit' : '');
    });
  });

  it('has a row for every cable with its current and share, in the order of the ring', () => {
    const { first, count } = tableAt(sheet, 'Cables');
    const cables = proof.legs.filter(({ leg }) => !leg.endsWith('/fuse'));
    expect(count).toBe(cables.length);
    expect(sheet.getCell(first, 1).text).toBe('Consumer unit');
    expect(sheet.getCell(first, 2).text).toBe('R1');
    expect(sheet.getCell(first + count - 1, 2).text).toBe('Consumer unit');
    const shares = Array.from({ length: count }, (_, i) => Number(sheet.getCell(first + i, 8).value));
    expect(Math.max(...shares)).toBeCloseTo(Math.max(...cables.map(({ share }) => share ?? 0)), 9);
    const worst = shares.indexOf(Math.max(...shares));
    expect(sheet.getCell(first + worst, 9).text).toBe('most loaded');
  });

  it('has a row for every point with the engine’s figures', () => {
    const { first, count } = tableAt(sheet, 'Points');
    expect(count).toBe(proof.points.length);
    const w3 = proof.points.find(({ point }) => point === 'w3-bedroom');
    const row =
      Array.from({ length: count }, (_, i) => first + i).find((one) => sheet.getCell(one, 1).text === 'W3') ??
      0;
    expect([3, 4, 5, 6, 7, 8].map((column) => sheet.getCell(row, column).value)).toEqual([
      w3?.dropV,
      w3?.r1r2ColdOhm,
      w3?.r1r2HotOhm,
      w3?.zsColdOhm,
      w3?.zsHotOhm,
      w3?.zsMaxOhm,
    ]);
  });

  it('has bars that grow with the volt drop, and a spreadsheet’s own bars up to the limit', () => {
    const { first, count } = tableAt(sheet, 'Points');
    const rows = Array.from({ length: count }, (_, i) => first + i);
    const byDrop = rows.toSorted(
      (a, b) => Number(sheet.getCell(a, 3).value) - Number(sheet.getCell(b, 3).value),
    );
    const lengths = byDrop.map((row) => filled(sheet, row));
    expect(lengths).toEqual(lengths.toSorted((a, b) => a - b));
    expect(lengths[0]).toBeLessThan(lengths.at(-1) ?? 0);
    const bars = (
      sheet as unknown as {
        conditionalFormattings: { ref: string; rules: { cfvo: { value: number }[] }[] }[];
      }
    ).conditionalFormattings;
    // Shares of Iz and volt drops; after them whatever was measured.
    const ends = bars.map(({ rules }) => rules[0]?.cfvo.map(({ value }) => Number(value)));
    expect(ends.slice(0, 2)).toEqual([
      [0, 1],
      [0, proof.dropLimitV],
    ]);
  });

  it('has what a tester should read, of the ring end to end first, then of every point, and says at what temperature', () => {
    const { first } = tableAt(sheet, 'What a tester should read');
    const { ring, points } = proof.expected;
    expect(points.length).toBeGreaterThan(9);
    expect([0, 1, 2].map((i) => sheet.getCell(first + i, 3).value)).toEqual([
      ring?.r1Ohm,
      ring?.rnOhm,
      ring?.r2Ohm,
    ]);
    points.forEach(({ point, r1r2Ohm, zsServiceOhm, zsOhm }, i) => {
      const step = (list: readonly ExpectedAt[] = []) => list.find((one) => one.point === point)?.ohm ?? null;
      expect([3, 4, 5, 6, 7].map((column) => sheet.getCell(first + 3 + i, column).value)).toEqual([
        step(ring?.step2),
        step(ring?.step3),
        r1r2Ohm,
        zsServiceOhm,
        zsOhm,
      ]);
    });
    const after = first + 3 + points.length;
    expect(sheet.getCell(after, 1).text).toBe(temperatureWords(proof));
    testLimitWords(proof).forEach((text, i) => {
      expect(sheet.getCell(after + 1 + i, 1).text).toBe(text);
    });
  });

  it('says the edition and every assumption', () => {
    const texts: string[] = [];
    sheet.eachRow((row) => {
      texts.push(row.getCell(1).text);
    });
    expect(texts).toContain(demoEstimate('saltglass-row').editionNote);
    for (const text of proof.assumptions) expect(texts).toContain(`Taken for granted: ${text}`);
  });
});

describe('the sheet of a proof that fails', () => {
  it('marks what is beyond its limit in words and beyond the line', async () => {
    const { sheet } = await proofSheet('fernlow-close', 'no-fuse-b3');
    const { first, count } = tableAt(sheet, 'Points');
    const over = Array.from({ length: count }, (_, i) => first + i).filter(
      (row) => sheet.getCell(row, 9).text === 'volt drop over',
    );
    expect(over.map((row) => sheet.getCell(row, 1).text)).toEqual(['B1', 'B2', 'B3']);
    for (const row of over) expect(filled(sheet, row)).toBeGreaterThan(20);
  });

  it('tells two circuits apart', async () => {
    const { sheet, proofs } = await proofSheet('saltglass-row-quoting', 'new-radial');
    expect(proofs.length).toBe(2);
    const texts = sheet.getColumn(1).values.map(String);
    expect(texts.filter((text) => text === 'Cables').length).toBe(2);
  });
});
