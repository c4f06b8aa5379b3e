import { describe, expect, it } from 'vitest';
import type { Worked } from '#engine/connections/worked.ts';
import { type CautionSubject, cautionSubjects, cautionsOf } from '#engine/work/cautions-of.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '../demo-jobs/demo-estimates.ts';
import { demoSchemes, firstWorked } from './worked-schemes.ts';

const subjectsOf = (job: Job, scheme?: Worked): readonly CautionSubject[] =>
  cautionsOf(scheme ?? firstWorked(job)).map(({ subject }) => subject);
const wordsOf = (job: Job, subject: CautionSubject): string =>
  cautionsOf(firstWorked(job)).find((one) => one.subject === subject)?.words ?? '';

const saltglass = demoJob('saltglass-row');
const withSupply = (supply: Partial<Job['supply']>): Job => ({
  ...saltglass,
  supply: { ...saltglass.supply, ...supply },
});
const withSite = (site: Partial<Job['site']>): Job => ({
  ...saltglass,
  site: { ...saltglass.site, ...site },
  answers: [],
});

describe('the cautions of a job', () => {
  it.each(demoSchemes())('begin with isolation and end with local rules: $name', ({ worked }) => {
    const said = subjectsOf(worked.job, worked);
    expect([said[0], said.at(-1)]).toEqual(['isolation', 'local-rules']);
    expect(said).toEqual(cautionSubjects.filter((subject) => said.includes(subject)));
  });

  it.each(demoSchemes())('call nothing safe or certified, and are short on drawings: $name', ({ worked }) => {
    for (const { words, short } of cautionsOf(worked)) {
      expect(
        words.replace('nothing is called safe', '').replace('Nothing here is a certificate', ''),
      ).not.toMatch(/\bsafe\b|certif/i);
      expect(short.length).toBeLessThan(100);
    }
  });

  it('name every other source, and ask to look where nobody has', () => {
    expect(wordsOf(withSupply({ otherSources: ['pv', 'battery'] }), 'other-sources')).toContain(
      'solar panels, a battery',
    );
    expect(wordsOf(withSupply({ otherSources: [] }), 'other-sources')).toBe('');
    expect(
      wordsOf(withSupply({ otherSources: [], certainty: { otherSources: 'unknown' } }), 'other-sources'),
    ).toMatch(/^Nobody has looked/);
  });

  it('tell of old colours, of those nobody recorded, and of none where all is new', () => {
    const coloured = (colours: 'old' | 'new' | undefined): Job => ({
      ...saltglass,
      circuits: saltglass.circuits.map(({ colours: _, ...circuit }) =>
        colours === undefined ? circuit : { ...circuit, colours },
      ),
    });
    // Red and black until 31 March 2006, BS 7671 Appendix 7; black of three phases since is L2, blue before was L3.
    expect(wordsOf(coloured('old'), 'colours')).toContain('red is the line, black the neutral');
    expect(wordsOf(coloured(undefined), 'colours')).toContain('not recorded');
    expect(wordsOf(coloured('new'), 'colours')).toBe('');
  });

  it('warn of asbestos where the house may be from before 2000, and stop where it is suspected', () => {
    // Control of Asbestos Regulations 2012: its use ended in 1999.
    expect(wordsOf(withSite({ builtBefore2000: true }), 'asbestos')).toContain('There may be asbestos');
    const { builtBefore2000: _, ...unknown } = saltglass.site;
    expect(wordsOf({ ...saltglass, site: unknown, answers: [] }, 'asbestos')).toContain(
      'There may be asbestos',
    );
    expect(wordsOf(withSite({ builtBefore2000: false, certainty: {} }), 'asbestos')).toBe('');
    const suspected = { question: 'asbestos', value: 'suspected', certainty: 'seen' } as const;
    expect(wordsOf({ ...saltglass, answers: [suspected] }, 'asbestos')).toContain('nothing is drilled');
  });

  it('go by what is cut and opened: nothing of floors, dust or pipes where all lies in channel', () => {
    const quarrel = demoSchemes().filter(({ name }) => name.startsWith('quarrel-court'));
    for (const { worked } of quarrel) {
      const surface = worked.runs.every(({ segments }) =>
        segments.every(({ medium }) => !medium.startsWith('void-') && medium !== 'loft'),
      );
      expect(surface).toBe(true);
      expect(subjectsOf(worked.job, worked)).not.toContain('floors');
    }
    expect(subjectsOf(saltglass)).toEqual(expect.arrayContaining(['services', 'dust', 'floors']));
  });

  it('warn of a heated floor that is opened', () => {
    const heated: Job = {
      ...saltglass,
      storeys: saltglass.storeys.map((storey) => ({
        ...storey,
        floor: { ...storey.floor, heated: true },
        rooms: storey.rooms.map(({ floor, ...room }) =>
          floor === undefined ? room : { ...room, floor: { ...floor, heated: true } },
        ),
      })),
    };
    expect(subjectsOf(saltglass)).not.toContain('heated-floor');
    expect(subjectsOf(heated)).toContain('heated-floor');
  });
});
