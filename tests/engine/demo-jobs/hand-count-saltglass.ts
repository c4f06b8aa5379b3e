/** One line of a material list counted by hand from a drawing. */
export interface HandCountLine {
  /** The thing in a buyer's words. */
  readonly item: string;
  /** What the job uses, in `unit`; null where the count by hand left it to judgement ("small"). */
  readonly quantity: number | null;
  readonly unit: 'each' | 'm' | 'kg';
  /** What is bought, where that is more than what is used; null when the two are one. */
  readonly bought: string | null;
  /** Where it goes, or how it was counted. */
  readonly remark: string;
}

/**
 * What the first scheme of 3 Saltglass Row needs: three spurs, a boiler unit and an RCBO, all boards liftable.
 * Counted with pencil and paper from the drawing, not by this program. In the order of the list.
 * Source: common practice, no source; an invented house.
 */
export const handCount: readonly HandCountLine[] = [
  line(
    'Flat twin and earth cable 2.5/1.5 mm²',
    11.1,
    'm',
    'runs of 2.2, 2.3, 5.0 and 1.6 m',
    '12 m cut (5 % waste)',
  ),
  line('Heat-resistant three-core flex 0.75 mm²', 2, 'm', 'from the unit W4 to the boiler'),
  line('Green/yellow single 2.5 mm²', 0.6, 'm', 'four box tails of 0.15 m', '1 m'),
  line('Green/yellow sleeving 3 mm', 1.2, 'm', 'eight ends and two cut ends', 'one hank of 10 m'),
  line('RCBO B32 30 mA type A, to suit the board', 1, 'each', 'fallback: small enclosure, RCBO and tails'),
  line('Twin switched socket-outlet', 3, 'each', 'W1, W2, W3'),
  line('Switched fused unit with flex outlet', 1, 'each', 'W4'),
  line('Fuse BS 1362 3 A', 1, 'each', 'W4', 'one more as a spare'),
  line('Maintenance-free joint box 32 A, three-terminal, with clamps', 1, 'each', 'in R8–R9, 6.0 m from R8'),
  line('Steel back box, twin, 35 mm', 3, 'each', 'W1, W2, and R8 re-boxed'),
  line('Steel back box, single, 35 mm', 1, 'each', 'W4; 47 mm if the sheet of the unit asks for it'),
  line('Dry-lining back box, twin, 35 mm', 1, 'each', 'W3'),
  line('Grommet 20 mm', 2, 'each', 'R8', 'pack of 10'),
  line('Oval tube 20 mm', 2.8, 'm', 'four drops, each 0.1 m past the floor, and W4', 'one length of 3 m'),
  line('Putty pad', 2, 'each', 'boxes in party walls: R8 and W4'),
  line('Clip 2.5 mm²', 18, 'each', 'about', 'box of 100'),
  line('Box screw with plug', 8, 'each', 'two a masonry box; 16 in poor brick'),
  line('Joint-box screw', 2, 'each', 'one joint box'),
  line('Accessory screw M3.5 × 50', 8, 'each', 'two a plate'),
  line('Floor screw', 24, 'each', 'six boards'),
  line('Noggin 300 mm', 4, 'each', 'under cut boards'),
  line('One-coat plaster', 2.2, 'kg', '2.4 m of chase 1.3 kg, box surrounds 0.9 kg', 'one bag of 5 kg'),
  line('PVA', null, 'each', 'small'),
  line('Filler', null, 'each', 'small'),
  line('Caulk', null, 'each', 'small'),
  line('Joist hole', 2, 'each', 'labour, not a thing to buy'),
  line('RCD notice or information', 1, 'each', 'at the board'),
  line('Circuit chart', 1, 'each', 'at the board'),
  line('Two-colour notice', 1, 'each', 'optional'),
  line('Minor works certificate', 1, 'each', 'one circuit'),
  line('Insulating tape', null, 'each', 'consumable'),
  line('Blade', null, 'each', 'consumable'),
  line('Dust mask', null, 'each', 'consumable'),
  line('Dust sheet', null, 'each', 'consumable'),
  line('Rubble sack', 2, 'each', 'consumable'),
];

function line(
  item: string,
  quantity: number | null,
  unit: HandCountLine['unit'],
  ...[remark, bought]: readonly [remark: string, bought?: string]
): HandCountLine {
  return { item, quantity, unit, bought: bought ?? null, remark };
}
