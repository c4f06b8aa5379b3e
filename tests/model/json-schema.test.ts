import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { jobJsonSchema } from '#model/job-json-schema.ts';
import { cut, put } from './change.ts';
import { smallJob } from './small-job.ts';

const written: unknown = JSON.parse(
  readFileSync(new URL('../../data/job.schema.json', import.meta.url), 'utf8'),
);

describe('data/job.schema.json', () => {
  it('is in step with the schemas (npm run schema writes it)', () => {
    expect(written).toEqual(JSON.parse(JSON.stringify(jobJsonSchema())));
  });

  it('says what it is, in the 2020-12 dialect', () => {
    expect(written).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: expect.stringContaining('job file'),
      description: expect.stringContaining('mm'),
    });
  });

  const accepts = new Ajv2020({ strict: false, formats: { date: true } }).compile(written as object);

  it('accepts a sound job', () => {
    expect(accepts(smallJob())).toBe(true);
  });

  it.each([
    ['a missing key', cut(smallJob(), ['points', 0, 'label'])],
    ['an unknown key', put(smallJob(), ['points', 0, 'x'], 1)],
    ['an unknown word', put(smallJob(), ['points', 0, 'kind'], 'x')],
    ['a number out of range', put(smallJob(), ['legs', 0, 'lengthMm'], -1)],
    ['an id with a space', put(smallJob(), ['points', 0, 'id'], 'p one')],
  ])('refuses %s', (_, job) => {
    expect(accepts(job)).toBe(false);
  });
});
