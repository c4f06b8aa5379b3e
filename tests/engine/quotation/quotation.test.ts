import { describe, expect, it } from 'vitest';
import { openedUp } from '#engine/labour/opened-up.ts';
import { includedOf } from '#engine/quotation/scope.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { newJob } from '../../../ui/edits/new-job.ts';
import { demoEstimate, demoJob, demoNames } from '../demo-jobs/demo-estimates.ts';
import { ownLibrary } from '../own-library.ts';
import { offering, quoted, textOf } from './quoted.ts';

const three = offering('saltglass-row', { schemes: ['spurs-rcbo', 'fused-beds', 'ring-to-w2'] });
const fernlow = offering('fernlow-close', { schemes: ['fused-unit', 'ring-to-b3', 'new-radial'] });

describe('what a quotation offers', () => {
  it('is what was chosen, in that order, three at the most, and each once', () => {
    const all = ['ring-to-w2', 'spurs-rcbo', 'ring-to-w2', 'fused-beds', 'off-spur-1'];
    const { paper } = quoted({ ...three, quoting: { schemes: all } });
    expect(paper.schemes.map(({ letter, schemeId }) => `${letter} ${schemeId}`)).toEqual([
      'A ring-to-w2',
      'B spurs-rcbo',
      'C fused-beds',
    ]);
  });

  it.each(demoNames)('is the cheapest of %s that does not fail, where nobody has chosen', (name) => {
    const { paper, result } = quoted(demoJob(name));
    expect(paper.schemes.map(({ schemeId }) => schemeId)).toEqual([result.cheapestId]);
    expect(paper.schemes[0]?.heading).toBe('The work');
    expect(paper.compared).toEqual([]);
  });

  it('has every sum of the estimate to the penny, and its parts add up', () => {
    for (const job of [
      three,
      fernlow,
      { ...three, terms: { ...three.terms, charging: 'hourly' } } satisfies Job,
    ]) {
      const { paper, result } = quoted(job);
      for (const { schemeId, price } of paper.schemes) {
        const { totals } = result.schemes.find(({ id }) => id === schemeId) ?? {};
        expect([price.netPence, price.vatPence, price.grossPence]).toEqual([
          totals?.netPence,
          totals?.vatPence,
          totals?.grossPence,
        ]);
        expect(price.netPence + price.vatPence).toBe(price.grossPence);
        expect((price.depositPence ?? 0) + price.balancePence).toBe(price.grossPence);
        const parts = price.parts.reduce((sum, { pence }) => sum + pence, 0);
        expect(parts).toBe(paper.kind === 'estimate' ? price.netPence : 0);
      }
    }
  });

  it('names work that is not on the drawing, and parking where it is charged', () => {
    const extras = [{ id: 'x1', words: 'Take the old storage heater away', typicalMin: 20 }];
    const { paper } = quoted({ ...three, extras, terms: { ...three.terms, parking: 'each-visit' } });
    const line = paper.included.find(({ words }) => words === 'Take the old storage heater away');
    expect(line).toEqual({ words: extras[0]?.words, forOptions: null });
    expect(paper.included.some(({ words }) => words === 'Parking')).toBe(true);
    expect(paper.excluded.some(({ words }) => words.startsWith('Parking'))).toBe(false);
    expect(paper.excluded.map(({ words }) => words)).toContain(
      'Taking away rubble and old parts, except where it says so above: to be agreed',
    );
    const { paper: without } = quoted(three);
    expect(without.included.some(({ words }) => words === 'Parking')).toBe(false);
  });

  it('parts a deposit from the balance', () => {
    const { paper } = quoted({ ...three, terms: { ...three.terms, depositPercent: 25 } });
    // A quarter of £977.99.
    expect(paper.schemes[0]?.price).toMatchObject({
      grossPence: 97799,
      depositPence: 24450,
      balancePence: 73349,
    });
    for (const { price } of paper.schemes) {
      expect(price.depositPence).toBe(Math.floor(price.grossPence / 4 + 0.5));
      expect(price.balancePence).toBe(price.grossPence - (price.depositPence ?? 0));
    }
    expect(paper.payment.paragraphs[0]).toContain('£244.50 for Option A');
    expect(quoted(three).paper.payment.paragraphs[0]).toBe('No deposit is asked for.');
  });

  it('says nothing of overhead and profit where an hour is at cost', () => {
    const own = ownLibrary();
    const norms = { ...own.norms, rateBasis: 'cost', overhead: { percent: 12 } } as const;
    const { paper, result } = quoted(
      { ...three, terms: { ...three.terms, charging: 'hourly' } },
      { ...own, norms },
    );
    const parts = paper.schemes[0]?.price.parts ?? [];
    expect(result.schemes[0]?.price.other.map(({ sum }) => sum)).toContain('overhead');
    expect(textOf(parts)).not.toMatch(/overhead|mark-up|margin/i);
    expect(parts.reduce((sum, { pence }) => sum + pence, 0)).toBe(paper.schemes[0]?.price.netPence);
  });
});

describe('where the work is felt', () => {
  it('has as many places of opened floor as are priced', () => {
    for (const job of [three, fernlow]) {
      const { paper, result } = quoted(job);
      for (const { schemeId, felt } of paper.schemes) {
        const scheme = result.schemes.find(({ id }) => id === schemeId);
        const places = textOf(felt.map(({ words }) => words)).matchAll(
          /(?:lifted|opened|floor) in (\d+) place/g,
        );
        const told = [...places].reduce((sum, [, count]) => sum + Number(count), 0);
        expect(told).toBe(openedUp(scheme?.labour ?? []).boards);
      }
    }
  });

  it('names the rooms that a look at the plan of 3 Saltglass Row names', () => {
    const [first] = quoted(three).paper.schemes;
    expect(first?.felt.map(({ room }) => room)).toEqual([
      'Hall',
      'Living room',
      'Kitchen',
      'Bedroom 1',
      'Bedroom 2',
      'First floor, between rooms',
    ]);
    expect(first?.felt.find(({ room }) => room === 'Bedroom 2')?.words).toContain(
      'R8: taken off, and a deeper box let in behind it',
    );
  });

  it('tells cable that stays in sight in a flat of concrete', () => {
    const { paper } = quoted(offering('quarrel-court', { schemes: ['ring-by-w2'] }));
    expect(textOf(paper.schemes[0]?.felt)).toContain('plastic cover strip for cable, which stays in sight');
  });
});

describe('a paper', () => {
  it('sets a fused branch against the loop once, where both are offered, with the loads that are named', () => {
    const [weighed, ...more] = quoted(fernlow).paper.weighed;
    expect(more).toEqual([]);
    expect(weighed?.paragraphs[0]).toContain(
      'Kettle 3.0 kW, toaster 1.4 kW and air fryer 1.7 kW at once draw 26.5 A',
    );
    expect(
      quoted(offering('fernlow-close', { schemes: ['fused-unit', 'new-radial'] })).paper.weighed,
    ).toEqual([]);
  });

  it('says of each option apart what only that one has', () => {
    const { paper } = quoted(fernlow);
    expect(paper.papers.map(({ forOptions }) => forOptions)).toEqual([
      'Options A and B',
      'Option C',
      'Options A and B',
      'Option C',
    ]);
    expect(paper.included.find(({ words }) => words.startsWith('Floors opened'))?.forOptions).toBe(
      'Options A and B',
    );
  });

  it('promises no testing that is not in the price', () => {
    const { paper } = quoted(fernlow);
    const testing = paper.included.filter(({ words }) => words.startsWith('Testing'));
    expect(testing.map(({ words, forOptions }) => [words, forOptions])).toEqual([
      ['Testing what is there before it is touched and all that was worked on afterwards', 'Options A and B'],
      [
        'Testing the supply and the fuse box before anything new is joined to them and all that was worked on afterwards',
        'Option C',
      ],
    ]);
    for (const name of demoNames)
      for (const scheme of demoEstimate(name).schemes) {
        const said = includedOf([{ letter: 'A', scheme }])
          .map(({ words }) => words)
          .join('; ');
        const priced = (task: string): boolean =>
          scheme.labour.some((one) => one.task === task && one.quantity > 0);
        expect(said.includes('what is there before it is touched'), scheme.id).toBe(priced('verify-circuit'));
        expect(said.includes('the supply and the fuse box'), scheme.id).toBe(priced('verify-supply'));
        expect(said.includes('worked on afterwards'), scheme.id).toBe(priced('test-circuit'));
      }
  });

  it('withholds a way that fails and is a draft then', () => {
    const { paper } = quoted(offering('saltglass-row', { schemes: ['two-on-one'] }), ownLibrary());
    expect(paper.schemes[0]?.withheld).toContain('does not meet the wiring rules');
    expect(paper.draft).not.toBeNull();
    expect(paper.beforeSending.filter(({ weight }) => weight === 'must').map(({ where }) => where)).toEqual([
      'ways',
    ]);
  });

  it('is no draft once all that it must have is there', () => {
    const { paper } = quoted(three, ownLibrary());
    expect([paper.draft, paper.demoNote]).toEqual([null, null]);
    expect(paper.notIssued).toMatch(/^Not issued/);
    const unready = quoted(three).paper;
    expect(unready.draft).not.toBeNull();
    expect(unready.notIssued).toBeUndefined();
  });

  it.each([
    ['the firm has no address', { firm: { ...ownLibrary().firm, address: [] } }, 'firm'],
    ['VAT is charged without a number', { firm: { name: 'Own', address: ['1'], contact: '1' } }, 'firm'],
  ])('is a draft while %s', (_, change, where) => {
    const { paper } = quoted(three, { ...ownLibrary(), ...change });
    expect(paper.draft).not.toBeNull();
    expect(paper.beforeSending[0]).toMatchObject({ weight: 'must', where });
  });

  it('is a draft while some of the work has no price, and warns of old prices', () => {
    const own = ownLibrary();
    const musts = (library: Library, job: Job = three) => {
      const { paper } = quoted(job, library);
      return paper.beforeSending.filter(({ weight }) => weight === 'must').map(({ words }) => words);
    };
    expect(musts(own)).toEqual([]);
    const { norms, prices } = own;
    expect(musts({ ...own, norms: { ...norms, tasks: [] } })).toEqual([
      'Some of the work has no minutes in the labour norms: it counts as nothing.',
    ]);
    expect(musts({ ...own, prices: { ...prices, items: [] } })).toEqual([
      'The price list has no price for some of the material: it counts as nothing.',
    ]);
    const parked = { ...three, terms: { ...three.terms, parking: 1 } };
    expect(musts(own, parked)).toEqual([]);
    expect(musts({ ...own, norms: { ...norms, sums: [] } }, parked)).toEqual([
      'A sum beside materials and labour has no figure: it counts as nothing.',
    ]);
    const warned = (library: Library) =>
      quoted(three, library).paper.beforeSending.filter(({ words }) => words.includes(' old, up to '));
    expect(warned(own)).toEqual([]);
    const old = { ...prices, date: '2025-01-01', items: prices.items.map(({ date: _, ...rest }) => rest) };
    expect(warned({ ...own, prices: old })).toMatchObject([{ weight: 'should', where: 'firm' }]);
    expect(warned({ ...own, prices: { ...old, staleDays: 9999 } })).toEqual([]);
  });

  it('asks who the customer is only while the right to cancel hangs on it', () => {
    const asks = (quoting: Job['quoting']) =>
      quoted({ ...three, quoting: { ...three.quoting, ...quoting } }, ownLibrary()).paper.beforeSending.some(
        ({ words }) => words.startsWith('Say whether the customer is a consumer'),
      );
    expect([
      asks({}),
      asks({ customer: 'consumer' }),
      asks({ customer: 'business' }),
      asks({ agreedAt: 'firms-premises' }),
      asks({ customer: 'consumer', agreedAt: 'customers-home' }),
    ]).toEqual([true, true, false, false, false]);
  });

  it('speaks of surge protection that is wanted or open, as the price has it', () => {
    const remedy = { kind: 'new-board', at: three.boards[0]?.id ?? '' } as const;
    const said = (value: 'wanted' | 'declined' | null, isNew: boolean) => {
      const answers = three.answers.filter(({ question }) => question !== 'surge-protection');
      const job: Job = {
        ...three,
        answers:
          value === null
            ? answers
            : [...answers, { question: 'surge-protection', value, certainty: 'seen' as const }],
        schemes: three.schemes.map((one) => (isNew ? { ...one, remedies: [...one.remedies, remedy] } : one)),
      };
      const text = textOf(quoted(job, ownLibrary()).paper);
      return [
        text.includes('You do not want surge protection in the new fuse box'),
        text.includes('You would like surge protection'),
      ];
    };
    expect([said(null, true), said('declined', true), said('wanted', true)]).toEqual([
      [true, false],
      [false, false],
      [false, false],
    ]);
    expect([said('wanted', false), said(null, false)]).toEqual([
      [false, true],
      [false, false],
    ]);
  });

  it('never prints what is for the electrician alone', () => {
    const { beforeSending, ...printed } = quoted(three).paper;
    const text = textOf(printed);
    expect(beforeSending.length).toBeGreaterThan(3);
    for (const { words } of beforeSending) expect(text).not.toContain(words);
  });

  it('says "to be agreed" of what nobody has said, and what was said when it is', () => {
    const silent = textOf(quoted(three, ownLibrary()).paper);
    for (const words of [
      'When we can begin: to be agreed',
      'When the price is due: to be agreed',
      'How you can pay: to be agreed',
    ])
      expect(silent).toContain(words);
    const own = ownLibrary();
    const firm = {
      ...own.firm,
      paymentDays: 14,
      paymentWays: 'bank transfer',
      guarantee: 'Two years on our work',
    };
    const job: Job = {
      ...three,
      quoting: { ...three.quoting, start: 'from 4 January' },
      terms: { ...three.terms, furniture: 'customer' },
    };
    const told = textOf(quoted(job, { ...own, firm }).paper);
    for (const words of [
      'When we can begin: from 4 January',
      'is due 14 days after the invoice',
      'bank transfer',
      'Guarantee: Two years',
      'please clear about a metre',
    ])
      expect(told).toContain(words);
    expect(told).not.toContain('to be agreed.');
  });

  it('tells a business nothing of a consumer’s rights, and of whom they are where nobody said who the customer is', () => {
    const right = (customer: 'business' | 'consumer' | undefined): string => {
      const quoting = customer === undefined ? {} : { customer };
      const { beforeSending: _, ...printed } = quoted(offering('saltglass-row', quoting)).paper;
      return textOf(printed);
    };
    expect(right('business')).not.toMatch(/the law gives you|pay less|right to cancel/i);
    expect(right('consumer')).toContain('Whatever is said here, the law gives you the right to work done');
    expect(right(undefined)).toContain('Whatever is said here, if you are a consumer the law gives you');
  });

  it('holds until the last day that the terms say', () => {
    expect(quoted(three).paper.validUntil).toBe('2026-12-25');
    const { validDays: _, ...terms } = three.terms;
    const { validDays: __, ...firmTerms } = ownLibrary().terms;
    const open = quoted({ ...three, terms }, { ...ownLibrary(), terms: firmTerms }).paper;
    expect([open.validUntil, open.validWords]).toEqual([null, 'How long it holds: to be agreed']);
  });

  it('explains the trade words that it uses, and no others', () => {
    const { glossary } = quoted(three).paper;
    expect(glossary.map(({ word }) => word)).toContain('RCBO');
    expect(glossary.map(({ word }) => word)).not.toContain('Main bonding');
    expect(glossary.map(({ word }) => word)).toEqual(glossary.map(({ word }) => word).toSorted());
  });

  it('calls nothing safe or certified', () => {
    for (const job of [three, fernlow, demoJob('quarrel-court'), demoJob('saltglass-row-quoting')]) {
      const text = textOf(quoted(job).paper).replace(
        'Nothing in it says that the wiring of the house is safe',
        '',
      );
      expect(text).not.toMatch(/\b(?:is|are|made|perfectly) safe\b|\bcertified\b/i);
    }
  });

  it('comes of a job with nothing in it, and is the same twice', () => {
    const terms = { labour: 'typical', vat: 'standard' } as const;
    const bare = newJob({ reference: '', title: '', terms });
    const { paper } = quoted(bare);
    expect([paper.kind, paper.schemes, paper.cancellation]).toEqual(['estimate', [], null]);
    expect(paper.beforeSending.some(({ where, weight }) => where === 'ways' && weight === 'must')).toBe(true);
    expect(JSON.stringify(quoted(three).paper)).toBe(JSON.stringify(quoted(three).paper));
  });
});
