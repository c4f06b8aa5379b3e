import { describe, expect, it } from 'vitest';
import { demoWarning } from '../../../ui/elements/papers/demo-warning.ts';

const none = { firm: false, prices: false, norms: false };

describe('the warning before papers go out', () => {
  it('is silent once nothing of the demo is left', () => {
    expect(demoWarning(none)).toBeNull();
  });

  it.each([
    [{ ...none, firm: true }, /firm’s details: put in your own/, /invented/],
    [{ ...none, prices: true }, /invented prices/, /details|minutes/],
    [{ ...none, norms: true }, /invented labour minutes/, /details|prices/],
    [{ firm: true, prices: true, norms: false }, /details and its invented prices/, /minutes/],
  ])('names what is left, and nothing else: %j', (marks, said, unsaid) => {
    expect(demoWarning(marks)).toMatch(said);
    expect(demoWarning(marks)).not.toMatch(unsaid);
  });
});
