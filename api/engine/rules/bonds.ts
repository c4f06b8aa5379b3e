import type { Supply } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import { isGuess } from '../plan/is-guess.ts';

type Bond = Supply['bonding'][number];
/** A service that wants a main bond. */
export type Service = Bond['service'];

/** Services that nearly every house may have, so that silence about them proves nothing. Common practice, no source. */
const ASKED: readonly Service[] = ['water', 'gas'];

/** The name that the certainty of what is said of a service's bond goes by. */
export const bondFact = (service: Service): string => `bond-${service}`;

/** How sure what is said of a service's bond is: its own word, else that for all bonds, else seen. */
export const bondCertainty = ({ certainty }: Pick<Supply, 'certainty'>, service: Service): Certainty =>
  certainty?.[bondFact(service)] ?? certainty?.bonding ?? 'seen';

/** Whether somebody said of a service how it is bonded, or that it is not there. */
export const isBondTold = (supply: Supply, service: Service): boolean =>
  supply.bonding.some((bond) => bond.service === service) ||
  supply.absentServices?.includes(service) === true;

/** The services that every survey is asked after and that nobody told anything of. */
export const bondsNotTold = (supply: Supply): readonly Service[] =>
  ASKED.filter((service) => !isBondTold(supply, service) || bondCertainty(supply, service) === 'unknown');

/**
 * The services of whose bond somebody has still to find out whether it is there and how thick it is: those that every survey is
 * asked after, and those that were recorded; in the order of being asked, then of the record.
 */
export function bondsToSettle(supply: Supply): readonly Service[] {
  const recorded = supply.bonding.map(({ service }) => service);
  return [...new Set([...ASKED, ...recorded])].filter((service) => isBondOpen(supply, service));
}

/** Whether a bond is not told, only guessed at, or there with a size that nobody saw. */
function isBondOpen(supply: Supply, service: Service): boolean {
  if (!isBondTold(supply, service) || isGuess(bondCertainty(supply, service))) return true;
  const bond = supply.bonding.find((one) => one.service === service);
  return bond?.seen === true && bond.mm2 === undefined;
}

/** The services that a survey is asked after, told or not, and those that were recorded; in the same order. */
export const bondsAskedAfter = (supply: Supply): readonly Service[] => [
  ...new Set([...ASKED, ...supply.bonding.map(({ service }) => service), ...(supply.absentServices ?? [])]),
];
