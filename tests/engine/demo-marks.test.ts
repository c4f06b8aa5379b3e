import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { demoMarks, demoNotice } from '#engine/demo-marks.ts';

const demo = demoLibrary();
const ownFirm = { name: 'Own', address: ['1 Own Yard'], contact: 'own@example.org' };
const own = {
  firm: ownFirm,
  prices: { ...demo.prices, source: 'Own merchant, November' },
  norms: { ...demo.norms, source: 'Own' },
};

describe('what is left of the demo library', () => {
  it('is all of it in the demo library itself', () => {
    expect(demoMarks(demo)).toEqual({ firm: true, prices: true, norms: true });
  });

  it('is nothing once firm, prices and norms are somebody’s own', () => {
    expect(demoMarks(own)).toEqual({ firm: false, prices: false, norms: false });
    expect(demoNotice(demoMarks(own))).toBeNull();
  });

  it.each(['name', 'address', 'vatNumber', 'contact'] as const)(
    'is the firm while it has the demo’s %s',
    (detail) => {
      const firm = { ...ownFirm, [detail]: demo.firm[detail] };
      expect(demoMarks({ ...own, firm })).toEqual({ firm: true, prices: false, norms: false });
    },
  );

  it('is the prices, or the norms, while they say of themselves that they are', () => {
    expect(demoMarks({ ...own, prices: demo.prices }).prices).toBe(true);
    expect(demoMarks({ ...own, norms: demo.norms }).norms).toBe(true);
  });

  it('is said of each part that is left, and of no other', () => {
    const none = { firm: false, prices: false, norms: false };
    expect(demoNotice({ ...none, prices: true })).toMatch(/^[^f]*prices/);
    expect(demoNotice({ ...none, norms: true })).toMatch(/^[^f]*minutes and hourly rate/);
    expect(demoNotice({ ...none, firm: true })).toMatch(/firm/);
    expect(demoNotice({ firm: true, prices: true, norms: true })).toMatch(/firm.*prices.*rate/);
  });
});
