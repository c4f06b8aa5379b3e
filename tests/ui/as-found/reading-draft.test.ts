import { describe, expect, it } from 'vitest';
import { labelsOf } from '#drawing/label-of.ts';
import { reading } from '#model/installation.ts';
import { demoEstimate, demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { putReading } from '../../../ui/edits/readings.ts';
import { blankReading, draftOf, readingOf } from '../../../ui/elements/as-found/reading-draft.ts';
import { readingName, readingValue } from '../../../ui/elements/as-found/reading-words.ts';
import { edited, faultsOf } from '../edits/random-edits.ts';

const kinds = [
  'loop',
  'insulation',
  'zs',
  'ze',
  'pfc',
  'rcd',
  'polarity',
  'rcd-button',
  'afdd-button',
  'spd-indicator',
] as const;

describe('a reading being written', () => {
  it.each(demoNames)('gives every reading of %s back as it was', (name) => {
    const { readings } = demoJob(name);
    expect(readings.map((one) => readingOf(one.id, draftOf(one)))).toEqual(readings);
  });

  it.each(kinds)('is no reading of %s before it tells what was shown', (kind) => {
    expect(readingOf('new', { ...blankReading, kind })).toBeNull();
  });

  it.each(kinds)('is a reading of %s that the job takes, once it does', (kind) => {
    const job = demoJob('saltglass-row');
    const at = job.points[0]?.id ?? null;
    const circuit = job.circuits[0]?.id ?? null;
    const made = readingOf('new', { ...blankReading, kind, at, circuit, shown: 0.5, ok: true });
    expect(reading.safeParse(made).success).toBe(true);
    if (made === null) return;
    const after = edited(job, putReading(made, 'new'));
    expect(after.readings).toHaveLength(job.readings.length + 1);
    expect(faultsOf(after)).toEqual([]);
  });

  it('is told by what it is of, where it was taken and what was shown', () => {
    const labelOf = labelsOf(demoEstimate('saltglass-row').asFound.worked);
    const words = new Map(
      demoJob('saltglass-row').readings.map((one) => [
        one.id,
        `${readingName(one, labelOf)}: ${readingValue(one)}`,
      ]),
    );
    expect(words.get('ends-line1')).toBe('Line (r1), end to end: 0.45 Ω');
    expect(words.get('lk-ln-a-r1')).toBe('Line to neutral, from end A, linked at R1: 0.09 Ω');
    expect(words.get('cross-e-s1')).toBe('Line to earth, crossed at S1: 0.43 Ω');
    expect(words.get('insul-ln-e')).toBe('Insulation, line and neutral to earth, 500 V: 180 MΩ');
    expect(words.get('zs-cold-r6')).toBe('Zs at R6: 0.54 Ω');
    expect(words.get('pole-at-r1')).toBe('Polarity at R1: right');
    expect(words.get('pfc-intake')).toBe('Prospective fault current: 0.96 kA');
  });
});
