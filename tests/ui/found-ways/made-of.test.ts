import { describe, expect, it } from 'vitest';
import { labelsOf } from '#drawing/label-of.ts';
import { demoEstimate, demoNames, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { madeOf } from '../../../ui/found-ways/made-of.ts';

const told = (schemeId: string): string => {
  const result = demoEstimate('saltglass-row');
  const { scheme } = schemeOf(result, schemeId).worked;
  return scheme === null ? '' : madeOf(scheme, labelsOf(result.asFound.worked));
};

describe('what a scheme is made of', () => {
  it('is one line by connections, in the order of the points', () => {
    expect(told('spurs-rcbo')).toBe(
      'W1 spur from R1 (a way pinned) · W2 spur from a joint in R8–R9 · W3 spur from R8 · W4 fused spur from R6 · with an RCBO',
    );
    expect(told('ring-to-w2')).toMatch(/W2 looped in between R8 and R9/);
    expect(told('fused-beds')).toMatch(/behind one fused unit from R8/);
  });

  it.each(demoNames)('names no thing by its id, in %s', (name) => {
    const result = demoEstimate(name);
    const labelOf = labelsOf(result.asFound.worked);
    const ids = [...result.asFound.worked.job.points, ...result.asFound.worked.job.legs].map(({ id }) => id);
    for (const { worked } of result.schemes) {
      const words = worked.scheme === null ? '' : madeOf(worked.scheme, labelOf);
      for (const id of ids) expect(words.split(/[ ,–]/)).not.toContain(id);
    }
  });
});
