import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { allRules } from '#engine/all-rules.ts';
import { estimate } from '#engine/estimate.ts';
import { dangersOf, isDangerous, toldDangers } from '#engine/quotation/danger/dangers.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { warnOfDanger } from '#engine/warn-of-danger.ts';
import type { Job } from '#model/job.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { demoJob, demoNames } from '../../demo-jobs/demo-estimates.ts';
import { dangerousJobs } from './dangerous-jobs.ts';

const library = demoLibrary();
const when = { date: '2026-11-27', revision: 1 };
const letterOf = (job: Job, firm = library) =>
  warnOfDanger(job, firm, estimate(job, firm, when, { schemeIds: [], depth: 'live' }));

function letterFor(key: string) {
  const job = dangerousJobs[key];
  if (job === undefined) throw new Error(key);
  const letter = letterOf(job);
  if (letter === null) throw new Error(`no letter for ${key}`);
  return letter;
}

describe('the letter on a dangerous condition', () => {
  it.each(Object.keys(dangerousJobs))(
    'tells what was found, its harm, what not to do and who mends it: %s',
    (key) => {
      const job = dangerousJobs[key];
      if (job === undefined) throw new Error(key);
      const { findings } = estimate(job, library, when, { schemeIds: [], depth: 'live' }).asFound;
      const shut = findings.filter(isDangerous).map(({ rule, messageId }) => `${rule} ${messageId}`);
      expect(shut).toContain(key);
      const { dangers } = letterFor(key);
      expect(dangers.length).toBeGreaterThan(0);
      for (const { heading, found, harm, mustNot, toDo } of dangers) {
        expect(heading.length).toBeGreaterThan(5);
        expect(found).toMatch(/\.$/);
        expect(harm).toMatch(/kill|shock|fire/);
        expect(mustNot.length).toBeGreaterThan(0);
        expect(toDo).toMatch(/electrician|company/);
      }
    },
  );

  it('has figures, places and circuits as they were found', () => {
    expect(letterFor('ST4 low').dangers[0]?.found).toContain('“Socket ring, whole house” measures 0.3 MΩ');
    expect(letterFor('ST5 wrong').dangers[0]?.found).toContain('at R1');
    expect(letterFor('ST2 missing').dangers[0]?.heading).toBe('No earth wire on the gas pipe');
  });

  it('says when it is only told: nobody saw an assumed answer', () => {
    const told: Job = {
      ...demoJob('saltglass-row'),
      answers: [{ question: 'board-condition', value: 'unsafe', certainty: 'assumed' }],
    };
    expect(letterOf(told)?.dangers[0]?.found).toMatch(/we have not seen it ourselves yet/);
    expect(letterFor('ST3 unsafe').dangers[0]?.found).not.toMatch(/ourselves/);
  });

  it('calls nothing safe, whatever was found', () => {
    for (const key of Object.keys(dangerousJobs))
      expect(JSON.stringify(letterFor(key))).not.toMatch(/\bsafe/i);
  });

  it('has words for every check that can shut a stop gate by failing', () => {
    const messages = allRules.flatMap(({ id, messages: own }) =>
      Object.keys(own).map((name) => `${id} ${name}`),
    );
    for (const key of toldDangers) expect(messages).toContain(key);
    expect([...toldDangers].sort()).toEqual(Object.keys(dangerousJobs).sort());
  });

  it('says what has no words of its own as the check does', () => {
    const finding: Finding = {
      rule: 'XX1',
      title: 'Something new',
      outcome: 'fails',
      subject: 'ring-house',
      messageId: 'bad',
      actual: null,
      limit: null,
      unit: null,
      edition: '',
      source: '',
      message: 'Something is wrong.',
      remedy: 'Mend it.',
      fix: null,
      consequencePence: null,
      origin: 'found',
      stopGate: true,
      gates: true,
    };
    expect(dangersOf(demoJob('saltglass-row'), [finding, finding])).toEqual([
      expect.objectContaining({ heading: 'Something new', found: 'Something is wrong.', toDo: 'Mend it.' }),
    ]);
    expect(dangersOf(demoJob('saltglass-row'), [{ ...finding, origin: 'scheme' }])).toEqual([]);
    expect(dangersOf(demoJob('saltglass-row'), [{ ...finding, outcome: 'not-proven' }])).toEqual([]);
  });

  it('is not written where nothing found shuts a gate, nor for what nobody has looked at', () => {
    for (const name of demoNames) expect([name, letterOf(demoJob(name))]).toEqual([name, null]);
    const untold: Job = {
      ...demoJob('saltglass-row'),
      supply: { nominalV: 230, bonding: [], otherSources: [] },
    };
    expect(letterOf(untold)).toBeNull();
  });

  it('is written though a scheme would put it right: until then it is as it is', () => {
    const job = dangerousJobs['ST3 unsafe'];
    if (job === undefined) throw new Error('no job');
    const mending: Job = {
      ...job,
      schemes: job.schemes.map((scheme) => ({ ...scheme, remedies: [{ kind: 'new-board' as const }] })),
    };
    expect(letterOf(mending)?.dangers).toHaveLength(1);
  });

  it('tells several things from the gravest on, and counts them', () => {
    const job: Job = {
      ...demoJob('saltglass-row'),
      answers: dangerousJobs['ST3 unsafe']?.answers ?? [],
      readings: dangerousJobs['ST4 low']?.readings ?? [],
    };
    const letter = letterOf(job);
    expect(letter?.dangers.map(({ heading }) => heading)).toEqual([
      'A dangerous fuse box or supply',
      expect.stringMatching(/^Wiring that leaks/),
    ]);
    expect(letter?.opening[0]).toContain('there are 2 conditions');
  });

  it('says from whom, to whom, of which day, and leaves room for what was done and the receipt', () => {
    const letter = letterFor('ST3 unsafe');
    expect(letter).toMatchObject({
      date: '2026-11-27',
      dateWords: '27 November 2026',
      customer: { name: 'The occupier' },
      place: ['3 Saltglass Row', 'Saltmarrow'],
      demoNote: 'Demonstration firm: invented, not an offer.',
    });
    expect(letter.firm.name).toBe(library.firm.name);
    expect(letter.opening[0]).toMatch(/^On 18 November 2026 we looked/);
    for (const { lines } of [letter.done, letter.receipt])
      for (const { value } of lines) expect(value).toBe('');
    const [own] = Object.values(dangerousJobs);
    if (own === undefined) throw new Error('no job');
    expect(letterOf(own, ownLibrary())?.demoNote).toBeNull();
  });

  it.each([
    ['tenant', /landlord/],
    ['leaseholder', /owner of the building/],
    [undefined, /If the house is not yours/],
  ] as const)('asks for a copy to whoever answers for the wiring: %s', (tenure, words) => {
    const job = dangerousJobs['ST3 unsafe'];
    if (job === undefined) throw new Error('no job');
    const { tenure: _, ...site } = job.site;
    const letter = letterOf({ ...job, site: tenure === undefined ? site : { ...site, tenure } });
    expect(letter?.about.paragraphs.join(' ')).toMatch(words);
  });
});
