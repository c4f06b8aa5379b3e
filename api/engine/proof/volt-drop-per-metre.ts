import type { RowStatus } from '#data/standards/table.ts';
import { voltDropFlatCable } from '#data/standards/volt-drop-flat-cable.ts';
import type { Cable } from '#model/cable.ts';
import { cableOhms, HOT_RATIO } from './conductor-ohms.ts';

/** Volt drop of a cable, both conductors together, at 70 °C, with how it is known. */
export interface VoltDropPerMetre {
  readonly millivoltPerAM: number;
  readonly grade: RowStatus;
}

/** What the correction of the tabulated volt drop depends on. */
export interface LoadedCable {
  /** What the cable carries. */
  readonly currentA: number;
  /** What the table lets it carry as installed, before any factor; above 0. */
  readonly tabulatedA: number;
  /** Factors for ambient temperature and grouping. */
  readonly ambientRatio: number;
  readonly groupRatio: number;
}

/** Temperatures of the tables for 70 °C thermoplastic: the conductor's at full load, and the air's. */
const FULL_LOAD_C = 70;
const AMBIENT_C = 30;
/** Kelvin below 0 °C at which copper's resistance would vanish, as the equation rounds it. */
const COPPER_ZERO_K = 230;

/**
 * Volt drop per ampere and metre of a cable at 70 °C: not to be raised for temperature once more.
 *
 * @returns null where no figure is held. Other cables than flat twin have twice the hot resistance of their line.
 * Source: BS 7671 Table 4D5; IEC 60228 times 1.2 for the others.
 */
export function voltDropPerMetre(cable: Cable): VoltDropPerMetre | null {
  const row =
    cable.type === 'flat-twin'
      ? voltDropFlatCable.rows.find(({ areaMm2 }) => areaMm2 === cable.lineMm2)
      : undefined;
  if (row !== undefined) return { millivoltPerAM: row.millivoltPerAM, grade: row.status };
  // Only the line counts here, so that the grade of the protective conductor must not.
  const ohms = cableOhms({ ...cable, cpcMm2: 0 });
  if (ohms === null) return null;
  const grade = ohms.grade === 'memory' ? 'memory' : 'derived';
  return { millivoltPerAM: 2 * ohms.lineMilliohmPerM * HOT_RATIO, grade };
}

/**
 * Ct: by what the tabulated volt drop is multiplied for a cable that runs cooler than at full load (above 1 for an
 * overloaded one). For conductors up to 16 mm², 70 °C thermoplastic. Not for circuits protected by BS 3036 fuses.
 * A factor for air below 30 °C counts as 1: the equation is not stated for it.
 * Source: BS 7671 Appendix 4 §6.1, http://www.theiet.org/forums/forum/messageview.cfm?catid=205&threadid=47433;
 * its two limits from memory.
 */
export function voltDropCorrection(loaded: LoadedCable): number {
  const ratedShare = (Math.min(1, loaded.ambientRatio) * loaded.groupRatio) ** 2;
  const loadShare = (loaded.currentA / loaded.tabulatedA) ** 2;
  const coolerK = (ratedShare - loadShare) * (FULL_LOAD_C - AMBIENT_C);
  return (COPPER_ZERO_K + FULL_LOAD_C - coolerK) / (COPPER_ZERO_K + FULL_LOAD_C);
}
