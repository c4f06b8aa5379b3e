import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildThings } from '#engine/connections/build-things.ts';
import { plateOfPoint, platesSaid } from '#engine/quotation/plate-said.ts';
import { accessoryDemands } from '#engine/takeoff/accessory-lines.ts';
import { finish } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { inputOf, newEdge, pointOf, wanted } from '#tests/engine/connections/wiring-builder.ts';
import { workedOf } from '#tests/engine/takeoff/worked-builder.ts';
import { demoJob } from '../demo-jobs/demo-estimates.ts';
import { ownLibrary } from '../own-library.ts';
import { quoted } from './quoted.ts';

const saltglass = demoJob('saltglass-row');
const blackJob: Job = { ...saltglass, terms: { ...saltglass.terms, finish: 'black' } };
const materials = (job: Job, library = ownLibrary()): string | undefined =>
  quoted(job, library).paper.included.find(({ words }) => words.startsWith('All cable'))?.words;
const askedLine = (job: Job, label: string, library = ownLibrary()): string | undefined =>
  quoted(job, library).paper.asked.find((words) => words.startsWith(`${label}: `));
const withPoint = (job: Job, label: string, change: Partial<Job['points'][number]>): Job => ({
  ...job,
  points: job.points.map((point) => (point.label === label ? { ...point, ...change } : point)),
});

describe('the plates on the customer’s paper', () => {
  it('are white plastic where nobody chose, at each point and in what is in the price', () => {
    expect(materials(saltglass)).toBe('All cable, white plastic plates, boxes and fixings');
    expect(askedLine(saltglass, 'W1')).toMatch(/^W1: double socket, white plastic, /);
  });

  it('are what the job says', () => {
    expect(materials(blackJob)).toBe('All cable, black metal plates, boxes and fixings');
    for (const label of ['W1', 'W2', 'W3', 'W4'])
      expect(askedLine(blackJob, label)).toContain(', black metal, ');
  });

  it('are what the firm says where job and point are silent', () => {
    const own = ownLibrary();
    const firm = { ...own, terms: { ...own.terms, finish: 'polished' as const } };
    expect(materials(saltglass, firm)).toBe('All cable, polished metal plates, boxes and fixings');
    expect(askedLine(saltglass, 'W1', firm)).toContain(', polished metal, ');
    expect(askedLine(blackJob, 'W1', firm)).toContain(', black metal, ');
  });

  it('are told apart by point where they differ', () => {
    const mixed = withPoint(blackJob, 'W2', { finish: 'white' });
    expect(materials(mixed)).toBe(
      'All cable, plates in black metal (W1, W3 and W4) and white plastic (W2), boxes and fixings',
    );
    expect([askedLine(mixed, 'W1'), askedLine(mixed, 'W2')].map((words) => words?.split(', ')[1])).toEqual([
      'black metal',
      'white plastic',
    ]);
  });

  it('leave the look of metal open where nobody chose it, and are plastic where they are weatherproof', () => {
    expect(askedLine(withPoint(saltglass, 'W1', { features: ['metal'] }), 'W1')).toContain(
      ', metal, its look to be agreed, ',
    );
    const outside = withPoint(blackJob, 'W1', { features: ['ip66'] });
    expect(askedLine(outside, 'W1')).toMatch(/^W1: double socket, weatherproof plastic, /);
    expect(materials(outside)).toContain('weatherproof plastic (W1)');
  });

  it('are not said of what has none', () => {
    expect(plateOfPoint({ kind: 'joint', features: [] }, { finish: 'black' }, {})).toBeNull();
    expect(platesSaid({ job: saltglass, things: workedOf({ points: [pointOf('a')] }).things })).toBeNull();
  });

  it('are those of the list, whoever chose: asked for, in the price and bought alike', () => {
    const look = fc.option(fc.constantFrom(...finish.options), { nil: undefined });
    const features = fc.constantFrom<readonly ('metal' | 'usb' | 'ip66')[]>([], ['metal'], ['usb'], ['ip66']);
    fc.assert(
      fc.property(look, look, look, features, (ofPoint, ofJob, ofFirm, has) => {
        const of = (one: typeof ofPoint) => (one === undefined ? {} : { finish: one });
        const wiring = {
          points: [pointOf('a'), wanted('w', { features: [...has], ...of(ofPoint) })],
          newEdges: [newEdge('l1', 'a', 'w')],
          job: { terms: { labour: 'typical', vat: 'standard', ...of(ofJob) } },
        } as const;
        const things = buildThings({ ...inputOf(wiring), firmTerms: of(ofFirm) });
        const worked = { ...workedOf(wiring), things };
        const point = worked.job.points.find(({ id }) => id === 'w') ?? expect.fail('no point');
        const asked = plateOfPoint(point, of(ofJob), of(ofFirm));
        const item = accessoryDemands(worked).find(({ causes }) => causes.includes('w'))?.item ?? '';
        const bought = /-(brushed|polished|black|metal|ip66)/.exec(item)?.[1] ?? 'white';
        const word = { white: 'white plastic', metal: 'metal', ip66: 'weatherproof plastic' }[bought];
        const words = word ?? `${bought} metal`;
        expect(asked?.split(',')[0]).toBe(words);
        expect(platesSaid(worked)).toBe(`${words} plates`);
      }),
    );
  });
});
