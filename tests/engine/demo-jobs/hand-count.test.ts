import { describe, expect, it } from 'vitest';
import { demoEstimate, schemeOf } from './demo-estimates.ts';
import { handCount } from './hand-count-saltglass.ts';

const scheme = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');

/**
 * Each line of the count by hand, the product's item for it, and how far the two may lie apart: 0 where both count
 * pieces; else a number of units, with the reason why they differ.
 */
const pairs: readonly {
  readonly hand: string;
  readonly item: string;
  readonly within: number;
  readonly why?: string;
}[] = [
  {
    hand: 'Flat twin and earth cable 2.5/1.5 mm²',
    item: 'cable-flat-2.5-1.5',
    within: 0.15,
    why: 'W1 comes to 2.10 m from its drawn corners (0.41 down, 0.13 through the wall, 0.30 along, 0.56 up, 0.70 ends and slack); the hand rounded up to 2.2',
  },
  { hand: 'Heat-resistant three-core flex 0.75 mm²', item: 'flex-0.75', within: 0 },
  { hand: 'Green/yellow single 2.5 mm²', item: 'earth-single-2.5', within: 0.001 },
  { hand: 'Green/yellow sleeving 3 mm', item: 'sleeving-earth-3', within: 0.001 },
  { hand: 'RCBO B32 30 mA type A, to suit the board', item: 'rcbo-b32-30-a', within: 0 },
  { hand: 'Twin switched socket-outlet', item: 'socket-twin', within: 0 },
  { hand: 'Switched fused unit with flex outlet', item: 'fused-unit-switched-flex', within: 0 },
  {
    hand: 'Fuse BS 1362 3 A',
    item: 'fuse-bs1362-3',
    within: 1,
    why: 'the product counts the spare that the hand put into what is bought',
  },
  {
    hand: 'Maintenance-free joint box 32 A, three-terminal, with clamps',
    item: 'joint-mf-32-3',
    within: 0,
  },
  { hand: 'Steel back box, twin, 35 mm', item: 'box-steel-twin-35', within: 0 },
  { hand: 'Steel back box, single, 35 mm', item: 'box-steel-single-35', within: 0 },
  { hand: 'Dry-lining back box, twin, 35 mm', item: 'box-dry-lining-twin-35', within: 0 },
  { hand: 'Grommet 20 mm', item: 'grommet-20', within: 0 },
  { hand: 'Oval tube 20 mm', item: 'oval-20', within: 0.05, why: 'the hand rounded to 2.8' },
  { hand: 'Putty pad', item: 'putty-pad-', within: 0 },
  {
    hand: 'Clip 2.5 mm²',
    item: 'clip-flat-2.5',
    within: 4,
    why: 'the hand says "about 18"; by spacing (300 mm along joists, none in holes, tubes or studs that cannot be reached) 14 come out',
  },
  { hand: 'Box screw with plug', item: 'screw-and-plug', within: 0 },
  { hand: 'Joint-box screw', item: 'screw-wood-4x25', within: 0 },
  { hand: 'Accessory screw M3.5 × 50', item: 'screw-m3.5-50', within: 0 },
  { hand: 'Floor screw', item: 'screw-floor', within: 0 },
  { hand: 'Noggin 300 mm', item: 'noggin-300', within: 0 },
  {
    hand: 'One-coat plaster',
    item: 'plaster-one-coat',
    within: 0.7,
    why: 'the product fills the chases net of the tube that lies in them and adds waste afterwards; both end in one bag of 5 kg',
  },
  { hand: 'RCD notice or information', item: 'notice-rcd', within: 0 },
  { hand: 'Circuit chart', item: 'circuit-chart', within: 0 },
  { hand: 'Two-colour notice', item: 'notice-mixed-colours', within: 0 },
  { hand: 'Minor works certificate', item: 'certificate-minor-works', within: 0 },
  { hand: 'Rubble sack', item: 'rubble-sack', within: 0 },
];

/** Left to judgement by the hand ("small", "consumable"): the product must only have something for each. */
const judged: Readonly<Record<string, string>> = {
  PVA: 'pva',
  Filler: 'filler',
  Caulk: 'caulk',
  'Insulating tape': 'tape',
  Blade: 'blade',
  'Dust mask': 'mask',
  'Dust sheet': 'sheet',
};

describe('the first scheme of 3 Saltglass Row against a count by hand', () => {
  it.each(pairs)('counts $hand', ({ hand, item, within, why }) => {
    const byHand = handCount.find((line) => line.item === hand);
    // An item that ends in a dash stands for all of its sizes.
    const lines = scheme.takeoff.filter((line) =>
      item.endsWith('-') ? line.item.startsWith(item) : line.item === item,
    );
    const measured = lines.reduce((sum, line) => sum + line.measured, 0);
    expect(byHand?.quantity, hand).not.toBeNull();
    expect(lines.length, `no line "${item}"`).toBeGreaterThan(0);
    expect(Math.abs(measured - (byHand?.quantity ?? 0)), why ?? hand).toBeLessThanOrEqual(within);
    if (within >= 1) expect(why).toBeDefined();
  });

  it('has something for every small thing', () => {
    for (const [hand, word] of Object.entries(judged)) {
      expect([hand, scheme.takeoff.some((line) => line.item.includes(word) && line.quantity > 0)]).toEqual([
        hand,
        true,
      ]);
    }
  });

  it('drills the two joist holes of W2 and no others', () => {
    const holes = scheme.runs.map((run) => [
      run.to.pointId,
      run.segments.reduce((sum, segment) => sum + segment.joistsCrossed, 0),
    ]);
    // W1 passes beneath the ground floor's joists, as the space under them allows; W3 runs along a bay, and its 200 mm
    // across meet none.
    expect(holes).toEqual([
      ['w1-living1', 0],
      ['w2-bedroom', 2],
      ['w3-bedroom', 0],
      ['w4-boiler1', 0],
    ]);
  });

  it('covers every line of the hand count, and only the joist holes are no thing to buy', () => {
    const covered = new Set([...pairs.map((pair) => pair.hand), ...Object.keys(judged), 'Joist hole']);
    expect(handCount.filter((line) => !covered.has(line.item))).toEqual([]);
  });

  it('buys 12 m of cable, one length of tube, one hank of sleeving, one bag of plaster and one box of clips', () => {
    const bought = (item: string) => scheme.price.bill.find((line) => line.item === item);
    expect(bought('cable-flat-2.5-1.5')?.chargedQuantity).toBe(12);
    expect(bought('oval-20')?.chargedQuantity).toBe(3);
    expect(bought('sleeving-earth-3')?.packQuantity).toBe(10);
    expect(bought('plaster-one-coat')?.packQuantity).toBe(5);
    expect(bought('clip-flat-2.5')?.packQuantity).toBe(100);
  });
});
