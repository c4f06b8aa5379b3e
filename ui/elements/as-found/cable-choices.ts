import type { Cable } from '#model/cable.ts';
import type { Choice } from '../fields/choice-field.ts';

/** A cable with the words that choose it. */
interface KnownCable {
  readonly label: string;
  readonly cable: Cable;
}

/**
 * The cables that houses are wired with, by how people ask for them.
 * Sizes of flat cable and their protective conductors: BS 6004 (from memory); of
 * armoured: BS 5467 (from memory).
 */
const knownCables: readonly KnownCable[] = [
  { label: '2.5 mm² twin and earth', cable: { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 } },
  { label: '2.5 mm² twin and earth, 1.0 earth', cable: { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1 } },
  { label: '4 mm² twin and earth', cable: { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 } },
  { label: '6 mm² twin and earth', cable: { type: 'flat-twin', lineMm2: 6, cpcMm2: 2.5 } },
  { label: '10 mm² twin and earth', cable: { type: 'flat-twin', lineMm2: 10, cpcMm2: 4 } },
  { label: '1.5 mm² twin and earth', cable: { type: 'flat-twin', lineMm2: 1.5, cpcMm2: 1 } },
  { label: '1.0 mm² twin and earth', cable: { type: 'flat-twin', lineMm2: 1, cpcMm2: 1 } },
  { label: '2.5 mm² steel-wire armoured', cable: { type: 'steel-wire-armoured', lineMm2: 2.5, cpcMm2: 2.5 } },
];

const typeWords: Readonly<Record<Cable['type'], string>> = {
  'flat-twin': 'twin and earth',
  'flat-single': 'flat single',
  'steel-wire-armoured': 'steel-wire armoured',
  flex: 'flex',
  imperial: 'imperial',
};

const cableValue = ({ type, lineMm2, cpcMm2, era }: Cable): string =>
  [type, lineMm2, cpcMm2, era ?? ''].join('|');

/** A cable in words: "2.5/1.5 mm² twin and earth". */
export const cableWords = ({ type, lineMm2, cpcMm2, era }: Cable): string =>
  `${lineMm2}/${cpcMm2} mm² ${typeWords[type]}${era === undefined ? '' : `, ${era}`}`;

/** A list of cables to choose from, the one that is there among them. */
export interface CableChoices {
  readonly options: readonly Choice[];
  readonly value: string | null;
  /** The cable of a chosen value; null where it is none of the list. */
  readonly cableOf: (value: string | null) => Cable | null;
}

/** The usual cables, and the present one where it is none of them. */
export function cableChoices(now: Cable | undefined): CableChoices {
  const usual = knownCables.map(({ label, cable }) => ({ value: cableValue(cable), label, cable }));
  const isUsual = now === undefined || usual.some(({ value }) => value === cableValue(now));
  const all = isUsual ? usual : [{ value: cableValue(now), label: cableWords(now), cable: now }, ...usual];
  return {
    options: all.map(({ value, label }) => ({ value, label })),
    value: now === undefined ? null : cableValue(now),
    cableOf: (chosen) => all.find(({ value }) => value === chosen)?.cable ?? null,
  };
}
