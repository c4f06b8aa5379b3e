import JSZip from 'jszip';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { connectionCard } from '#drawing/work/connection-card.ts';
import { boardRows, joistRows } from '#drawing/work/floor-words.ts';
import { cautionsOf } from '#engine/work/cautions-of.ts';
import { connectionSheet } from '#engine/work/connection-sheet.ts';
import { floorPlaces } from '#engine/work/floors/floor-places.ts';
import { taskList } from '#engine/work/task-list.ts';
import { tickOf } from '#engine/work/task-progress.ts';
import { workMoved } from '#engine/work-moved.ts';
import { allFiles } from '#exports/pack/all-files.ts';
import { packPdf } from '#exports/pack/pack-pdf.ts';
import { packZip } from '#exports/pack/pack-zip.ts';
import { type Papers, papersOf } from '#exports/papers.ts';
import { planScenes } from '#exports/plan-files.ts';
import { workPaperPdf } from '#exports/work/work-paper.ts';
import { workPaper, workPaperFiles } from '#exports/work/work-papers.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { tinyPng } from '#tests/http/photos.ts';
import { newJob } from '../../ui/edits/new-job.ts';
import { type ReadPdf, readPdf } from './pdf-reader.ts';

const library = demoLibrary();
const date = '2026-11-27';
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

function papersFor(job: Job, schemeId: string | null = null): Papers {
  const papers = papersOf(job, library, { date, revision: 1, schemeId });
  if (papers === null) throw new Error(`no scheme ${schemeId}`);
  return papers;
}

describe.each([
  ['saltglass-row', 'spurs-rcbo'],
  ['saltglass-row-quoting', 'new-radial'],
  ['fernlow-close', 'ring-to-b3'],
  ['quarrel-court', 'heater-w2b'],
] as const)('the pack of %s, %s', (name, schemeId) => {
  const job = demoJob(name);
  const papers = papersFor(job, schemeId);
  const { worked } = papers.shown;
  let pdf: ReadPdf;
  beforeAll(async () => {
    pdf = await readPdf(await packPdf({ job, library, papers, moved: null }));
  });

  it('has every paper of the work as text, within its pages, then the plans on their own sheets', () => {
    const text = flat(pdf.pages.join(' '));
    for (const title of [
      'Papers for the work',
      'Tasks in working order',
      'Connections',
      'Cuts, floors and walls',
      'Test sheet',
    ])
      expect(text).toContain(title);
    for (const { tasks } of taskList(papers.shown))
      for (const { words, hold } of tasks) {
        expect(text).toContain(flat(words));
        if (hold !== null) expect(text).toContain(flat(`HOLD: ${hold}`));
      }
    for (const place of connectionSheet(worked).places.filter(({ isWorkedOn }) => isWorkedOn))
      expect(text).toContain(connectionCard(place).title);
    for (const { words } of cautionsOf(worked)) expect(text).toContain(flat(words));
    const scenes = planScenes(papers);
    expect(pdf.pages.length).toBeGreaterThan(scenes.length);
    const pages = pdf.words.slice(0, -scenes.length).flat();
    for (const word of pages) {
      expect(word.xMin, word.text).toBeGreaterThan(40);
      expect(word.xMax, word.text).toBeLessThan(595.28 - 40);
      expect(word.yMax, word.text).toBeLessThan(841.89);
    }
    expect(pdf.fonts.every(({ embedded, unicode }) => embedded && unicode)).toBe(true);
    expect(pdf.images).toBe(0);
  });

  it('says on which page each paper begins, and so it is', () => {
    const [cover = '', ...rest] = pdf.pages;
    for (const title of ['Tasks in working order', 'Connections', 'Cuts, floors and walls', 'Test sheet']) {
      const [, page] = new RegExp(`^ *${title} +(\\d+) *$`, 'm').exec(cover) ?? [];
      expect(rest[Number(page) - 2]?.trimStart().startsWith(title), title).toBe(true);
    }
  });

  it('lists every joist and every board with where it is', () => {
    const text = flat(pdf.pages.join(' '));
    const work = floorPlaces(worked);
    const rows = [...joistRows(worked, work), ...boardRows(worked, work)].flatMap((room) => room.rows);
    expect(rows).toHaveLength(work.joists.length + work.boards.length);
    for (const { mark } of rows) expect(text.split(' ')).toContain(mark);
  });
});

describe('a pack', () => {
  const job = demoJob('saltglass-row');
  const papers = papersFor(job, 'spurs-rcbo');

  it('is the same bytes twice', async () => {
    const request = { job, library, papers, moved: null };
    expect(Buffer.from(await packPdf(request)).equals(Buffer.from(await packPdf(request)))).toBe(true);
  });

  it.each([
    [
      'has no storey yet',
      newJob({ reference: 'P-1', title: 'Empty', terms: { labour: 'typical', vat: 'standard' } }),
    ],
    ['has no scheme', { ...job, schemes: [] } satisfies Job],
    [
      'has a scheme that connects nothing',
      { ...job, schemes: job.schemes.map((one) => ({ ...one, connections: [], remedies: [] })) },
    ],
  ] as const)('is made of a job that %s', async (_, unfinished) => {
    const of = papersFor(unfinished);
    const pdf = await readPdf(await packPdf({ job: unfinished, library, papers: of, moved: null }));
    expect(flat(pdf.pages[0] ?? '')).toContain('Papers for the work');
  });

  it('tells, once the work is done, that it is as built and what changed', async () => {
    const built = { scheme: 'spurs-rcbo', on: '2026-12-03', words: 'The joint lies a joist further on.' };
    const done: Job = {
      ...job,
      built,
      points: job.points.map((point) =>
        point.label === 'W3' ? { ...point, kind: 'socket-single' as const } : point,
      ),
      actuals: {
        stages: [{ stage: 'first-fix', minutes: 240 }],
        tasks: [],
        used: [],
      },
    };
    const of = papersFor(done, 'spurs-rcbo');
    const moved = workMoved({ schemeId: 'spurs-rcbo', quotedJob: job, agreedJob: job, library }, done);
    expect(moved?.now.length).toBeGreaterThan(0);
    const pdf = await readPdf(await packPdf({ job: done, library, papers: of, moved }));
    const text = flat(pdf.pages.join(' '));
    expect(text).toContain('Papers of the work as built');
    expect(text).toContain('The work was finished on 3 December 2026.');
    expect(text).toContain(built.words);
    for (const words of [...(moved?.before ?? []), ...(moved?.now ?? [])])
      expect(text).toContain(flat(words));
    expect(text).toMatch(/First fix [\d.]+ h 4\.00 h/);
    // The plan's title block, too.
    expect(flat(pdf.pages.at(-1) ?? '')).toContain('As built');
    const other = papersFor(done, 'two-on-one');
    expect([other.built, other.status]).not.toContain('As built, 3 December 2026');
    expect(other.built).toBeNull();
  });
});

describe('the tasks on paper', () => {
  it('say what is ticked in the job, and a hold at which it stops', async () => {
    const job = demoJob('saltglass-row');
    const of = papersFor(job, 'spurs-rcbo');
    const tasks = taskList(of.shown).flatMap((part) => part.tasks);
    const hold = tasks.find((task) => task.hold !== null);
    const first = tasks.find(
      (task) => task.hold === null && task.amount !== null && task.amount.quantity > 0,
    );
    if (hold === undefined || first === undefined) throw new Error('no task to tick');
    const done = [tickOf('spurs-rcbo', first, true), tickOf('spurs-rcbo', hold, false)];
    const papers = papersFor({ ...job, done }, 'spurs-rcbo');
    const paper = { papers, library };
    const text = flat(
      (await readPdf(await workPaperPdf(workPaper('tasks.pdf', paper), paper))).pages.join(' '),
    );
    expect(text).toContain(
      `1 of ${tasks.filter(({ amount }) => amount === null || amount.quantity > 0).length} done. Stopped:`,
    );
    expect(text).toContain('Not so: the work stops here until it is put right.');
    const plain = { papers: of, library };
    expect(
      flat((await readPdf(await workPaperPdf(workPaper('tasks.pdf', plain), plain))).pages.join(' ')),
    ).not.toContain('Stopped:');
  });
});

describe('everything in one archive', () => {
  it('has the pack, every paper by itself, the job file to the byte and its pictures', async () => {
    const job = demoJob('fernlow-close');
    const papers = papersFor(job);
    const request = { job, library, papers, moved: null, found: null };
    const pack = await packPdf(request);
    const whole = { ...request, jobText: '{"a": 1}', pictures: [tinyPng, new Uint8Array([1, 2])] };
    const bytes = await packZip(whole, pack);
    const zip = await JSZip.loadAsync(bytes);
    const names = Object.keys(zip.files);
    const files = await allFiles(request);
    expect(names.slice(0, 1 + files.length + 1)).toEqual([
      'papers.pdf',
      ...files.map(({ name }) => name),
      'job.json',
    ]);
    expect(names.slice(files.length + 2)).toEqual([expect.stringMatching(/^assets\/[0-9a-f]{64}\.png$/)]);
    for (const name of workPaperFiles) expect(names).toContain(name);
    expect(await zip.file('job.json')?.async('string')).toBe('{"a": 1}');
    expect(
      Buffer.from((await zip.file('papers.pdf')?.async('uint8array')) ?? []).equals(Buffer.from(pack)),
    ).toBe(true);
    for (const { name, content } of files) {
      // The workbook tells the moment at which it was written.
      if (name.endsWith('.xlsx')) continue;
      const there = Buffer.from((await zip.file(name)?.async('uint8array')) ?? []);
      expect(there.equals(Buffer.from(content)), name).toBe(true);
    }
  });
});
