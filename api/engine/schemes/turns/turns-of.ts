import type { Library } from '#model/library.ts';
import type { Worked } from '../../connections/worked.ts';
import type { House } from '../work-scheme.ts';
import { asbestosTurns } from './asbestos-turns.ts';
import { bondTurns } from './bond-turns.ts';
import type { PriceTurn } from './price-turn.ts';
import { rcboTurns, rcdTurns } from './rcd-turns.ts';
import { spareWayTurns } from './spare-way-turns.ts';
import { surgeTurns } from './surge-turns.ts';
import { wallTurns } from './wall-turns.ts';

/** All that may still turn a scheme's price and is in no quantity of it: RCDs before RCBOs, which hang on them. None as found. */
export function turnsOf(house: House, worked: Worked, library: Library): readonly PriceTurn[] {
  if (worked.scheme === null) return [];
  return [
    ...bondTurns(worked),
    ...rcdTurns(house, worked),
    ...rcboTurns(worked),
    ...spareWayTurns(worked),
    ...surgeTurns(worked),
    ...wallTurns(worked),
    ...asbestosTurns(worked, library),
  ];
}
