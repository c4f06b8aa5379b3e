import { about, type CountedLine, pieces } from './counted-line.ts';

/*
 * What the scheme of three spurs and an RCBO in flat 5, Quarrel Court, needs: counted from the job file alone by somebody who had seen nothing of this
 * program, its pictures or its figures. Common practice, no source; an invented flat.
 *
 * Concrete floors and walls of plaster on concrete, so all is on the surface: channel 16 × 16 at 80 above the floor, at 100 where
 * the ring's own channel lies already, with a riser to the box at either end. Ends of a cable 0.20 m, slack the greater of 0.30 m and
 * 5 % of the way.
 */

const onHeight = 'how high above the old channel the new one lies: 80, 100 or 120';

/** C7 to W1, C2 to W2, C3 to W3's fused unit, and an RCBO in the ring's way of the board. */
export const spursCount: readonly CountedLine[] = [
  // 0.22 + 2.00 + 0.22, 0.20 + 2.00 + 0.20, 0.20 + 1.40 + 0.20; ends 0.40 and slack 0.30 each: 3.14, 3.10, 2.50.
  about('Flat twin and earth cable 2.5/1.5 mm²', 'cable-flat-2.5-1.5', [8.74, 'm'], [0.1, onHeight]),
  about('Flex 1.5 mm², three-core', 'flex-1.5', [1.5, 'm'], [0.5, 'where the heater stands is not drawn']),
  pieces('Twin switched socket-outlet', 'socket-twin', 2),
  pieces('Switched fused unit with flex outlet', 'fused-unit-switched-flex', 1),
  pieces('Moulded surface box, twin, 35 mm', 'box-surface-twin-35', 2),
  about(
    'Moulded surface box, single',
    'box-surface-single-',
    [1, 'each'],
    [0, 'counted 47 deep, 35 to 47 by the maker'],
  ),
  pieces('Flush box', 'box-steel-', 0), // concrete
  pieces('Joint', 'joint-', 0), // all from terminals
  pieces('RCBO B32 30 mA type A', 'rcbo-b32-30-a', 1),
  pieces('Enclosure', 'enclosure-', 0), // the board takes the RCBO
  pieces('Green/yellow single', 'earth-single-', 0), // moulded boxes
  about('Green/yellow sleeving 3 mm', 'sleeving-earth-3', [0.72, 'm'], [0.001, 'floating point only']), // six ends of 0.12
  about('Brown sleeving', 'sleeving-brown-3', [0.06, 'm'], [0.06, 'one or two cores of C7’s old pair']),
  about('Mini-channel 16 × 16', 'channel-16x16', [6.64, 'm'], [0.1, onHeight]),
  pieces('Flat bend 16 × 16', 'channel-bend-16x16', 6),
  pieces('End cap 16 × 16', 'channel-end-16x16', 0),
  pieces('Coupler 16 × 16', 'channel-coupler-16x16', 0),
  // Channel 7 + 7 + 6; three boxes of two.
  about('Screw with plug', 'screw-and-plug', [26, 'each'], [4, 'two to four to a twin box']),
  pieces('Clip 2.5 mm²', 'clip-flat-2.5', 0), // all in channel
  about('Metal clip', 'clip-metal', [0, 'each'], [6, 'a firm may hold cable inside channel with metal']),
  pieces('Grommet', 'grommet-', 0),
  pieces('Floor screw', 'screw-floor', 0),
  pieces('Noggin', 'noggin-', 0),
  pieces('Plaster', 'plaster-', 0), // nothing is cut
  pieces('PVA', 'pva', 0),
  pieces('Fire sealant', 'fire-sealant', 0),
  pieces('Putty pad', 'putty-pad-', 0),
  pieces('Two-colour notice', 'notice-mixed-colours', 1),
  about('RCD notice', 'notice-rcd', [0, 'each'], [1, 'there may be one already for the RCCB']),
  pieces('Circuit chart', 'circuit-chart', 1),
  pieces('Minor works certificate', 'certificate-minor-works', 1),
  about('Insulating tape', 'insulating-tape', [1, 'each'], [1, 'a part of a roll']),
  about('Dust mask', 'dust-mask', [1, 'each'], [1, 'drilling concrete']),
  about('Dust sheet', 'dust-sheet', [2, 'each'], [1, 'one more at the board']),
  pieces('Multitool blade', 'blade-multitool', 0),
];
