import { about, type CountedLine, pieces } from './counted-line.ts';

/** The hand left these to judgement ("small", "consumable"): there must be something of each. */
const judged: readonly [number, string] = [
  5,
  'judgement: the hand says "small" or "consumable"; a few more or less go into the van',
];
const floatingPoint: readonly [number, string] = [0.001, 'floating point only'];

/**
 * What the first scheme of 3 Saltglass Row needs: three spurs, a boiler unit and an RCBO, all boards liftable.
 * Counted with pencil and paper from the drawing, not by this program. In the order of the list.
 * Source: common practice, no source; an invented house.
 */
export const spursCount: readonly CountedLine[] = [
  // Runs of 2.2, 2.3, 5.0 and 1.6 m.
  about(
    'Flat twin and earth cable 2.5/1.5 mm²',
    'cable-flat-2.5-1.5',
    [11.1, 'm'],
    [
      0.15,
      'W1 comes to 2.10 m from its drawn corners (0.41 down, 0.13 through the wall, 0.30 along, 0.56 up, 0.70 ends and slack); the hand rounded up to 2.2',
    ],
    '12 m cut (5 % waste)',
  ),
  about('Heat-resistant three-core flex 0.75 mm²', 'flex-0.75', [2, 'm'], floatingPoint), // from the unit W4 to the boiler
  about('Green/yellow single 2.5 mm²', 'earth-single-2.5', [0.6, 'm'], floatingPoint, '1 m'), // four box tails of 0.15 m
  // Eight ends and two cut ends.
  about('Green/yellow sleeving 3 mm', 'sleeving-earth-3', [1.2, 'm'], floatingPoint, 'one hank of 10 m'),
  pieces('RCBO B32 30 mA type A, to suit the board', 'rcbo-b32-30-a', 1), // fallback: small enclosure, RCBO and tails
  pieces('Twin switched socket-outlet', 'socket-twin', 3), // W1, W2, W3
  pieces('Switched fused unit with flex outlet', 'fused-unit-switched-flex', 1), // W4
  about(
    'Fuse BS 1362 3 A',
    'fuse-bs1362-3',
    [1, 'each'],
    [1, 'the product counts the spare that the hand put into what is bought'],
    'one more as a spare',
  ),
  pieces('Maintenance-free joint box 32 A, three-terminal, with clamps', 'joint-mf-32-3', 1), // in R8–R9, 6.0 m from R8
  pieces('Steel back box, twin, 35 mm', 'box-steel-twin-35', 3), // W1, W2, and R8 re-boxed
  pieces('Steel back box, single, 35 mm', 'box-steel-single-35', 1), // W4; 47 mm if the sheet of the unit asks for it
  pieces('Dry-lining back box, twin, 35 mm', 'box-dry-lining-twin-35', 1), // W3
  pieces('Grommet 20 mm', 'grommet-20', 2, 'pack of 10'), // R8
  // Four drops, each 0.1 m past the floor, and W4.
  about('Oval tube 20 mm', 'oval-20', [2.8, 'm'], [0.05, 'the hand rounded to 2.8'], 'one length of 3 m'),
  pieces('Putty pad', 'putty-pad-', 2), // boxes in party walls: R8 and W4
  about(
    'Clip 2.5 mm²',
    'clip-flat-2.5',
    [18, 'each'],
    [
      4,
      'the hand says "about 18"; by spacing, 300 mm along joists and none in holes, tubes or studs that cannot be reached, 18 come out, 19 with waste',
    ],
    'box of 100',
  ),
  pieces('Box screw with plug', 'screw-and-plug', 8), // two a masonry box; 16 in poor brick
  pieces('Joint-box screw', 'screw-wood-4x25', 2), // one joint box
  pieces('Accessory screw M3.5 × 50', 'screw-m3.5-50', 8), // two a plate
  pieces('Floor screw', 'screw-floor', 24), // six boards
  pieces('Noggin 300 mm', 'noggin-300', 4), // under cut boards
  // 2.4 m of chase 1.3 kg, box surrounds 0.9 kg.
  about(
    'One-coat plaster',
    'plaster-one-coat',
    [2.2, 'kg'],
    [
      0.7,
      'the product fills the chases net of the tube that lies in them and adds waste afterwards; both end in one bag of 5 kg',
    ],
    'one bag of 5 kg',
  ),
  about('PVA', 'pva', [1, 'each'], judged),
  about('Filler', 'filler', [1, 'each'], judged),
  about('Caulk', 'caulk', [1, 'each'], judged),
  pieces('Joist hole', null, 2), // labour, not a thing to buy
  pieces('RCD notice or information', 'notice-rcd', 1), // at the board
  pieces('Circuit chart', 'circuit-chart', 1), // at the board
  pieces('Two-colour notice', 'notice-mixed-colours', 1), // optional
  pieces('Minor works certificate', 'certificate-minor-works', 1), // one circuit
  about('Insulating tape', 'insulating-tape', [1, 'each'], judged),
  about('Blade', 'blade-multitool', [1, 'each'], judged),
  about('Dust mask', 'dust-mask', [1, 'each'], judged),
  about('Dust sheet', 'dust-sheet', [1, 'each'], judged),
  about('Rubble sack', 'rubble-sack', [2, 'each'], judged),
];

/** What goes along in case, by the open question that it answers: how many more of an item than are counted. */
export interface CarriedLine {
  readonly item: string;
  readonly id: string;
  readonly more: number;
  readonly question: string;
}

/** R1 and R6 are assumed to be 35 deep: one single and one twin box are carried, should they be found shallow. */
export const carriedCount: readonly CarriedLine[] = [
  { item: 'Steel back box, single, 35 mm', id: 'box-steel-single-35', more: 1, question: 'box/r1-hallway' },
  { item: 'Steel back box, twin, 35 mm', id: 'box-steel-twin-35', more: 1, question: 'box/r6-kitchen' },
];
