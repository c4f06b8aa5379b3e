import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { demoMarks, demoNotice } from '#engine/demo-marks.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { demoFile, runScript } from './run-script.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ringwright-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: readonly string[]) => runScript('estimate.ts', ...args);
const written = (name: string): string => join(folder, name);

function variant(name: string, change: (job: Record<string, unknown>) => void): string {
  const job = JSON.parse(readFileSync(demoFile('saltglass-row'), 'utf8')) as Record<string, unknown>;
  change(job);
  writeFileSync(written(`${name}.json`), JSON.stringify(job));
  return written(`${name}.json`);
}

/** What the command says of a library that is the demo's. */
const saidOfDemo = `${demoNotice(demoMarks(demoLibrary()))} Your own go into a library file: --library FILE.\n`;

describe('the estimate command', () => {
  it('says nothing of a demo once the library is the firm’s own', async () => {
    writeFileSync(written('own.json'), JSON.stringify(ownLibrary()));
    const ran = await run(
      demoFile('saltglass-row'),
      '--out',
      written('own'),
      '--library',
      written('own.json'),
    );
    expect([ran.code, ran.err]).toEqual([0, '']);
  });

  it('adds the schemes that it found itself where a search is asked for', async () => {
    const { code, out } = await run(demoFile('fernlow-close'), '--out', written('search'), '--search');
    expect(code).toBe(0);
    expect(out).toContain('no way that passes costs less to do');
    const { search } = JSON.parse(readFileSync(join(written('search'), 'estimate.json'), 'utf8'));
    expect(search).toMatchObject({ optimal: true, gap: 0 });
    expect(search.boundPence).toBe(
      Math.min(...search.schemes.map((each: { worksPence: number }) => each.worksPence)),
    );
    expect(search.disturbance).toMatchObject({ optimal: true, gap: 0 });
    const least = search.schemes.find((each: { id: string }) => each.id === search.disturbance.schemeId);
    expect(out).toContain(`none that passes disturbs less than ${search.disturbance.boundPoints} points`);
    expect(least.worksPoints).toBe(search.disturbance.boundPoints);
    expect(out).toContain('Least disturbing of all found');
    expect(search.schemes[0]).toMatchObject({ id: 'found/1', kind: 'fused-branch', complies: 'yes' });
    expect(search.schemes[0].totals.grossPence).toBeGreaterThan(0);
    expect(search.schemes[0].connections[0].id).toBe('way-1');
    expect(search.bestOfKind).toHaveLength(5);
    expect(search.leftOut.length).toBeGreaterThan(0);
  });

  it('writes estimate, workbook and a plan a storey, prints a table and ends with 0', async () => {
    const { code, out, err } = await run(
      demoFile('saltglass-row'),
      '--out',
      written('a'),
      '--date',
      '2026-11-25',
    );
    expect([code, err]).toEqual([0, saidOfDemo]);
    expect(readdirSync(written('a')).sort()).toEqual([
      'bill-of-materials.csv',
      'bill-of-materials.xlsx',
      'connections.pdf',
      'cuts-and-floors.pdf',
      'estimate.json',
      'labour.csv',
      'quotation.pdf',
      'record.json',
      'record.pdf',
      'shopping.csv',
      'shopping.txt',
      'tasks.pdf',
      'test-sheet.pdf',
      'wiring-plan-first-floor.dxf',
      'wiring-plan-first-floor.svg',
      'wiring-plan-sheet-2.svg',
      'wiring-plan-sheet-4.svg',
      'wiring-plan.dxf',
      'wiring-plan.pdf',
      'wiring-plan.svg',
    ]);
    expect(out).toMatch(/spurs-rcbo .* yes .* £[\d,]+\.\d\d/);
    expect(out).toContain('Work dead');
    expect(out).toContain('check your own copy');
  });

  it('says the same as JSON, in the shape that others read', async () => {
    const { out } = await run(
      demoFile('saltglass-row'),
      '--out',
      written('b'),
      '--date',
      '2026-11-25',
      '--json',
    );
    expect(out.trim()).toBe(readFileSync(join(written('b'), 'estimate.json'), 'utf8').trim());
    const { schemes } = JSON.parse(out) as { schemes: Record<string, unknown>[] };
    for (const scheme of schemes) {
      expect(Object.keys(scheme)).toEqual(
        expect.arrayContaining([
          'id',
          'name',
          'complies',
          'totals',
          'runs',
          'joints',
          'boxes',
          'fusedUnits',
          'takeoff',
          'findings',
        ]),
      );
      expect(['yes', 'no', 'not-proven']).toContain(scheme.complies);
      expect(Object.keys(scheme.totals as object)).toEqual([
        'hours',
        'materialsPence',
        'labourPence',
        'otherPence',
        'contingencyPence',
        'netPence',
        'vatPence',
        'grossPence',
      ]);
    }
    const first = schemes[0] as { runs: object[]; joints: object[]; takeoff: object[]; findings: object[] };
    expect(Object.keys(first.runs[0] ?? {})).toEqual(
      expect.arrayContaining(['from', 'to', 'cable', 'lengthMm', 'segments']),
    );
    expect(Object.keys(first.joints[0] ?? {})).toEqual(expect.arrayContaining(['id', 'ratingA']));
    expect(Object.keys(first.takeoff[0] ?? {})).toEqual(
      expect.arrayContaining(['item', 'description', 'quantity', 'unit', 'causes']),
    );
    expect(Object.keys(first.findings[0] ?? {})).toEqual(
      expect.arrayContaining([
        'rule',
        'outcome',
        'subject',
        'actual',
        'limit',
        'edition',
        'source',
        'message',
        'remedy',
        'consequencePence',
        'origin',
      ]),
    );
  });

  it('ends with 1 for a scheme that fails, everything written, and names why', async () => {
    const { code, out } = await run(
      demoFile('saltglass-row'),
      '--out',
      written('c'),
      '--scheme',
      'two-on-one',
    );
    expect(code).toBe(1);
    expect(readdirSync(written('c')).length).toBe(20);
    expect(out).toMatch(/Fails +SP1 .*52 A/);
  });

  it('ends with 2 for a faulty file: every fault with its path, nothing written', async () => {
    const job = variant('faulty', (raw) => {
      raw.title = 7;
      (raw.points as Record<string, unknown>[])[0] = {
        ...(raw.points as Record<string, unknown>[])[0],
        kind: 'sockett-twin',
        circuit: 'no-such-one',
      };
    });
    const { code, err, out } = await run(job, '--out', written('d'));
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/title/);
    expect(err).toMatch(/Socket R1.*socket-twin.*\(points\[0\]\.kind\)/);
    expect(err).toMatch(/Socket R1.*no-such-one.*\(points\[0\]\.circuit\)/);
    expect(readdirSync(folder)).not.toContain('d');
  });

  it('ends with 2 for a job that is not there, an unknown scheme and a call without a folder', async () => {
    const runs = await Promise.all([
      run('nowhere.json', '--out', written('e')),
      run(demoFile('saltglass-row'), '--out', written('e'), '--scheme', 'nothing'),
      run(demoFile('saltglass-row')),
    ]);
    expect(runs.map(({ code }) => code)).toEqual([2, 2, 2]);
    expect(runs[1]?.err).toContain('spurs-rcbo');
    expect(readdirSync(folder)).not.toContain('e');
  });

  it('says first that a file is no job at all, and what to give it instead', async () => {
    const text = written('letter.txt');
    writeFileSync(text, 'Dear Sir,');
    const { code, err } = await run(text, '--out', written('letter'));
    expect(code).toBe(2);
    expect(err.split('\n')[0]).toMatch(/This is no Ringwright job file\. .*data\/jobs/);
  });

  it('answers a job of a newer version with that alone', async () => {
    const { code, err } = await run(
      variant('newer', (raw) => {
        raw.version = 99;
        raw.title = 3;
      }),
      '--out',
      written('f'),
    );
    expect(code).toBe(2);
    expect(err).toContain('this job needs a newer version');
    expect(err).toContain('1 fault');
  });

  it('takes an unfinished job as it is: no scheme, no points, no house', async () => {
    const bare = variant('bare', (raw) => {
      for (const key of ['storeys', 'points', 'legs', 'readings', 'schemes', 'circuits', 'boards', 'answers'])
        raw[key] = [];
    });
    const noScheme = variant('no-scheme', (raw) => {
      raw.schemes = [];
    });
    const runs = await Promise.all([run(bare, '--out', written('g')), run(noScheme, '--out', written('h'))]);
    expect(runs.map(({ code, err }) => [code, err])).toEqual([
      [1, saidOfDemo],
      [1, saidOfDemo],
    ]);
    expect(readdirSync(written('g'))).toEqual(
      expect.arrayContaining([
        'bill-of-materials.xlsx',
        'connections.pdf',
        'cuts-and-floors.pdf',
        'estimate.json',
      ]),
    );
    expect(readdirSync(written('h')).length).toBe(19);
    expect(runs.map(({ out }) => out.includes('Nothing to draw yet'))).toEqual([true, false]);
  });

  it('writes the same bytes twice, but for the workbook’s own clock', async () => {
    await Promise.all([
      run(demoFile('fernlow-close'), '--out', written('i'), '--date', '2026-11-25'),
      run(demoFile('fernlow-close'), '--out', written('j'), '--date', '2026-11-25'),
    ]);
    for (const name of readdirSync(written('i')).filter((file) => !file.endsWith('.xlsx'))) {
      expect(readFileSync(join(written('i'), name)).equals(readFileSync(join(written('j'), name)))).toBe(
        true,
      );
    }
  });

  it('leaves no plan and no letter of an earlier run beside an estimate that they do not belong to', async () => {
    const unsafe = variant('unsafe', (raw) => {
      raw.answers = [{ question: 'board-condition', value: 'unsafe', certainty: 'seen' }];
    });
    const { code, err } = await run(unsafe, '--out', written('k'));
    expect([code, err]).toEqual([
      1,
      `Dangerous as found: A dangerous fuse box or supply. dangerous-condition.pdf tells the customer.\n${saidOfDemo}`,
    ]);
    expect(readdirSync(written('k'))).toContain('dangerous-condition.pdf');
    const bare = variant('bare-again', (raw) => {
      for (const key of ['storeys', 'points', 'legs', 'readings', 'schemes', 'circuits', 'boards', 'answers'])
        raw[key] = [];
    });
    await run(bare, '--out', written('k'));
    expect(readdirSync(written('k')).sort()).toEqual([
      'bill-of-materials.csv',
      'bill-of-materials.xlsx',
      'connections.pdf',
      'cuts-and-floors.pdf',
      'estimate.json',
      'labour.csv',
      'quotation.pdf',
      'record.json',
      'record.pdf',
      'shopping.csv',
      'shopping.txt',
      'tasks.pdf',
      'test-sheet.pdf',
      'wiring-plan.dxf',
      'wiring-plan.pdf',
      'wiring-plan.svg',
    ]);
  });

  it('writes nothing when a folder stands where a file should go, and refuses a day that does not exist', async () => {
    mkdirSync(join(written('l'), 'wiring-plan.svg'), { recursive: true });
    const [blocked, day] = await Promise.all([
      run(demoFile('saltglass-row'), '--out', written('l')),
      run(demoFile('saltglass-row'), '--out', written('m'), '--date', '2026-02-30'),
    ]);
    expect([blocked.code, day.code]).toEqual([2, 2]);
    expect(blocked.err).toContain('is a folder');
    expect(readdirSync(written('l'))).toEqual(['wiring-plan.svg']);
  });
});
