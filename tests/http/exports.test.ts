import ExcelJS from 'exceljs';
import JSZip from 'jszip';
import { describe, expect, it } from 'vitest';
import { pictureId } from '#archive/picture-id.ts';
import { readArchive } from '#archive/read-archive.ts';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { billCsv } from '#exports/csv/bill-csv.ts';
import { labourCsv } from '#exports/csv/labour-csv.ts';
import { fileWord } from '#exports/file-word.ts';
import { papersOf } from '#exports/papers.ts';
import { planFiles, planPdf } from '#exports/plan-files.ts';
import { shoppingFiles } from '#exports/shopping-files.ts';
import { shoppingOf } from '#exports/shopping-of.ts';
import { recordJson } from '#exports/work/record-json.ts';
import { recordPdf } from '#exports/work/record-pdf.ts';
import { workPaperFiles } from '#exports/work/work-papers.ts';
import { readJobText } from '#model/read-job.ts';
import { newJob } from '../../ui/edits/new-job.ts';
import { tinyPng } from './photos.ts';
import { saltglass, saltglassId, testApp, variantOf } from './test-app.ts';

const at = `/api/jobs/${saltglassId}/exports`;
const { reference, title } = JSON.parse(saltglass);
const csvs = ['bill-of-materials.csv', 'labour.csv'];
const stem = fileWord(`${reference} ${title}`, 'job');
const nameOf = (answer: Response) =>
  /^attachment; filename="([^"]+)"$/.exec(answer.headers.get('content-disposition') ?? '')?.[1];

async function withJob(text = saltglass) {
  const made = await testApp();
  expect((await made.send('POST', '/api/jobs', text)).status).toBe(201);
  return made;
}

function saltglassJob() {
  const read = readJobText(saltglass);
  if (!read.ok) throw new Error('the demo job cannot be read');
  return read.job;
}

function papers(schemeId: string | null) {
  const made = papersOf(saltglassJob(), demoLibrary(), { date: '2026-11-25', revision: 1, schemeId });
  if (made === null) throw new Error('no such scheme');
  return made;
}

async function totalGross(answer: Response): Promise<unknown> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(await answer.arrayBuffer());
  const [range] = book.definedNames.getRanges('TotalGross').ranges;
  const [sheet, cell] = (range ?? '').replaceAll(/['$]/g, '').split('!');
  const value = book.getWorksheet(sheet)?.getCell(cell ?? 'A1').value;
  return typeof value === 'object' && value !== null && 'result' in value ? value.result : value;
}

describe('exports', () => {
  it('give the job with the pictures that are there as one archive, which reads back to the byte', async () => {
    const there = pictureId(tinyPng);
    const assets = [
      { id: there, name: 'One', mediaType: 'image/png', bytes: tinyPng.length },
      { id: '0'.repeat(64), name: 'Not sent yet', mediaType: 'image/jpeg', bytes: 1 },
    ];
    const text = JSON.stringify({ ...JSON.parse(saltglass), assets }, null, 3);
    const { app, get } = await withJob(text);
    const sent = { method: 'POST', body: tinyPng, headers: { 'content-type': 'application/octet-stream' } };
    expect((await app.request('/api/assets', sent)).status).toBe(201);
    const answer = await get(`${at}/job.zip`);
    expect([answer.status, nameOf(answer), answer.headers.get('content-type')]).toEqual([
      200,
      `${stem}-job.zip`,
      'application/zip',
    ]);
    const read = await readArchive(new Uint8Array(await answer.arrayBuffer()));
    if (!read.ok) throw new Error('the archive cannot be read');
    expect(read.jobText).toBe(await (await get(`${at}/job.json`)).text());
    expect(read.pictures).toEqual([{ id: there, mediaType: 'image/png', bytes: tinyPng }]);
    expect(read.missing.map(({ name }) => name)).toEqual(['Not sent yet']);
    expect((await get('/api/jobs/nobody/exports/job.zip')).status).toBe(404);
  });

  it('give the workbook of the scheme asked for, else of the cheapest that does not fail', async () => {
    const { get } = await withJob();
    for (const schemeId of [null, 'two-on-one']) {
      const answer = await get(`${at}/bill-of-materials.xlsx?scheme=${schemeId ?? ''}`);
      expect(answer.status).toBe(200);
      expect(nameOf(answer)).toBe(`${stem}-bill-of-materials.xlsx`);
      expect(answer.headers.get('content-type')).toBe(
        'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
      );
      expect(await totalGross(answer)).toBeCloseTo(papers(schemeId).shown.totals.grossPence / 100, 6);
    }
  });

  it('give bill and labour of the scheme asked for as CSV', async () => {
    const { get } = await withJob();
    const request = {
      estimate: papers('two-on-one').drawn,
      schemeId: 'two-on-one',
      library: demoLibrary(),
      state: papers(null).state,
    };
    for (const [name, text] of [
      ['bill-of-materials.csv', billCsv(request)],
      ['labour.csv', labourCsv(request)],
    ] as const) {
      const answer = await get(`${at}/${name}?scheme=two-on-one&date=2026-11-25`);
      expect([answer.status, nameOf(answer)]).toEqual([200, `${stem}-${name}`]);
      expect(answer.headers.get('content-type')).toBe('text/csv; charset=utf-8');
      expect(new TextDecoder('utf-8', { ignoreBOM: true }).decode(await answer.arrayBuffer())).toBe(text);
    }
  });

  it('give the plan of the storey asked for, else of the first', async () => {
    const { get } = await withJob();
    const [first, second] = planFiles(papers(null));
    const ground = await get(`${at}/wiring-plan.svg`);
    expect([ground.headers.get('content-type'), nameOf(ground)]).toEqual([
      'image/svg+xml; charset=utf-8',
      `${stem}-wiring-plan.svg`,
    ]);
    expect(await ground.text()).toBe(first?.svg());
    const upper = await get(`${at}/wiring-plan.svg?storey=${second?.storeyId}`);
    expect(nameOf(upper)).toBe(`${stem}-wiring-plan-first-floor.svg`);
    expect(await upper.text()).toBe(second?.svg());
    const draft = await get(`${at}/wiring-plan.dxf?storey=${second?.storeyId}`);
    expect([draft.headers.get('content-type'), nameOf(draft)]).toEqual([
      'image/vnd.dxf',
      `${stem}-wiring-plan-first-floor.dxf`,
    ]);
    expect(await draft.text()).toBe(second?.dxf());
    const none = await get(`${at}/wiring-plan.svg?storey=attic`);
    expect([none.status, (await none.json()).code]).toEqual([404, 'no-such-storey']);
  });

  it('give the plans of all storeys as one PDF, the same bytes each time', async () => {
    const { get } = await withJob();
    const asked = `${at}/wiring-plan.pdf?scheme=two-on-one&date=2026-11-25`;
    const answer = await get(asked);
    expect([answer.status, answer.headers.get('content-type'), nameOf(answer)]).toEqual([
      200,
      'application/pdf',
      `${stem}-wiring-plan.pdf`,
    ]);
    const bytes = Buffer.from(await answer.arrayBuffer());
    expect(Buffer.from(await (await get(asked)).arrayBuffer()).equals(bytes)).toBe(true);
    expect(Buffer.from(await planPdf(papers('two-on-one'))).equals(bytes)).toBe(true);
    const large = Buffer.from(await (await get(`${asked}&sheet=A3`)).arrayBuffer());
    expect(Buffer.from(await planPdf(papers('two-on-one'), 'A3')).equals(large)).toBe(true);
    expect((await get(`${asked}&sheet=A5`)).status).toBe(400);
  });

  it('give the shopping list of the scheme asked for, as text and for spreadsheets', async () => {
    const { get } = await withJob();
    const files = shoppingFiles(shoppingOf(papers('two-on-one'), demoLibrary(), saltglassJob()));
    const asked = '?scheme=two-on-one&date=2026-11-25';
    const text = await get(`${at}/shopping.txt${asked}`);
    expect([text.headers.get('content-type'), nameOf(text)]).toEqual([
      'text/plain; charset=utf-8',
      `${stem}-shopping.txt`,
    ]);
    expect(await text.text()).toBe(files.text);
    const csv = await get(`${at}/shopping.csv${asked}`);
    expect([csv.headers.get('content-type'), nameOf(csv)]).toEqual([
      'text/csv; charset=utf-8',
      `${stem}-shopping.csv`,
    ]);
    // Reading a text takes the byte-order mark away.
    expect(new TextDecoder('utf-8', { ignoreBOM: true }).decode(await csv.arrayBuffer())).toBe(files.csv);
    const none = await get(`${at}/shopping.csv?scheme=none-such`);
    expect([none.status, (await none.json()).code]).toEqual([404, 'no-such-scheme']);
  });

  it('give the customer’s paper, dated as asked, as a PDF', async () => {
    const { get } = await withJob();
    const answer = await get(`${at}/quotation.pdf?date=2026-11-25`);
    expect([answer.status, answer.headers.get('content-type'), nameOf(answer)]).toEqual([
      200,
      'application/pdf',
      `${stem}-quotation.pdf`,
    ]);
    const bytes = new Uint8Array(await answer.arrayBuffer());
    expect(new TextDecoder('latin1').decode(bytes.slice(0, 5))).toBe('%PDF-');
    const again = new Uint8Array(await (await get(`${at}/quotation.pdf?date=2026-11-25`)).arrayBuffer());
    expect(Buffer.from(again).equals(Buffer.from(bytes))).toBe(true);
  });

  it.each([...workPaperFiles, 'papers.pdf'])(
    'give %s of the scheme asked for as a PDF, the same twice',
    async (name) => {
      const { get } = await withJob();
      const asked = `${at}/${name}?date=2026-11-25&scheme=two-on-one`;
      const answer = await get(asked);
      expect([answer.status, answer.headers.get('content-type'), nameOf(answer)]).toEqual([
        200,
        'application/pdf',
        `${stem}-${name}`,
      ]);
      const bytes = new Uint8Array(await answer.arrayBuffer());
      expect(new TextDecoder('latin1').decode(bytes.slice(0, 5))).toBe('%PDF-');
      const again = new Uint8Array(await (await get(asked)).arrayBuffer());
      expect(Buffer.from(again).equals(Buffer.from(bytes))).toBe(true);
      const none = await get(`${at}/${name}?scheme=none-such`);
      expect([none.status, (await none.json()).code]).toEqual([404, 'no-such-scheme']);
    },
  );

  it('give everything as one archive, the pack as it is by itself and the job to the byte', async () => {
    const { get } = await withJob();
    const asked = '?date=2026-11-25&scheme=two-on-one';
    const answer = await get(`${at}/papers.zip${asked}`);
    expect([answer.status, nameOf(answer)]).toEqual([200, `${stem}-papers.zip`]);
    const zip = await JSZip.loadAsync(await answer.arrayBuffer());
    expect(await zip.file('job.json')?.async('string')).toBe(saltglass);
    const pack = Buffer.from(await (await get(`${at}/papers.pdf${asked}`)).arrayBuffer());
    expect(pack.equals(Buffer.from((await zip.file('papers.pdf')?.async('uint8array')) ?? []))).toBe(true);
  });

  it('give the record of the scheme asked for, as a PDF and as data, the same twice', async () => {
    const { get } = await withJob();
    const request = { papers: papers('two-on-one'), library: demoLibrary() };
    const asked = '?date=2026-11-25&scheme=two-on-one';
    const answer = await get(`${at}/record.pdf${asked}`);
    expect([answer.status, answer.headers.get('content-type'), nameOf(answer)]).toEqual([
      200,
      'application/pdf',
      `${stem}-record.pdf`,
    ]);
    const bytes = Buffer.from(await answer.arrayBuffer());
    expect(Buffer.from(await recordPdf(request)).equals(bytes)).toBe(true);
    const data = await get(`${at}/record.json${asked}`);
    expect([data.headers.get('content-type'), nameOf(data)]).toEqual([
      'application/json',
      `${stem}-record.json`,
    ]);
    expect(await data.text()).toBe(recordJson(request));
  });

  it('give the letter on a dangerous condition where one was found, and else say that none is due', async () => {
    const { get, send } = await withJob();
    const none = await get(`${at}/dangerous-condition.pdf`);
    expect([none.status, (await none.json()).code]).toEqual([404, 'no-letter-due']);
    const unsafe = [{ question: 'board-condition', value: 'unsafe', certainty: 'seen' }];
    await send('POST', '/api/jobs', variantOf(saltglass, { id: 'unsafe', answers: unsafe }));
    const answer = await get('/api/jobs/unsafe/exports/dangerous-condition.pdf?date=2026-11-25');
    expect([answer.status, answer.headers.get('content-type'), nameOf(answer)]).toEqual([
      200,
      'application/pdf',
      `${stem}-dangerous-condition.pdf`,
    ]);
    expect(new TextDecoder('latin1').decode((await answer.arrayBuffer()).slice(0, 5))).toBe('%PDF-');
  });

  it('give the estimate and the job file, the latter to the byte', async () => {
    const { get } = await withJob();
    const estimate = await get(`${at}/estimate.json`);
    expect(nameOf(estimate)).toBe(`${stem}-estimate.json`);
    expect(await estimate.text()).toBe(await (await get(`/api/jobs/${saltglassId}/estimate`)).text());
    const spurs = await (await get(`${at}/estimate.json?scheme=two-on-one`)).json();
    expect(spurs.packing.schemeId).toBe('two-on-one');
    expect(spurs.packing.takeBack[0]).toMatchObject({ question: null, outcome: null });
    expect((await get(`${at}/estimate.json?scheme=nothing`)).status).toBe(404);
    const job = await get(`${at}/job.json`);
    expect(nameOf(job)).toBe(`${stem}-job.json`);
    expect(await job.text()).toBe(saltglass);
  });

  it('take a job without schemes, points or storeys as it is', async () => {
    const empty = { storeys: [], points: [], legs: [], readings: [], schemes: [], circuits: [], boards: [] };
    const { get } = await withJob(variantOf(saltglass, { ...empty, answers: [] }));
    for (const name of [
      'bill-of-materials.xlsx',
      ...csvs,
      'quotation.pdf',
      'test-sheet.pdf',
      'record.pdf',
      'record.json',
      'wiring-plan.svg',
      'wiring-plan.pdf',
      'wiring-plan.dxf',
      'estimate.json',
      'job.json',
    ])
      expect([name, (await get(`${at}/${name}`)).status]).toEqual([name, 200]);
  });

  it('give the plan of a storey of which there is nothing to draw, and it says so', async () => {
    const { get, send } = await withJob();
    const { storeys } = JSON.parse(saltglass);
    const attic = {
      ...storeys[1],
      id: 'attic',
      name: 'Attic',
      walls: [],
      rooms: [],
      fixtures: [],
      stairwells: [],
    };
    await send('POST', '/api/jobs', variantOf(saltglass, { id: 'with-attic', storeys: [...storeys, attic] }));
    const answer = await get('/api/jobs/with-attic/exports/wiring-plan.svg?storey=attic');
    expect([answer.status, nameOf(answer)]).toEqual([200, `${stem}-wiring-plan-attic.svg`]);
    expect(await answer.text()).toContain('Nothing to draw yet');
    const first = await get('/api/jobs/with-attic/exports/wiring-plan.svg');
    expect(await first.text()).not.toContain('Nothing to draw yet');
  });

  it('give every paper of a new job, with nothing drawn and nothing placed', async () => {
    const { get, send } = await withJob();
    const terms = { labour: 'typical', vat: 'standard' } as const;
    const job = newJob({ reference: 'N-1', title: 'New', terms });
    await send('POST', '/api/jobs', JSON.stringify(job));
    const [storey] = job.storeys;
    for (const name of [
      'bill-of-materials.xlsx',
      'quotation.pdf',
      'test-sheet.pdf',
      'record.pdf',
      'record.json',
      ...csvs,
      `wiring-plan.svg?storey=${storey?.id}`,
      'wiring-plan.svg',
    ])
      expect([name, (await get(`/api/jobs/${job.id}/exports/${name}`)).status]).toEqual([name, 200]);
  });

  it('refuse a job and a scheme that are not there', async () => {
    const { get } = await withJob();
    for (const name of [
      'bill-of-materials.xlsx',
      ...csvs,
      'test-sheet.pdf',
      'record.pdf',
      'record.json',
      'wiring-plan.svg',
      'wiring-plan.pdf',
      'wiring-plan.dxf',
    ]) {
      const answer = await get(`${at}/${name}?scheme=nothing`);
      expect([answer.status, (await answer.json()).code]).toEqual([404, 'no-such-scheme']);
    }
    for (const name of [
      'bill-of-materials.xlsx',
      ...csvs,
      'quotation.pdf',
      'test-sheet.pdf',
      'record.pdf',
      'record.json',
      'wiring-plan.svg',
      'wiring-plan.pdf',
      'wiring-plan.dxf',
      'estimate.json',
      'job.json',
    ])
      expect((await get(`/api/jobs/nobody/exports/${name}`)).status).toBe(404);
    const letter = await get('/api/jobs/nobody/exports/dangerous-condition.pdf');
    expect([letter.status, (await letter.json()).code]).toEqual([404, 'no-such-job']);
  });

  it('never let a title break out of the file name', async () => {
    const text = variantOf(saltglass, {
      id: 'x.1',
      reference: '"\r\nSet-Cookie: a=b',
      title: '../../Čeřín’s; ☃',
    });
    const { get } = await withJob(text);
    expect(nameOf(await get('/api/jobs/x.1/exports/job.json'))).toBe('set-cookie-a-b-cerin-s-job.json');
    const { get: other } = await withJob(variantOf(saltglass, { id: 'x.2', reference: '', title: '☃' }));
    expect(nameOf(await other('/api/jobs/x.2/exports/job.json'))).toBe('x-2-job.json');
  });
});

describe('file words', () => {
  it('are lower-case letters, digits and single hyphens, and never empty or long', () => {
    expect(fileWord(' First  Floor! ', 'x')).toBe('first-floor');
    expect(fileWord('', 'otherwise')).toBe('otherwise');
    expect(fileWord('日本', 'otherwise')).toBe('otherwise');
    expect(fileWord('é'.repeat(500), 'x')).toBe('e'.repeat(60));
    expect(fileWord(`${'a'.repeat(59)} b`, 'x')).toBe('a'.repeat(59));
  });
});
