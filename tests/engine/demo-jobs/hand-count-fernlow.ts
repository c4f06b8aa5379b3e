import { about, type CountedLine, pieces } from './counted-line.ts';

/*
 * What schemes F and E of 18 Fernlow Close need, counted from the plan and the survey alone, before this program's own
 * take-off was looked at. Source: common practice, no source; an invented house.
 *
 * The house, as far as the count goes: solid ground floor, so every cable goes up. Walls of 100 block with board on dabs, 15 mm gap.
 * Ceiling at 2400, floor above at 2650, joists 220 deep at 400 along y, chipboard on them that does not lift:
 * a trap is cut at each place where a hand must get in. A cable in the void lies 110 below the boards, at 2540. A slot
 * is cut in the plasterboard, 20 mm oval tube lies in it, and it is filled.
 *
 * Each end of a cable 0.20 m at an accessory or a joint; slack the greater of 0.30 m and 5 % of the run.
 */

const roundedCable: readonly [number, string] = [
  0.15,
  'each run is rounded to the centimetre, and the depth of the void is read off the drawing',
];
const widthOfSlots = 'a slot is cut 25 to 35 mm wide, and the gap behind the board swallows some';
const oneTrap = 'one trap more or less, as the hand reaches';
const judged: readonly [number, string] = [1, 'judgement: one more or less goes into the van'];

/** Scheme F: A4, a fused unit at 900 along the wall, B1, B2 and B3 behind its fuse. */
export const fusedUnitCount: readonly CountedLine[] = [
  // A4 to the unit: up 0.45–2.54 = 2.09; along the bay 5.2–4.4 = 0.80; across 0.90; down 2.54–1.10 = 1.44: 5.23.
  // Ends 0.40, slack 0.30 (5 % is 0.26): 5.93. Unit to B1, B1 to B2, B2 to B3: 0.90 + 0.40 + 0.30 = 1.60 each, 4.80.
  about(
    'Flat twin and earth cable 2.5/1.5 mm²',
    'cable-flat-2.5-1.5',
    [10.73, 'm'],
    roundedCable,
    '12 m cut (5 % makes 11.3)',
  ),
  pieces('Twin switched socket-outlet', 'socket-twin', 3), // B1, B2, B3
  pieces('Switched fused unit', 'fused-unit-switched', 1), // above the worktop, so that one switch turns all three off
  // The unit comes with a 13 A fuse in it; one goes along as a spare.
  about(
    'Fuse BS 1362 13 A',
    'fuse-bs1362-13',
    [1, 'each'],
    [1, 'the maker fits one; the spare is a courtesy'],
  ),
  // Plugged to the block, the board as packing. 35 where two cables meet; the unit has two cables and no flex.
  pieces('Steel back box, twin, 35 mm', 'box-steel-twin-35', 3),
  pieces('Steel back box, single, 35 mm', 'box-steel-single-35', 1),
  // A4's own box was seen: 35 deep, lugs good, and takes the third cable. No other box is changed.
  // Box to plate, 0.15 each: three twins and the unit. A4 has its own.
  about('Green/yellow single 2.5 mm²', 'earth-single-2.5', [0.6, 'm'], [0.001, 'floating point only'], '1 m'),
  // Four cables, eight ends of 0.12. Nothing old is cut.
  about(
    'Green/yellow sleeving 3 mm',
    'sleeving-earth-3',
    [0.96, 'm'],
    [0.001, 'floating point only'],
    'one hank of 10 m',
  ),
  pieces('Brown sleeving', 'sleeving-brown-3', 0), // new colours throughout, brown is line everywhere
  // Tube to 0.1 past the ceiling, net of boxes: A4 up 2.40–0.485 + 0.10 = 2.02; the unit's drop 2.40–1.135 + 0.10 = 1.37;
  // between boxes 0.90 less 0.035 and 0.065 = 0.80, 0.90 less 0.13 = 0.77 twice: 2.34. Together 5.73.
  about(
    'Oval tube 20 mm',
    'oval-20',
    [5.7, 'm'],
    [0.6, 'measured from box edge or box centre, 0.10 or 0.14 past the ceiling'],
    'three lengths of 3 m: 2.02 + 0.80, 1.37 + 0.77 and 0.77',
  ),
  pieces('Grommet 20 mm', 'grommet-20', 0), // every cable enters its box in a tube
  // Along the bay 0.80 at 300: three spaces, four clips. None in holes and tubes.
  about(
    'Clip 2.5 mm²',
    'clip-flat-2.5',
    [4, 'each'],
    [2, 'one more on each side of a bend, where a trap lets one reach'],
    'box of 100',
  ),
  pieces('Box screw with plug', 'screw-and-plug', 8), // two a box, four boxes
  pieces('Accessory screw M3.5 × 50', 'screw-m3.5-50', 8), // two a plate, four plates on boxes behind a board
  // Traps: over A4, at the corner, over the unit. Eight screws each (six in the lid and its edges, two through battens).
  about('Floor screw', 'screw-floor', [24, 'each'], [8, oneTrap], 'from a box of 200'),
  about('Noggin 300 mm', 'noggin-300', [6, 'each'], [2, oneTrap]), // two battens a trap
  about('Chipboard trap', null, [3, 'each'], [1, oneTrap]), // labour, not a thing to buy
  about(
    'Joist hole',
    null,
    [2, 'each'],
    [1, 'whether a joist stands against the wall is not drawn'], // at 0.40 and 0.80 of the 0.90 across
  ),
  // Slots net of boxes: 1.92 + 1.27 + 2.34 = 5.5 m at 0.53 kg = 2.9; box surrounds three twins at 0.25 and a single at 0.15 =
  // 0.9.
  about(
    'One-coat plaster',
    'plaster-one-coat',
    [3.8, 'kg'],
    [1, widthOfSlots],
    'one bag of 5 kg (20 % makes 4.6)',
  ),
  pieces('Plasterboard patch', 'plasterboard-patch', 0), // the slots are filled, no ceiling is opened
  pieces('Putty pad', 'putty-pad-', 0), // no new box stands on the party wall
  pieces('Fire sealant', 'fire-sealant', 0), // nothing goes through the party wall
  pieces('RCBO', 'rcbo-', 0), // there is one, type A
  pieces('RCD notice', 'notice-rcd', 0), // no protection is added
  pieces('Two-colour notice', 'notice-mixed-colours', 0), // one set of colours
  pieces('Circuit chart', 'circuit-chart', 1),
  pieces('Minor works certificate', 'certificate-minor-works', 1), // one circuit
  about('PVA', 'pva', [1, 'each'], judged),
  about('Filler', 'filler', [1, 'each'], judged),
  about('Caulk', 'caulk', [1, 'each'], judged), // ceiling line at two drops
  about('Insulating tape', 'insulating-tape', [1, 'each'], judged),
  about('Multitool blade', 'blade-multitool', [2, 'each'], judged), // three traps and 5.5 m of board
  about('Dust mask', 'dust-mask', [2, 'each'], judged), // about two days
  about('Dust sheet', 'dust-sheet', [2, 'each'], judged), // kitchen below, bedroom above
  about('Rubble sack', 'rubble-sack', [2, 'each'], judged),
];

/** Scheme E: the leg A3–A4 cut over the wall, two joints, the ring carried through B1, B2 and B3. */
export const ringThroughCount: readonly CountedLine[] = [
  // Joint to B1: across 1.80, down 2.54–1.10 = 1.44: 3.24, ends 0.40, slack 0.30: 3.94. B1 to B2, B2 to B3: 1.60 each.
  // B3 to the other joint: up 1.44, across 3.60: 5.04, ends 0.40, slack 0.30 (5 % is 0.25): 5.74. Together 12.88.
  about(
    'Flat twin and earth cable 2.5/1.5 mm²',
    'cable-flat-2.5-1.5',
    [12.88, 'm'],
    roundedCable,
    '14 m cut (5 % makes 13.5)',
  ),
  pieces('Twin switched socket-outlet', 'socket-twin', 3),
  // One straight joint to each side of the cut: the void is closed by the floor, so maintenance-free, and 32 A.
  pieces('Maintenance-free joint box 32 A, three-terminal, with clamps', 'joint-mf-32-3', 2),
  pieces('Lever connector', 'lever-', 0), // the boxes have terminals of their own
  pieces('Joint-box screw', 'screw-wood-4x25', 4), // two a box
  pieces('Steel back box, twin, 35 mm', 'box-steel-twin-35', 3),
  about(
    'Green/yellow single 2.5 mm²',
    'earth-single-2.5',
    [0.45, 'm'], // three boxes of 0.15
    [0.001, 'floating point only'],
    '1 m',
  ),
  // Four cables, eight ends, and the two ends of the old cable that is cut: ten of 0.12.
  about(
    'Green/yellow sleeving 3 mm',
    'sleeving-earth-3',
    [1.2, 'm'],
    [0.001, 'floating point only'],
    'one hank of 10 m',
  ),
  pieces('Brown sleeving', 'sleeving-brown-3', 0), // new colours throughout
  // Drops at B1 and B3, 1.37 each; between boxes 0.77 twice. Together 4.28.
  about(
    'Oval tube 20 mm',
    'oval-20',
    [4.3, 'm'],
    [0.5, 'measured from box edge or box centre, 0.10 or 0.14 past the ceiling'],
    'two lengths of 3 m: 1.37 + 1.37 and 0.77 + 0.77',
  ),
  pieces('Grommet 20 mm', 'grommet-20', 0), // every cable enters its box in a tube
  // Across the joists all the way, in holes: only one beside each of the four entries of the joints.
  about(
    'Clip 2.5 mm²',
    'clip-flat-2.5',
    [4, 'each'],
    [4, 'the clamps of the joint boxes may do instead'],
    'box of 100',
  ),
  pieces('Box screw with plug', 'screw-and-plug', 6), // two a box, three boxes
  pieces('Accessory screw M3.5 × 50', 'screw-m3.5-50', 6), // two a plate
  // Traps: at the joints, over B1, over B3, and one between each two of these, since every joist is drilled: five of eight.
  about(
    'Floor screw',
    'screw-floor',
    [40, 'each'],
    [16, 'two traps more or less, as the drill reaches'],
    'from a box of 200',
  ),
  about('Noggin 300 mm', 'noggin-300', [10, 'each'], [4, 'two traps more or less, as the drill reaches']),
  about('Chipboard trap', null, [5, 'each'], [2, 'two traps more or less, as the drill reaches']),
  // 1.80 across 400: four; 3.60 across 400: eight, the ninth stands over B3 itself.
  about('Joist hole', null, [12, 'each'], [2, 'whether the joists at both ends are crossed is not drawn']),
  // Slots 1.27 + 1.27 + 0.77 + 0.77 = 4.1 m at 0.53 kg = 2.2; three twins at 0.25 = 0.75.
  about(
    'One-coat plaster',
    'plaster-one-coat',
    [2.9, 'kg'],
    [0.8, widthOfSlots],
    'one bag of 5 kg (20 % makes 3.5)',
  ),
  pieces('Plasterboard patch', 'plasterboard-patch', 0),
  pieces('Putty pad', 'putty-pad-', 0),
  pieces('Fire sealant', 'fire-sealant', 0),
  pieces('RCBO', 'rcbo-', 0),
  pieces('RCD notice', 'notice-rcd', 0),
  pieces('Two-colour notice', 'notice-mixed-colours', 0),
  pieces('Circuit chart', 'circuit-chart', 1),
  pieces('Minor works certificate', 'certificate-minor-works', 1),
  about('PVA', 'pva', [1, 'each'], judged),
  about('Filler', 'filler', [1, 'each'], judged),
  about('Caulk', 'caulk', [1, 'each'], judged),
  about('Insulating tape', 'insulating-tape', [1, 'each'], judged),
  about('Multitool blade', 'blade-multitool', [2, 'each'], judged), // five traps and 4.1 m of board
  about('Dust mask', 'dust-mask', [2, 'each'], judged),
  about('Dust sheet', 'dust-sheet', [2, 'each'], judged),
  about('Rubble sack', 'rubble-sack', [2, 'each'], judged),
];
