import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hrefOf, type JobRoute, jobHref, routeOf } from '../../../ui/controllers/router.ts';
import { kitParts, planViews, steps } from '../../../ui/job-view.ts';

const at = (href: string) => routeOf(new URL(href, 'http://here'));

describe('addresses', () => {
  it('lead to the list, the firm and the steps of a job', () => {
    expect(at('/')).toEqual({ page: 'jobs' });
    expect(at('/firm')).toEqual({ page: 'firm' });
    expect(at('/jobs/abc')).toMatchObject({ page: 'job', jobId: 'abc', step: 'as-found' });
    expect(at('/jobs/abc/kit?scheme=s&storey=g&on=p')).toEqual({
      page: 'job',
      jobId: 'abc',
      step: 'kit',
      compare: false,
      scheme: 's',
      storey: 'g',
      on: 'p',
      view: 'plan',
      circuit: null,
      part: 'bill',
      ask: null,
      a: null,
      b: null,
    });
    expect(at('/jobs/abc/ways/compare?a=x&b=y')).toMatchObject({
      step: 'ways',
      compare: true,
      a: 'x',
      b: 'y',
    });
  });

  it('lead to a picture of a circuit, and to the plan where they name no such picture', () => {
    expect(at('/jobs/abc/ways?view=circuit&circuit=c')).toMatchObject({ view: 'circuit', circuit: 'c' });
    expect(at('/jobs/abc/ways?view=drop')).toMatchObject({ view: 'drop', circuit: null });
    expect(at('/jobs/abc/ways?view=nope')).toMatchObject({ view: 'plan' });
  });

  it.each([
    '/job/abc',
    '/jobs',
    '/jobs/abc/nope',
    '/jobs/abc/kit/compare',
    '/jobs/abc/ways/compare/x',
    '/firm/x',
  ])('say that %s leads nowhere', (href) => {
    expect(at(href)).toEqual({ page: 'missing', path: href });
  });

  it('say that an id that no browser would write leads nowhere, without breaking', () => {
    expect(at('/jobs/%E0%A4%A/kit').page).toBe('missing');
  });

  it('open a job at its first step', () => {
    expect(at(jobHref('a b'))).toMatchObject({ page: 'job', jobId: 'a b', step: 'as-found' });
  });

  it('come back as the route that they were made from, whatever the ids are', () => {
    const id = fc.string({ minLength: 1, unit: 'grapheme' }).filter((text) => !/^\.{1,2}$/.test(text));
    const asked = fc.option(id);
    const route = fc.record({
      jobId: id,
      step: fc.constantFrom(...steps),
      compare: fc.boolean(),
      scheme: asked,
      storey: asked,
      on: asked,
      view: fc.constantFrom(...planViews),
      circuit: asked,
      part: fc.constantFrom(...kitParts),
      ask: asked,
      a: asked,
      b: asked,
    });
    fc.assert(
      fc.property(route, (made) => {
        const compare = made.compare && made.step === 'ways';
        const whole: JobRoute = {
          page: 'job',
          ...made,
          compare,
          a: compare ? made.a : null,
          b: compare ? made.b : null,
        };
        expect(at(hrefOf(whole))).toEqual(whole);
      }),
    );
  });
});
