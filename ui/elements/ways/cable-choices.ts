import type { Cable } from '#model/cable.ts';
import type { Choice } from '../fields/choice-field.ts';

const sizes: readonly (readonly [lineMm2: number, cpcMm2: number])[] = [
  [1, 1],
  [1.5, 1],
  [2.5, 1.5],
  [4, 1.5],
  [6, 2.5],
  [10, 4],
];

const keyOf = ({ type, lineMm2, cpcMm2 }: Cable): string => `${type} ${lineMm2} ${cpcMm2}`;

/** Cables that a new run may be of; one that is not on the list is added to it. */
export function cableChoices(now: Cable | undefined): readonly Choice[] {
  const usual = sizes.map(
    ([lineMm2, cpcMm2]): Choice => ({
      value: keyOf({ type: 'flat-twin', lineMm2, cpcMm2 }),
      label: `Flat twin and earth ${lineMm2}/${cpcMm2} mm²`,
    }),
  );
  if (now === undefined || usual.some(({ value }) => value === keyOf(now))) return usual;
  return [...usual, { value: keyOf(now), label: `${now.type} ${now.lineMm2}/${now.cpcMm2} mm²` }];
}

/** The chosen cable's key; null for the usual one. */
export const cableKey = (cable: Cable | undefined): string | null =>
  cable === undefined ? null : keyOf(cable);

/** The cable of a key; null for none. */
export function cableOfKey(key: string | null): Cable | null {
  const [type, line, cpc] = key?.split(' ') ?? [];
  if (type !== 'flat-twin') return null;
  return { type, lineMm2: Number(line), cpcMm2: Number(cpc) };
}
