import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { Scene } from '#drawing/scene.ts';
import { papersOf } from '#exports/papers.ts';
import { planPdf, planScenes } from '#exports/plan-files.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { findProgram, pdfReader } from '../../scripts/product/find-program.ts';

/**
 * Sheets are measured as they come off the printer: Poppler, which is not ours, draws the PDF in grey at 254 dots an inch, ten a millimetre, and
 * dark dots are counted. The house's measures are those of the job file, as an electrician would lay a rule on the paper (ISO 5455: a scale is the
 * ratio of the length in the drawing to that of the thing).
 */
const DOTS_PER_MM = 10;

interface Picture {
  readonly widthDots: number;
  readonly isDark: (xMm: number, yMm: number) => boolean;
}

async function printed(bytes: Uint8Array): Promise<Picture> {
  const reader = findProgram(pdfReader);
  if (reader === null) throw new Error('Poppler is missing: npm run -s pretest says how to get it.');
  const folder = await mkdtemp(join(tmpdir(), 'sheet-'));
  try {
    await writeFile(join(folder, 'sheet.pdf'), bytes);
    const words = [
      '-gray',
      '-r',
      '254',
      '-f',
      '1',
      '-l',
      '1',
      '-singlefile',
      join(folder, 'sheet.pdf'),
      join(folder, 'sheet'),
    ];
    await promisify(execFile)(join(dirname(reader), 'pdftoppm'), words);
    const file = await readFile(join(folder, 'sheet.pgm'));
    const head = /^P5\s+(\d+)\s+(\d+)\s+(\d+)\s/.exec(file.subarray(0, 40).toString('latin1'));
    if (head === null) throw new Error('pdftoppm wrote no grey picture');
    const widthDots = Number(head[1]);
    const dots = file.subarray(head[0].length);
    return {
      widthDots,
      isDark: (xMm, yMm) =>
        (dots[Math.round(yMm * DOTS_PER_MM) * widthDots + Math.round(xMm * DOTS_PER_MM)] ?? 255) < 110,
    };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** From the first dark dot to the last, mm, along a line. */
function darkMm(isDark: (mm: number) => boolean, fromMm: number, toMm: number): number {
  const dark: number[] = [];
  for (let mm = fromMm; mm <= toMm; mm += 1 / DOTS_PER_MM) if (isDark(mm)) dark.push(mm);
  return dark.length === 0 ? 0 : Math.max(...dark) - Math.min(...dark) + 1 / DOTS_PER_MM;
}

/** The first dark dot from a place on, mm. */
function firstDarkMm(isDark: (mm: number) => boolean, fromMm: number): number {
  for (let mm = fromMm; mm < 420; mm += 1 / DOTS_PER_MM) if (isDark(mm)) return mm;
  throw new Error('nothing is printed');
}

/** The longest row of dark dots without a gap, mm. */
function longestDarkMm(isDark: (mm: number) => boolean, fromMm: number, toMm: number): number {
  let [longest, run] = [0, 0];
  for (let mm = fromMm; mm <= toMm; mm += 1 / DOTS_PER_MM) {
    run = isDark(mm) ? run + 1 / DOTS_PER_MM : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}

// Quarrel Court: outer walls of 200 mm on centre lines from -100 to 8400 (the front) and from -100 to 7100 (the left side).
const WIDE_MM = 8700;
const DEEP_MM = 7400;
/** Half a dot at each end. */
const NEAR_MM = 0.15;

describe.each(['A4', 'A3'] as const)('a plan printed on %s', (paper) => {
  const papers = papersOf(demoJob('quarrel-court'), demoLibrary(), {
    date: '2026-11-27',
    revision: 1,
    schemeId: 'ring-by-w2',
  });
  if (papers === null) throw new Error('no papers');
  const [sheet] = planScenes(papers, paper) as readonly [Scene];
  const scale = sheet.scale ?? 0;
  let picture: Picture;
  beforeAll(async () => {
    picture = await printed(await planPdf(papers, paper));
  });
  afterAll(() => expect(scale).toBe(50));

  /** The middle of the house's front wall on paper: the lowest band of the plan that is dark for as much as a wall is thick. */
  function frontMm(): number {
    for (let y = sheet.heightMm - 22; y > 12; y -= 1 / DOTS_PER_MM)
      for (let x = 24; x < sheet.widthMm * 0.6; x += 3)
        if ([0, 1, 2, 3, 3.5].every((up) => picture.isDark(x, y - up))) return y - 2;
    throw new Error('no wall is printed');
  }

  it('is as large as its paper', () => {
    expect(picture.widthDots / DOTS_PER_MM).toBeCloseTo(sheet.widthMm, 0);
  });

  it('has the house as wide and as deep as the job says, by the scale in its title block', () => {
    const front = frontMm();
    const along = (x: number): boolean => picture.isDark(x, front);
    const wide = darkMm(along, 22, sheet.widthMm * 0.69);
    expect(Math.abs(wide - WIDE_MM / scale)).toBeLessThanOrEqual(NEAR_MM);
    const left = firstDarkMm(along, 22) + 2;
    const deep = darkMm((y) => picture.isDark(left, y), 12, sheet.heightMm - 22);
    expect(Math.abs(deep - DEEP_MM / scale)).toBeLessThanOrEqual(NEAR_MM);
  });

  it('has a scale bar of two metres', () => {
    const bar = longestDarkMm((x) => picture.isDark(x, sheet.heightMm - 17), 21, sheet.widthMm * 0.5);
    expect(Math.abs(bar - 2000 / scale)).toBeLessThanOrEqual(NEAR_MM + 0.35);
  });
});
