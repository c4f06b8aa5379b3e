import { appendFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { estimateFile } from '#exports/estimate-file.ts';
import { papersOf } from '#exports/papers.ts';
import type { Job } from '#model/job.ts';
import { houseOf } from '../houses/house-of.ts';
import { spursOf } from '../houses/spurs-of.ts';
import { type Ran, runScript, runScriptOn } from './run-script.ts';

const DATE = '2026-11-25';
let folder = '';
const path = (name: string): string => join(folder, name);
const written = (name: string): string => readFileSync(path(name), 'utf8');
const linesOf = (name: string): Record<string, unknown>[] =>
  written(name)
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));

const houses = [1, 2, 3].map((seed): Job => {
  const job = houseOf({ seed, rooms: 4, wanted: 1 });
  return { ...job, schemes: [spursOf(job)] };
});

/** The folder's files by name: three jobs, one that is no JSON, one that is no whole job. */
const files: Readonly<Record<string, string>> = {
  'a.json': JSON.stringify(houses[0]),
  'b.json': '{"format":',
  'c.json': JSON.stringify(houses[1]),
  'd.json': JSON.stringify({ ...houses[2], title: 7 }),
  'e.json': JSON.stringify(houses[2], null, 2),
};

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ringwright-'));
  mkdirSync(path('jobs'));
  for (const [name, text] of Object.entries(files)) writeFileSync(path(`jobs/${name}`), text);
  writeFileSync(path('jobs/notes.txt'), 'no job');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const batch = (out: string, ...more: readonly string[]): Promise<Ran> =>
  runScript('estimate.ts', '--batch', path('jobs'), '--out', path(out), '--date', DATE, ...more);

describe('the estimate of a batch', () => {
  beforeAll(async () => {
    const { code, out } = await batch('whole.jsonl', '--workers', '2');
    expect([code, out]).toEqual([1, expect.stringContaining('2 jobs faulty')]);
  });

  it('has a line for each file by name, with the totals and findings of its estimate', () => {
    const lines = linesOf('whole.jsonl');
    expect(lines.map(({ at }) => at)).toEqual(Object.keys(files));
    const whole = estimate(houses[0] as Job, demoLibrary(), { date: DATE, revision: 1 });
    const [scheme] = whole.schemes;
    const fails = scheme?.findings.filter(({ outcome }) => outcome === 'fails').length;
    const passes = scheme?.findings.filter(({ outcome }) => outcome === 'passes').length;
    expect(lines[0]).toMatchObject({
      id: houses[0]?.id,
      date: DATE,
      cheapestId: whole.cheapestId,
      schemes: [
        {
          id: 'spurs',
          complies: scheme?.complies,
          totals: scheme?.totals,
          range: scheme?.range,
          findings: { fails, passes },
        },
      ],
    });
    expect(passes).toBeGreaterThan(0);
  });

  it('reports faulty files with where and why, and goes on', async () => {
    const { err } = await batch('reported.jsonl', '--workers', '1');
    expect(err).toMatch(/b\.json: 1 fault, skipped\.\n.*\(line 1, column 11\)/);
    expect(err).toMatch(/d\.json: 1 fault, skipped\.\n.*\(title\)/);
    expect(linesOf('reported.jsonl')[3]).toMatchObject({ at: 'd.json', faults: [{ path: 'title' }] });
    // One worker or two: the same bytes.
    expect(written('reported.jsonl')).toBe(written('whole.jsonl'));
  });

  it('goes on after what is whole, half a line cut off, to the bytes of one run', async () => {
    const whole = written('whole.jsonl');
    const upTo = whole.indexOf('\n', whole.indexOf('\n') + 1) + 1;
    writeFileSync(path('broken.jsonl'), whole.slice(0, upTo + 40));
    const { code, out, err } = await batch('broken.jsonl');
    expect([code, out]).toEqual([1, expect.stringContaining('5 jobs, 2 of an earlier run')]);
    // What is there is not worked out again: its faults are not told again.
    expect(err).not.toContain('b.json');
    expect(written('broken.jsonl')).toBe(whole);
  });

  it('works out anew from the first file that has changed since', async () => {
    writeFileSync(path('changed.jsonl'), written('whole.jsonl'));
    writeFileSync(path('jobs/c.json'), JSON.stringify({ ...houses[1], title: 'Another title' }));
    const { out, err } = await batch('changed.jsonl');
    writeFileSync(path('jobs/c.json'), files['c.json'] ?? '');
    expect(out).toContain('2 of an earlier run');
    expect(err).toContain('from c.json on');
    const [before, after] = [linesOf('whole.jsonl'), linesOf('changed.jsonl')];
    expect(after.map((line, i) => JSON.stringify(line) === JSON.stringify(before[i]))).toEqual([
      true,
      true,
      false,
      true,
      true,
    ]);
  });

  it('takes a stream with one job a line, and carries whole estimates where asked', async () => {
    const stream = `${files['a.json']}\n\n${files['b.json']}\n`;
    const args = ['--batch', '-', '--out', path('full.jsonl'), '--date', DATE, '--full', '--workers', '1'];
    const { code, err } = await runScriptOn(stream, 'estimate.ts', ...args);
    expect([code, err]).toEqual([1, expect.stringContaining('Line 3: 1 fault')]);
    const lines = linesOf('full.jsonl');
    expect(lines.map(({ at }) => at)).toEqual([1, 3]);
    const job = houses[0] as Job;
    const papers = papersOf(job, demoLibrary(), { date: DATE, revision: 1, schemeId: null });
    if (papers === null) throw new Error('no papers');
    expect(lines[0]?.estimate).toEqual(JSON.parse(estimateFile({ job, library: demoLibrary(), papers })));
    const { estimate: _, ...line } = lines[0] ?? {};
    const [{ by: _by, ...short }] = linesOf('whole.jsonl') as [Record<string, unknown>];
    expect(line).toMatchObject({ ...short, at: 1 });
  });

  it('leaves alone a file that is something else’s, or was worked out otherwise', async () => {
    writeFileSync(path('letter.txt'), 'Dear Sir,');
    appendFileSync(path('other.jsonl'), written('whole.jsonl'));
    const before = [written('letter.txt'), written('other.jsonl')];
    const runs = await Promise.all([
      batch('letter.txt'),
      batch('other.jsonl', '--date', '2026-11-26'),
      batch('none.jsonl', '--workers', '0'),
      runScript('estimate.ts', '--batch', path('nowhere'), '--out', path('none.jsonl')),
    ]);
    expect(runs.map(({ code }) => code)).toEqual([2, 2, 2, 2]);
    expect(runs.map(({ err }) => err)).toEqual([
      expect.stringContaining('not the result of a batch'),
      expect.stringContaining('another library, day'),
      expect.stringContaining('--workers'),
      expect.stringContaining('no such folder or file'),
    ]);
    expect([written('letter.txt'), written('other.jsonl')]).toEqual(before);
  });
});
