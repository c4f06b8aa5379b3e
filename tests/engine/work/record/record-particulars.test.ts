import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { pointKindWords } from '#drawing/point-kind-words.ts';
import { allRules } from '#engine/all-rules.ts';
import { notifiedOf } from '#engine/rules/notification.ts';
import { accessoryNames } from '#engine/work/record/described-work.ts';
import { skippedComments } from '#engine/work/record/found-comments.ts';
import { isAssumed } from '#engine/work/record/record-field.ts';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf, schemeOf } from '../../demo-jobs/demo-estimates.ts';
import { allFields, fieldOf, onlyCircuit, recordFor } from './record-fixtures.ts';

const saltglass = demoJob('saltglass-row');
const quoting = demoJob('saltglass-row-quoting');
const quarrel = demoJob('quarrel-court');

const withSupply = (job: Job, supply: Partial<Job['supply']>): Job => ({
  ...job,
  supply: { ...job.supply, ...supply },
});
const withSite = (job: Job, site: Partial<Job['site']>): Job => ({ ...job, site: { ...job.site, ...site } });
const withAnswer = (job: Job, question: string, value: string, certainty: 'seen' | 'assumed' = 'seen') => ({
  ...job,
  answers: [...job.answers.filter((each) => each.question !== question), { question, value, certainty }],
});

describe('the particulars of a record', () => {
  it('have the supply as the survey does, each as sure as it is', () => {
    const { supply } = recordFor(
      withSupply(saltglass, { certainty: { zeOhm: 'measured', tailsMm2: 'assumed', mainFuseA: 'unknown' } }),
      'spurs-rcbo',
    );
    expect(fieldOf(supply, 'earthing')).toMatchObject({ value: 'TN-C-S', from: 'survey', certainty: 'seen' });
    expect(fieldOf(supply, 'ze')).toMatchObject({ figure: 0.24, from: 'survey', certainty: 'measured' });
    expect(fieldOf(supply, 'tails')).toMatchObject({ figure: 25, certainty: 'assumed' });
    expect(isAssumed(fieldOf(supply, 'tails'))).toBe(true);
    expect(fieldOf(supply, 'main-fuse')).toMatchObject({ value: null, from: 'person' });
    expect(fieldOf(supply, 'earthing-conductor')).toMatchObject({ figure: 16, unit: 'mm²' });
  });

  it('names what is only assumed among what is to be settled', () => {
    const { toSettle } = recordFor(quoting, 'spurs-rcbo');
    expect(toSettle.at(-1)).toBe('Only assumed, to be looked at: Main fuse.');
  });

  it('tell of each service whether it is bonded, absent, missing, fitted by the work, or not told', () => {
    const job = withSupply(saltglass, {
      bonding: [
        { service: 'water', seen: true },
        { service: 'gas', seen: false },
        { service: 'oil', seen: true, mm2: 6 },
      ],
      absentServices: ['steel'],
    });
    const value = (of: Job, id: string): string | null =>
      fieldOf(recordFor(of, 'spurs-rcbo').supply, id).value;
    expect(value(job, 'bond-water')).toBe('fitted, size not seen');
    expect(value(job, 'bond-gas')).toBe('none found');
    expect(value(job, 'bond-oil')).toBe('fitted, 6\u00a0mm²');
    expect(value(job, 'bond-steel')).toBe('none of metal in the house: no bond');
    expect(value(job, 'bond-other')).toBeNull();
    const renewing: Job = {
      ...job,
      schemes: job.schemes.map((scheme) => ({
        ...scheme,
        remedies: [...scheme.remedies, { kind: 'bond-upgrade' as const, at: 'gas' }],
      })),
    };
    const gas = fieldOf(recordFor(renewing, 'spurs-rcbo').supply, 'bond-gas');
    // 10 mm² with PME: BS 7671 Table 54.8.
    expect(gas).toMatchObject({ value: 'fitted by this work, 10\u00a0mm² or more', from: 'scheme' });
  });

  it('have no earthing system where no earth was found, and say why', () => {
    const { supply, toSettle } = recordFor(
      withAnswer(saltglass, 'means-of-earthing', 'absent'),
      'spurs-rcbo',
    );
    expect(fieldOf(supply, 'earthing').value).toBeNull();
    expect(fieldOf(supply, 'earthing').note).toMatch(/No means of earthing was found/);
    expect(toSettle[0]).toMatch(/^Stop gate, means of earthing:/);
  });

  it('have the device that will be there: as designed where the scheme brings it, else as found', () => {
    const brought = onlyCircuit(recordFor(saltglass, 'spurs-rcbo')).particulars;
    expect(fieldOf(brought, 'device-standard')).toMatchObject({
      value: 'BS\u00a0EN\u00a061009',
      from: 'scheme',
      certainty: 'assumed',
    });
    expect(fieldOf(brought, 'rcd-current')).toMatchObject({ figure: 30, unit: 'mA', from: 'scheme' });
    const left = onlyCircuit(recordFor(saltglass, 'off-spur-1')).particulars;
    expect(fieldOf(left, 'device-standard')).toMatchObject({
      value: 'BS\u00a0EN\u00a060898',
      from: 'survey',
      certainty: 'seen',
    });
    expect(fieldOf(left, 'rcd-standard').value).toBe('none');
    // An RCD of the board: its standard is on its face, and nowhere in the survey.
    const behind = onlyCircuit(recordFor(quarrel, 'ring-by-w2')).particulars;
    expect(fieldOf(behind, 'rcd-type')).toMatchObject({ value: 'AC', from: 'survey' });
    expect(fieldOf(behind, 'rcd-standard')).toMatchObject({ value: null, from: 'person' });
    expect(fieldOf(behind, 'rcd-standard').note).toMatch(/type AC/);
    expect(fieldOf(behind, 'zdb')).toMatchObject({ figure: 0.33, certainty: 'measured', from: 'survey' });
  });

  it('say that there is no RCD only where somebody looked', () => {
    const boards = saltglass.boards.map((board) => ({ ...board, certainty: { rcds: 'assumed' as const } }));
    const { particulars } = onlyCircuit(recordFor({ ...saltglass, boards }, 'off-spur-1'));
    expect(fieldOf(particulars, 'rcd-standard')).toMatchObject({ value: 'none', certainty: 'assumed' });
    const unknown = saltglass.boards.map((board) => ({ ...board, certainty: { rcds: 'unknown' as const } }));
    const told = onlyCircuit(recordFor({ ...saltglass, boards: unknown }, 'off-spur-1')).particulars;
    expect(fieldOf(told, 'rcd-standard').value).toBeNull();
  });

  it('name points with an RCD of their own', () => {
    const points = saltglass.points.map((point) =>
      point.label === 'W1' ? { ...point, features: ['rcd' as const] } : point,
    );
    const { particulars } = onlyCircuit(recordFor({ ...saltglass, points }, 'off-spur-1'));
    expect(fieldOf(particulars, 'rcd-standard').note).toContain('With an RCD of their own: W1.');
  });

  it('have AFDD and SPD by the answers, and nothing where nobody answered', () => {
    const answered = withAnswer(
      withAnswer(saltglass, 'arc-fault-protection', 'not-fitted', 'assumed'),
      'surge-protection',
      'declined',
    );
    const { particulars } = onlyCircuit(recordFor(answered, 'spurs-rcbo'));
    expect(fieldOf(particulars, 'afdd')).toMatchObject({ value: 'none', certainty: 'assumed' });
    expect(fieldOf(particulars, 'spd')).toMatchObject({
      value: 'none',
      note: 'The owner declines surge protection.',
    });
    const open = onlyCircuit(recordFor(saltglass, 'spurs-rcbo')).particulars;
    expect([fieldOf(open, 'afdd').value, fieldOf(open, 'spd').value]).toEqual([null, null]);
  });

  it('have new and found cables apart, with their reference methods and areas', () => {
    const { cables } = onlyCircuit(recordFor(saltglass, 'spurs-rcbo'));
    expect(cables.map(({ state, liveMm2, cpcMm2 }) => [state, liveMm2, cpcMm2])).toEqual([
      ['new', 2.5, 1.5],
      ['found', 2.5, 1.5],
    ]);
    expect(cables[0]?.marks).toEqual(['K1', 'K2', 'K3', 'K4']);
    for (const { methods } of cables)
      for (const method of methods) expect(['A', 'B', 'C', '100', '101', '102', '103']).toContain(method);
    expect(cables.map(({ certainty }) => certainty)).toEqual(['assumed', 'seen']);
    // Where no leg is recorded nothing is said of cable that is there.
    const visit = onlyCircuit(recordFor(quoting, 'spurs-rcbo')).cables;
    expect(visit.every(({ state }) => state === 'new')).toBe(true);
  });

  it('are empty, and all there, for a job that tells next to nothing', () => {
    const bare: Job = {
      ...quoting,
      site: { ...quoting.site, customer: ' ', address: [] },
      supply: { nominalV: 230, bonding: [], otherSources: [], certainty: { otherSources: 'unknown' } },
      circuits: quoting.circuits.map(({ id, name, board, use }) => ({ id, name, board, use })),
      answers: [],
    };
    const record = recordFor(bare, 'spurs-rcbo');
    const full = recordFor(saltglass, 'spurs-rcbo');
    const ids = (of: typeof record) =>
      allFields(of).flatMap(({ id }) => (['r1', 'rn', 'r2'].includes(id) ? [] : [id]));
    expect(ids(record)).toEqual(ids(full));
    for (const id of ['client', 'address']) expect(fieldOf(record.work, id).value).toBeNull();
    for (const id of ['earthing', 'ze', 'pfc', 'tails', 'other-sources', 'bond-water', 'bond-gas'])
      expect(fieldOf(record.supply, id).value).toBeNull();
    const { particulars } = onlyCircuit(recordFor(bare, 'spurs-rcbo'));
    for (const id of ['circuit-number', 'disconnection-time'])
      expect(fieldOf(particulars, id).value).toBeNull();
  });
});

describe('the certificate that a record is for', () => {
  it('is a minor works certificate where circuits are altered, an installation certificate for a new one or a new board', () => {
    expect(recordFor(saltglass, 'spurs-rcbo').certificate.kind).toBe('minor-works');
    const radial = recordFor(quoting, 'new-radial');
    expect(radial.certificate.kind).toBe('installation');
    expect(radial.certificate.words.join(' ')).toMatch(
      /not for a minor works certificate.*schedule of inspections/,
    );
    expect(radial.circuits.map(({ isNew }) => isNew)).toContain(true);
    const newBoard: Job = {
      ...saltglass,
      schemes: saltglass.schemes.map((scheme) => ({ ...scheme, remedies: [{ kind: 'new-board' as const }] })),
    };
    const record = recordFor(newBoard, 'spurs-rcbo');
    expect(record.certificate.kind).toBe('installation');
    expect(onlyCircuit(record).described.join(' ')).toContain('Consumer unit exchanged');
  });

  it('is none where nothing is touched, and the record says so', () => {
    const none: Job = {
      ...saltglass,
      schemes: [{ id: 'none', name: 'Nothing', connections: [], remedies: [], locks: [] }],
    };
    const record = recordFor(none, 'none');
    expect([record.certificate.kind, record.circuits]).toEqual(['none', []]);
  });

  it('is never called issued: every record says that it is none', () => {
    expect(recordFor(saltglass, 'spurs-rcbo').noCertificate).toMatch(/^This is no certificate\./);
  });

  it('leaves the declaration to be filled in and signed, but for the firm', () => {
    const { declaration } = recordFor(saltglass, 'spurs-rcbo');
    const filled = declaration.lines.filter(({ value }) => value !== '').map(({ label }) => label);
    expect(filled).toEqual(['For']);
    expect(declaration.lines.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['Name', 'Signature', 'Date', 'BS 7671, as amended to']),
    );
  });
});

describe('building control on a record', () => {
  const nt1 = allRules.find(({ id }) => id === 'NT1');

  it('is due for each message of the check on it that says so, and asked for what it does not have', () => {
    const due = Object.keys(nt1?.messages ?? {}).filter((messageId) => notifiedOf({ messageId }) === 'due');
    expect(due).toEqual(['newCircuit', 'newBoard', 'specialLocation', 'walesOlderList']);
    expect(notifiedOf({ messageId: 'unheard-of' })).toBe('ask');
  });

  it('gives the ways of each nation, and the firm’s own', () => {
    const of = (nation: Job['site']['nation'], notifiedBy: 'self' | 'third-party' = 'self') =>
      recordFor(withSite(quoting, { nation }), 'new-radial', { ...demoLibrary().firm, notifiedBy })
        .buildingControl;
    // Approved Document P, 2013 (England): self-certification, a registered third party, a building control body.
    expect(of('england')).toMatchObject({ state: 'due', firmsWay: 'The firm certifies it itself.' });
    expect(of('england').ways).toHaveLength(3);
    // Third-party certification came with the text of 2013, which is England's alone.
    expect(of('wales').ways).toHaveLength(2);
    expect(of('wales').ways.join(' ')).not.toMatch(/third-party/);
    expect(of('scotland')).toMatchObject({ state: 'none', ways: [], firmsWay: null });
    expect(of('northern-ireland')).toMatchObject({ state: 'none', ways: [] });
    expect(recordFor(quarrel, 'ring-by-w2').buildingControl).toMatchObject({ state: 'ask' });
    expect(recordFor(saltglass, 'spurs-rcbo').buildingControl).toMatchObject({ state: 'none', ways: [] });
  });
});

describe('the comments on the existing installation', () => {
  const words = (job: Job, schemeId = 'spurs-rcbo') =>
    recordFor(job, schemeId).comments.map(({ rule, outcome }) => `${outcome} ${rule}`);

  it('are what was found and not caused by the scheme, gravest first, each with what puts it right', () => {
    const old: Job = {
      ...saltglass,
      legs: saltglass.legs.map((leg, i) =>
        i === 2 ? { ...leg, cable: { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5, era: 'rubber' } } : leg,
      ),
    };
    const { comments } = recordFor(old, 'spurs-rcbo');
    expect(comments.map(({ outcome }) => outcome)).toEqual(
      [...comments.map(({ outcome }) => outcome)].sort((a, b) => order.indexOf(a) - order.indexOf(b)),
    );
    expect(comments.find(({ rule }) => rule === 'SC5')).toMatchObject({
      outcome: 'decide',
      remedy: 'Renew it before adding to it.',
    });
    const caused = schemeOf(estimateOf(saltglass), 'off-spur-1').findings.filter(
      ({ origin, outcome }) => origin === 'scheme' && outcome === 'fails',
    );
    expect(caused.length).toBeGreaterThan(0);
    const said = recordFor(saltglass, 'off-spur-1').comments.map((comment) => comment.words);
    for (const { message } of caused) expect(said).not.toContain(message);
  });

  it('have no word of what the scheme puts right, nor of what is offered or asked for by the work', () => {
    const missing = withSupply(saltglass, { bonding: [{ service: 'gas', seen: false }] });
    expect(words(missing)).toContain('fails ST2');
    const mended: Job = {
      ...missing,
      schemes: missing.schemes.map((scheme) => ({
        ...scheme,
        remedies: [...scheme.remedies, { kind: 'bond-upgrade' as const, at: 'gas' }],
      })),
    };
    expect(words(mended)).not.toContain('fails ST2');
    for (const rule of ['PR1', 'PR2', 'SC3', 'AD1']) expect(words(saltglass).join(' ')).not.toContain(rule);
  });

  it('tell what fails in circuits that the scheme does not touch', () => {
    const [ring] = saltglass.circuits;
    if (ring === undefined) throw new Error('no circuit');
    const other: Job = {
      ...saltglass,
      circuits: [...saltglass.circuits, { ...ring, id: 'upstairs', name: 'Upstairs', way: '5' }],
      readings: [
        ...saltglass.readings,
        {
          id: 'low',
          phase: 'before',
          kind: 'insulation',
          between: 'LN-cpc',
          megohm: 0.2,
          testV: 500,
          circuit: 'upstairs',
        },
      ],
    };
    expect(words(other)).toContain('fails ST4');
  });

  it('leave out nothing but checks that there are', () => {
    for (const key of skippedComments) {
      const [id, message] = key.split(' ');
      const rule = allRules.find((each) => each.id === id);
      expect([key, rule === undefined]).toEqual([key, false]);
      if (message !== undefined) expect(Object.keys(rule?.messages ?? {})).toContain(message);
    }
  });
});

const order: readonly string[] = ['fails', 'decide', 'advice', 'not-proven'];

describe('the description of the work', () => {
  it('calls accessories as all papers do', () => {
    for (const [kind, name] of Object.entries(accessoryNames))
      expect(`${name.charAt(0).toUpperCase()}${name.slice(1)}`).toBe(
        pointKindWords[kind as keyof typeof pointKindWords],
      );
  });
});
