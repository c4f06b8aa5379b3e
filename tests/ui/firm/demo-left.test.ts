import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { demoLeft } from '../../../ui/elements/firm/demo-left.ts';

const library = demoLibrary();
const unregistered = { ...library, terms: { ...library.terms, vat: 'not-registered' as const } };

describe('what is left of the demo firm', () => {
  it('is each detail that nobody has changed', () => {
    expect(demoLeft(library)[0]).toBe('the firm: name, address, telephone and VAT number');
    const named = { ...library, firm: { ...library.firm, name: 'Own name' } };
    expect(demoLeft(named)[0]).toBe('the firm: address, telephone and VAT number');
  });

  it('is no VAT number of a firm that is not registered: it is not shown, and nobody could change it', () => {
    expect(demoLeft(unregistered)[0]).toBe('the firm: name, address and telephone');
    const { vatNumber: _, ...without } = library.firm;
    expect(demoLeft({ ...unregistered, firm: without })[0]).toBe('the firm: name, address and telephone');
  });
});
