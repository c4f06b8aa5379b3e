import { about, type CountedLine, pieces } from './counted-line.ts';

/*
 * What the first scheme of flat 5, Quarrel Court, needs, counted from the plan and the survey alone, before this
 * program's own take-off was looked at: W1 spurred off C7, the ring carried through W2, the heater's unit W3 off C3.
 * Source: common practice, no source; an invented flat.
 *
 * Concrete walls, everything on the surface, channel 80 above the floor. The ring's own channel runs from C2 past W2
 * and from C3 past W3. Between C2 and W2 the old cable comes out of it, and the new one takes its place. Beside W3
 * the ring stays in it, and a second cable with it would be grouped below 20 A: W3 has a channel of its own, resting
 * on the ring's, at 100. The board keeps what it has.
 *
 * Each end of a cable 0.20 m; slack the greater of 0.30 m and 5 % of the run.
 */

const judged: readonly [number, string] = [1, 'judgement: one more or less goes into the van'];

/** The scheme `ring-by-w2`. */
export const ringByW2Count: readonly CountedLine[] = [
  // W1: down 0.22, along 2.80–0.80 = 2.00, up 0.22: 2.44, ends 0.40, slack 0.30: 3.14.
  // C2 to W2: down 0.22, along 3.20–1.20 = 2.00, up 0.22, ends and slack 0.70: 3.14. C3's side of the old cable is cut
  // 0.45 short of C2's end of that stretch, so that it reaches up into W2 without a joint.
  // W3: down 0.20, along 3.40–2.00 = 1.40, up 0.20: 1.80, ends and slack 0.70: 2.50. Together 8.78.
  about(
    'Flat twin and earth cable 2.5/1.5 mm²',
    'cable-flat-2.5-1.5',
    [8.78, 'm'],
    [0.15, 'W3’s channel may lie 20 mm lower, which makes its run 2.54'],
    '10 m cut (5 % makes 9.2)',
  ),
  // The heater draws 6.5 A, and its lead must suit 13 A as long as that fuse stands before it: 1.5, not 1.0 or 0.75.
  about(
    'Three-core flex 1.5 mm²',
    'flex-1.5',
    [2, 'm'],
    [1, 'from the outlet to the heater, as it hangs'],
    '2 m',
  ),
  pieces('Twin switched socket-outlet', 'socket-twin', 2), // W1, W2
  pieces('Switched fused unit with flex outlet', 'fused-unit-switched-flex', 1), // W3
  about(
    'Fuse BS 1362 13 A',
    'fuse-bs1362-13',
    [1, 'each'],
    [1, 'the maker fits one; the spare is a courtesy'],
  ),
  pieces('Surface box, twin, 35 mm', 'box-surface-twin-35', 2), // W2 holds two cables of the ring
  // W3 holds one cable and the flex; 47 if the sheet of the unit asks for it.
  pieces('Surface box, single, 35 mm', 'box-surface-single-35', 1),
  // C2, C3 and C7 were seen: 35 deep, lugs good. C3 and C7 take a third cable.
  pieces('Green/yellow single 2.5 mm²', 'earth-single-2.5', 0), // moulded boxes have nothing to be earthed
  // Three new cables, six ends, and the end of the old cable that is cut for W2: seven of 0.12.
  about(
    'Green/yellow sleeving 3 mm',
    'sleeving-earth-3',
    [0.84, 'm'],
    [0.001, 'floating point only'],
    'one hank of 10 m',
  ),
  // Red and black meet brown and blue at C7: single-phase, one pair each, which explains itself; the notice tells it.
  pieces('Brown sleeving', 'sleeving-brown-3', 0),
  // W1 0.22 + 2.00 + 0.22; W3 0.20 + 1.40 + 0.20; at W2 two risers of 0.22 side by side, one for each leg of the ring.
  about(
    'Mini-channel 16 × 16',
    'channel-16x16',
    [4.68, 'm'],
    [0.3, 'to box edge or box centre; W3’s channel may lie 20 mm lower'],
    'two lengths of 3 m: 2.00 + four of 0.22, and 1.40 + two of 0.20',
  ),
  pieces('Mini-channel 25 × 16', 'channel-25x16', 0), // none holds two cables
  pieces('Flat bend 16 × 16', 'channel-bend-16x16', 4), // W1 two, W3 two; W2's risers stand on the old channel
  pieces('End cap 16 × 16', 'channel-end-16x16', 0), // every channel ends at a box or on another
  pieces('Coupler 16 × 16', 'channel-coupler-16x16', 0), // no straight is longer than 3 m
  // Boxes: three of two. Channel at about 500, the plaster on concrete being no ground for glue alone: W1's long stretch
  // five, W3's four, and one for each of the six risers: 15.
  about(
    'Screw with plug',
    'screw-and-plug',
    [21, 'each'],
    [4, 'channel is screwed every 400 to 600'],
    'box of 100',
  ),
  pieces('Plasterboard fixing', 'plasterboard-fixing', 0), // concrete
  pieces('Metal clip', 'clip-metal', 0), // what lies 80 above a floor cannot hang into a way out
  pieces('Clip 2.5 mm²', 'clip-flat-2.5', 0), // all in channel
  pieces('Grommet 20 mm', 'grommet-20', 0), // moulded boxes
  pieces('Accessory screw M3.5 × 50', 'screw-m3.5-50', 0), // the screws that come with the plates do
  pieces('Oval tube 20 mm', 'oval-20', 0),
  pieces('Joint box', 'joint-', 0), // the cut end itself goes into W2
  pieces('Lever connector', 'lever-', 0),
  pieces('Putty pad', 'putty-pad-', 0), // W3 stands on the party wall, not in it
  pieces('Fire sealant', 'fire-sealant', 0), // nothing new goes through a wall
  pieces('Floor screw', 'screw-floor', 0),
  pieces('Noggin 300 mm', 'noggin-300', 0),
  pieces('One-coat plaster', 'plaster-one-coat', 0), // nothing is cut
  pieces('PVA', 'pva', 0),
  pieces('Filler', 'filler', 0),
  pieces('Caulk', 'caulk', 0),
  pieces('Multitool blade', 'blade-multitool', 0), // channel is sawn, nothing is cut out
  pieces('RCBO', 'rcbo-', 0), // the group's RCCB stays; its type AC is for the owner to decide
  pieces('RCD notice', 'notice-rcd', 0), // no protection is added
  pieces('Two-colour notice', 'notice-mixed-colours', 1), // the ring is of both colours
  pieces('Circuit chart', 'circuit-chart', 1),
  pieces('Minor works certificate', 'certificate-minor-works', 1),
  about('Insulating tape', 'insulating-tape', [1, 'each'], judged),
  about('Dust mask', 'dust-mask', [1, 'each'], judged), // twenty-one holes in concrete
  about('Dust sheet', 'dust-sheet', [2, 'each'], judged), // living room, bedroom
  about('Rubble sack', 'rubble-sack', [1, 'each'], judged), // offcuts, the old cable, packaging
];
