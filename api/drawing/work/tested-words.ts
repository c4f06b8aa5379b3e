import type { Testing } from '#model/site-work.ts';

export const INSTRUMENTS = 'Instruments, with their serial numbers';
export const NOT_TESTED = 'What could not be tested, and why';

/** "Multifunction tester, serial number 4711"; what was not said is left out. */
export const instrumentSaid = ({ what, serial }: NonNullable<Testing['instruments']>[number]): string =>
  `${what === '' ? 'An instrument' : what}${serial === undefined ? '' : `, serial number ${serial}`}`;
