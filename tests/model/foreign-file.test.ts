import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { isForeign } from '#model/foreign-file.ts';
import { readJobText } from '#model/read-job.ts';
import { readLibraryText } from '#model/read-library.ts';
import { smallJob } from './small-job.ts';

const job = (text: string): boolean => {
  const read = readJobText(text);
  return !read.ok && isForeign('job', read.faults);
};
const library = (text: string): boolean => {
  const read = readLibraryText(text);
  return !read.ok && isForeign('library', read.faults);
};

describe('a file that is opened as a job', () => {
  it.each([
    '',
    'Dear Sir,',
    '%PDF-1.7',
    '[]',
    '7',
    'null',
    '{}',
    '{"format":"drawing"}',
    '{"name":"x","version":1}',
  ])('is none: %s', (text) => {
    expect(job(text)).toBe(true);
  });

  it('is one with slips in it, or of a newer version, all the same', () => {
    const faulty = { ...smallJob(), points: 7, unheard: true };
    expect(readJobText(JSON.stringify(faulty)).ok).toBe(false);
    expect(job(JSON.stringify(faulty))).toBe(false);
    expect(job(JSON.stringify({ ...smallJob(), version: 99 }))).toBe(false);
  });
});

describe('a file that is opened as a library', () => {
  it.each(['', '[]', '{}', JSON.stringify(smallJob())])('is none: %.20s', (text) => {
    expect(library(text)).toBe(true);
  });

  it('is one with a slip in it all the same', () => {
    const faulty = JSON.stringify({ ...demoLibrary(), norms: 7 });
    expect(readLibraryText(faulty).ok).toBe(false);
    expect(library(faulty)).toBe(false);
  });
});
