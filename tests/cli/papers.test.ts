import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import JSZip from 'jszip';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '../exports/pdf-reader.ts';
import { demoFile, runScript } from './run-script.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ringwright-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: readonly string[]) => runScript('papers.ts', ...args);
const written = (name: string): string => join(folder, name);

describe('the papers command', () => {
  it('writes the pack and an archive of everything, of the scheme asked for', async () => {
    const out = written('plain');
    const ran = await run(
      demoFile('fernlow-close'),
      '--out',
      out,
      '--scheme',
      'ring-to-b3',
      '--date',
      '2026-11-27',
    );
    expect(ran.code, ran.err).toBe(0);
    expect(readdirSync(out)).toEqual(['papers.pdf', 'papers.zip']);
    const pdf = await readPdf(readFileSync(join(out, 'papers.pdf')));
    expect(pdf.pages[0]).toContain('Papers for the work');
    const zip = await JSZip.loadAsync(readFileSync(join(out, 'papers.zip')));
    expect(await zip.file('job.json')?.async('string')).toBe(readFileSync(demoFile('fernlow-close'), 'utf8'));
  });

  it('tells what changed since it was agreed, once the job says that the work is done', async () => {
    const agreed = demoFile('saltglass-row');
    const done = JSON.parse(readFileSync(agreed, 'utf8'));
    const early = await run(agreed, '--out', written('early'), '--agreed', agreed);
    expect([early.code, early.err]).toEqual([2, expect.stringContaining('does not say yet')]);
    done.built = { scheme: 'spurs-rcbo', on: '2026-12-03' };
    for (const point of done.points) if (point.label === 'W3') point.kind = 'socket-single';
    writeFileSync(written('done.json'), JSON.stringify(done));
    const ran = await run(
      written('done.json'),
      '--scheme',
      'spurs-rcbo',
      '--out',
      written('built'),
      '--agreed',
      agreed,
    );
    expect(ran.code, ran.err).toBe(0);
    const text = (await readPdf(readFileSync(join(written('built'), 'papers.pdf')))).pages.join(' ');
    expect(text).toContain('as built');
    expect(text).toContain('As agreed, and no longer so');
  });

  it('refuses a faulty call and writes nothing', async () => {
    const none = await run(demoFile('fernlow-close'), '--out', written('none'), '--scheme', 'none-such');
    expect([none.code, none.err]).toEqual([2, expect.stringContaining('the job has no such scheme')]);
    const day = await run(demoFile('fernlow-close'), '--out', written('none'), '--date', 'today');
    expect([day.code, day.err]).toEqual([2, expect.stringContaining('--date wants a date')]);
    expect((await run()).err).toContain('Name a job file');
    expect((await run('--help')).out).toContain('papers.zip');
    expect(readdirSync(folder)).not.toContain('none');
  });
});
