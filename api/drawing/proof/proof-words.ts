import type { ScenarioName } from '#engine/proof/scenarios.ts';
import { NOMINAL_V } from '#engine/proof/spur-load.ts';

/** The loads that a circuit is looked at under, as people choose them. */
export const scenarioWords: Readonly<Record<ScenarioName, string>> = {
  handbook: 'Handbook load',
  'named-loads': 'Named loads',
  'all-named-loads': 'All named at once',
  'near-one-end': 'Near one end',
  'heavy-appliances': 'Heavy appliances',
  'open-at-worst-leg': 'Ring open at its worst leg',
};

/** A current to a tenth: "12.1 A"; not known for null. */
export const ampsWords = (currentA: number | null): string =>
  currentA === null ? 'current not known' : `${currentA.toFixed(1)}\u00a0A`;

/** A volt drop to a tenth: "8.3 V"; a dash where it is not known. */
export const voltsWords = (dropV: number | null): string =>
  dropV === null ? '–' : `${dropV.toFixed(1)}\u00a0V`;

/** A share of what a cable may carry: "52 %"; Iz is not known for null. */
export const shareWords = (share: number | null): string =>
  share === null ? 'Iz not known' : `${Math.round(share * 100)}\u00a0%`;

/** A length of cable to a tenth of a metre, "about" where nobody measured it. */
export const lengthWords = (lengthMm: number, isMeasured: boolean): string =>
  `${isMeasured ? '' : 'about '}${(lengthMm / 1000).toFixed(1)}\u00a0m`;

/** A limit in volts with its percentage of 230 V: "11.5 V (5 %)". */
export const limitWords = (limitV: number): string =>
  `${Math.round(limitV * 100) / 100}\u00a0V (${Math.round((limitV / NOMINAL_V) * 1000) / 10}\u00a0%)`;

/** How sure something is: "87 %"; never more than 99, since readings prove nothing for certain. */
export const confidenceWords = (confidence: number): string =>
  `${Math.min(99, Math.floor(confidence * 100))} %`;
