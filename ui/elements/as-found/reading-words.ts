import type { LabelOf } from '#drawing/label-of.ts';
import type { Reading } from '#model/installation.ts';
import type { WordChoice } from './fact-fields.ts';

type Loop = Extract<Reading, { kind: 'loop' }>;

export const loops: readonly WordChoice<Loop['loop']>[] = [
  { value: 'L', label: 'Line (r1)' },
  { value: 'N', label: 'Neutral (rn)' },
  { value: 'cpc', label: 'Earth (r2)' },
  { value: 'L-N', label: 'Line to neutral' },
  { value: 'L-cpc', label: 'Line to earth' },
];

export const loopsFrom: readonly WordChoice<Loop['from']>[] = [
  { value: 'end-to-end', label: 'End to end of the ring' },
  { value: 'crossed', label: 'At a point, ends cross-connected' },
  { value: 'A', label: 'From end A' },
  { value: 'B', label: 'From end B' },
];

export const insulationBetween: readonly WordChoice<Extract<Reading, { kind: 'insulation' }>['between']>[] = [
  { value: 'LN-cpc', label: 'Line and neutral to earth' },
  { value: 'L-N', label: 'Line to neutral' },
  { value: 'L-cpc', label: 'Line to earth' },
  { value: 'N-cpc', label: 'Neutral to earth' },
];

export const phases: readonly WordChoice<Reading['phase']>[] = [
  { value: 'before', label: 'Before the work' },
  { value: 'after', label: 'After the work' },
];

const fromWords: Readonly<Record<Loop['from'], string>> = {
  'end-to-end': 'end to end',
  crossed: 'crossed',
  A: 'from end A',
  B: 'from end B',
};

const wordOf = (
  choices: readonly { readonly value: string; readonly label: string }[],
  word: string,
): string => choices.find(({ value }) => value === word)?.label ?? word;

const atWords = (id: string | undefined, labelOf: LabelOf): string =>
  id === undefined ? '' : ` at ${labelOf(id)}`;

/** What was read, and where. */
export function readingName(reading: Reading, labelOf: LabelOf): string {
  switch (reading.kind) {
    case 'loop': {
      const linked = reading.linkedAt === undefined ? '' : `, linked at ${labelOf(reading.linkedAt)}`;
      return `${wordOf(loops, reading.loop)}, ${fromWords[reading.from]}${atWords(reading.at, labelOf)}${linked}`;
    }
    case 'insulation':
      return `Insulation, ${wordOf(insulationBetween, reading.between).toLowerCase()}${atWords(reading.at, labelOf)}, ${reading.testV} V`;
    case 'zs':
      return `Zs${atWords(reading.at, labelOf)}`;
    case 'ze':
      return `Ze${atWords(reading.at, labelOf)}`;
    case 'pfc':
      return `Prospective fault current${atWords(reading.at, labelOf)}`;
    case 'rcd':
      return `RCD at ${reading.mA} mA${reading.at === undefined ? '' : `, ${labelOf(reading.at)}`}`;
    case 'polarity':
      return `Polarity at ${labelOf(reading.at)}`;
    case 'rcd-button':
      return `RCD’s own test button${atWords(reading.at, labelOf)}`;
    case 'afdd-button':
      return `Arc fault device’s own test button${atWords(reading.at, labelOf)}`;
    case 'spd-indicator':
      return `Surge device’s indicator${atWords(reading.at, labelOf)}`;
  }
}

/** What the instrument showed, with its unit. */
export function readingValue(reading: Reading): string {
  switch (reading.kind) {
    case 'loop':
    case 'zs':
    case 'ze':
      return `${reading.ohm} Ω`;
    case 'insulation':
      return `${reading.megohm} MΩ`;
    case 'pfc':
      return `${reading.kA} kA`;
    case 'rcd':
      return `${reading.ms} ms`;
    case 'polarity':
      return reading.ok ? 'right' : 'wrong';
    case 'rcd-button':
    case 'afdd-button':
      return reading.ok ? 'opened' : 'did not open';
    case 'spd-indicator':
      return reading.ok ? 'shows that it protects' : 'shows that it does not protect';
  }
}

/** The unit of what an instrument shows in a reading of a kind; null where it shows no number. */
export const readingUnits: Readonly<Record<Reading['kind'], string | null>> = {
  loop: 'Ω',
  insulation: 'MΩ',
  zs: 'Ω',
  ze: 'Ω',
  pfc: 'kA',
  rcd: 'ms',
  polarity: null,
  'rcd-button': null,
  'afdd-button': null,
  'spd-indicator': null,
};
