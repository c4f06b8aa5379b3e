import type { Outcome } from '#engine/rules/finding.ts';
import type { MeasuredCheck, MeasuredOutcome, MeasuredPoint } from '#engine/work/tests/measured-circuit.ts';

/** How an outcome with measured values is marked, and said. */
export const measuredOutcomes: Readonly<
  Record<MeasuredOutcome, { readonly mark: Outcome; readonly word: string }>
> = {
  holds: { mark: 'passes', word: 'Holds' },
  look: { mark: 'decide', word: 'Look into it' },
  fails: { mark: 'fails', word: 'Fails' },
  'not-told': { mark: 'not-proven', word: 'Not measured' },
};

const names: Readonly<Record<MeasuredCheck['name'], { readonly title: string; readonly untold: string }>> = {
  'ring-closes': { title: 'The ring closes', untold: 'Wants r1, rn and r2 from end to end.' },
  'ring-alike': { title: 'Line and neutral alike', untold: 'Wants r1 and rn.' },
  'earth-ratio': { title: 'Earth beside line', untold: 'Wants r1 and r2, and cables that are known.' },
  loop: {
    title: 'Disconnects in a fault to earth',
    untold: 'Wants Zs or R1 + R2 at the points, and the device.',
  },
  drop: { title: 'Volt drop', untold: 'Wants r1 and rn of a ring, or R1 + R2 of a radial.' },
  insulation: { title: 'Insulation', untold: 'Wants both insulation tests.' },
  rcd: { title: 'RCD', untold: 'Wants the time and the button of each.' },
  'arc-fault': { title: 'Arc fault device', untold: 'Wants its button.' },
  polarity: { title: 'Polarity', untold: 'Wants every point where something was connected.' },
};

/** What is checked, as it is headed. */
export const checkTitle = ({ name }: Pick<MeasuredCheck, 'name'>): string => names[name].title;

const two = (value: number): string => value.toFixed(2);
const at = (where: string): string => (where === '' ? '' : ` at ${where}`);

/** What a check found: the figure, the limit, where. What was not measured says what it wants. */
export function checkSaid({ name, outcome, actual, limit, where }: MeasuredCheck): string {
  if (outcome === 'not-told') return names[name].untold;
  const [read, held] = [actual ?? 0, limit ?? 0];
  switch (name) {
    case 'ring-closes':
      return outcome === 'fails'
        ? 'One conductor does not close: the ring is broken. Stop, and find where.'
        : 'Line, neutral and earth close.';
    case 'ring-alike':
      return `r1 and rn are ${two(read)} Ω apart; a sound ring’s are within ${two(held)} Ω.`;
    case 'earth-ratio':
      return `r2 ÷ r1 reads ${two(read)}; by the cables’ sizes it is ${two(held)}.`;
    case 'loop':
      return `${two(read)} Ω${at(where)}, the nearest to its limit of ${two(Math.floor(held * 100 + 1e-6) / 100)} Ω.`;
    case 'drop':
      return `${read.toFixed(1)} V of ${held.toFixed(1)} V${at(where)}, under the handbook’s load, cables as long as they read.`;
    case 'insulation':
      return `${read} MΩ at the least, of ${held} MΩ.`;
    case 'rcd':
      return actual === null
        ? `It did not open by its button${at(where)}.`
        : `${read} ms, of ${held} ms${at(where)}${outcome === 'fails' && read <= held ? '; one opened too soon, or not by its button' : ''}.`;
    case 'arc-fault':
      return outcome === 'fails' ? 'It did not open by its button.' : 'It opened by its button.';
    case 'polarity':
      return outcome === 'fails'
        ? `Wrong${at(where)}.`
        : 'Right at every point where something was connected.';
  }
}

/** The figures of a point in a row: R1 + R2, Zs reckoned, Zs read, limit, volt drop; a dash for what was not measured. */
export const pointFigures = ({
  r1r2Ohm,
  zsReckonedOhm,
  zsReadOhm,
  zsLimitOhm,
  dropV,
}: MeasuredPoint): readonly string[] => [
  ...[r1r2Ohm, zsReckonedOhm, zsReadOhm].map((ohm) => (ohm === null ? '–' : two(ohm))),
  zsLimitOhm === null ? '–' : two(Math.floor(zsLimitOhm * 100 + 1e-6) / 100),
  dropV === null ? '–' : dropV.toFixed(1),
];

/** The heads of these figures. */
export const pointHeads = ['R1 + R2, Ω', 'Ze + that', 'Zs read', 'Limit', 'Drop, V'] as const;

/** What stands under them. */
export const POINTS_SAID =
  'Ze is what is before the circuit, as it was read after the work, else as the survey has it. A tester may show less than Ze + R1 + R2, through other ways to earth; more contradicts one of them.';
