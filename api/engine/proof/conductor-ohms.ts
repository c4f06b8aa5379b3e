import { conductorResistance } from '#data/standards/conductor-resistance.ts';
import { imperialCable } from '#data/standards/imperial-cable.ts';
import type { RowStatus } from '#data/standards/table.ts';
import type { Cable } from '#model/cable.ts';

/** Resistance of one conductor at 20 °C, with how its figure is known. */
export interface ConductorOhms {
  readonly milliohmPerM: number;
  readonly grade: RowStatus;
}

/** Resistances of a cable's conductors at 20 °C; the grade of one kind of conductor is the same for all sizes. */
export interface CableOhms {
  readonly lineMilliohmPerM: number;
  /** Null where the cable has no protective conductor, or one of a size that no figure is held for. */
  readonly cpcMilliohmPerM: number | null;
  readonly grade: RowStatus;
}

/** Change of copper's resistance per kelvin, of its value at 20 °C. Source: BS 7671 Appendix 3 as UK practice rounds it. */
const PER_KELVIN = 0.004;
/** The temperature that resistances are told at, °C. */
export const REFERENCE_C = 20;

/** How near a recorded area must come to a size of old cable to be taken for it, as a part of that size. */
const SAME_SIZE_RATIO = 0.05;

/** The old sizes have no figure of their own: they are scaled from this one, the least favourable of the metric ones. */
const SCALED_FROM_MM2 = 2.5;

/**
 * Greatest resistance of a solid or stranded copper conductor for fixed wiring, at 20 °C.
 *
 * @returns null for an area that is not listed.
 * Source: IEC 60228 (BS EN 60228), classes 1 and 2.
 */
export function conductorMilliohmPerM(areaMm2: number): ConductorOhms | null {
  return listed(areaMm2, 'fixed');
}

function listed(areaMm2: number, make: 'fixed' | 'flexible'): ConductorOhms | null {
  const row = conductorResistance.rows.find((each) => each.make === make && each.areaMm2 === areaMm2);
  return row === undefined ? null : { milliohmPerM: row.milliohmPerM, grade: row.status };
}

/**
 * Resistances of the line conductor (the neutral is its like) and of the protective conductor, at 20 °C.
 *
 * @returns null where no figure is held for the line conductor. Imperial cable always has one, by its area. The
 *   protective conductor of armoured cable is taken for a core; one larger than the line is its armour, null.
 * Source: IEC 60228; flex by its class 5. Imperial sizes by proportion of area from 2.5 mm².
 */
export function cableOhms(cable: Cable): CableOhms | null {
  const line = conductorOf(cable, cable.lineMm2);
  if (line === null) return null;
  const cpc = cpcOf(cable);
  return {
    lineMilliohmPerM: line.milliohmPerM,
    cpcMilliohmPerM: cpc?.milliohmPerM ?? null,
    grade: line.grade,
  };
}

function cpcOf(cable: Cable): ConductorOhms | null {
  const isArmour = cable.type === 'steel-wire-armoured' && cable.cpcMm2 > cable.lineMm2;
  return cable.cpcMm2 === 0 || isArmour ? null : conductorOf(cable, cable.cpcMm2);
}

function conductorOf(cable: Cable, areaMm2: number): ConductorOhms | null {
  if (cable.type === 'imperial') return imperialOhms(areaMm2);
  return listed(areaMm2, cable.type === 'flex' ? 'flexible' : 'fixed');
}

function imperialOhms(recordedMm2: number): ConductorOhms | null {
  const base = listed(SCALED_FROM_MM2, 'fixed');
  if (base === null || recordedMm2 <= 0) return null;
  const size = imperialCable.rows.find(
    ({ areaMm2 }) => Math.abs(areaMm2 - recordedMm2) <= areaMm2 * SAME_SIZE_RATIO,
  );
  const areaMm2 = size?.areaMm2 ?? recordedMm2;
  return { milliohmPerM: (base.milliohmPerM * SCALED_FROM_MM2) / areaMm2, grade: 'derived' };
}

/**
 * By what a resistance at 20 °C is multiplied for another conductor temperature: 1 at 20 °C, 0.96 at 10 °C, 1.2
 * at 70 °C.
 * Source: BS 7671 Appendix 3 with On-Site Guide Table I2: 0.4 % a kelvin.
 */
export function temperatureRatio(celsius: number): number {
  return 1 + PER_KELVIN * (celsius - REFERENCE_C);
}

/**
 * From 20 °C to a 70 °C thermoplastic cable at full load, its protective conductor inside.
 * Source: On-Site Guide Table I3 (from memory), and the 0.4 % a kelvin.
 */
export const HOT_RATIO = 1.2;
