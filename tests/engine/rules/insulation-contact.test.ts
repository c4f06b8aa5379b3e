import { describe, expect, it } from 'vitest';
import { insulationContact } from '#engine/rules/insulation-contact.ts';
import { runOf, saidBy, segmentOf } from './facts-builder.ts';
import { houseOf, uprightOf } from './house-builder.ts';

describe('cable and insulation', () => {
  it('[RT10] advises by the length that lies in insulation', () => {
    const run = runOf('r', [
      segmentOf({ insulation: 'surrounded', lengthMm: 400 }),
      segmentOf({ insulation: 'none', lengthMm: 900 }),
      segmentOf({ insulation: 'surrounded', lengthMm: 100 }),
    ]);
    expect(saidBy(insulationContact, houseOf({ runs: [run] }))).toMatchObject([
      { outcome: 'advice', messageId: 'surrounded', actual: 500, unit: 'mm' },
    ]);
  });

  it('[RT10] advises to look where an insulated stud wall tells nothing', () => {
    const run = runOf('r', [uprightOf(1000, [0, 450], { medium: 'stud-cavity' })]);
    expect(saidBy(insulationContact, houseOf({ wall: { insulated: true }, runs: [run] }))).toMatchObject([
      { outcome: 'advice', messageId: 'insulatedWall' },
    ]);
  });

  it('[RT10] is silent where there is none', () => {
    expect(
      saidBy(insulationContact, houseOf({ runs: [runOf('r', [segmentOf({ insulation: 'none' })])] })),
    ).toEqual([]);
  });
});
