import { insulationLimit } from '#engine/proof/expected-limits.ts';
import { capital } from '#engine/quotation/said.ts';
import { shownBy } from '#engine/work/tests/answering-reading.ts';
import type { SheetTest, TestGroup, TestSheet } from '#engine/work/tests/sheet-test.ts';
import { faultKA } from '#engine/work/tests/supply-tests.ts';

/** How a group of tests is headed, and what it may be where a reading is off what is expected. Causes: common practice, no source. */
export const testGroupWords: Readonly<
  Record<TestGroup, { readonly title: string; readonly high: string; readonly low: string }>
> = {
  ends: {
    title: 'Ring, end to end',
    high: 'A longer ring than drawn, a loose terminal, or leads not nulled.',
    low: 'A shorter ring than drawn, or two ends that meet elsewhere.',
  },
  'crossed-ln': {
    title: 'Ring crossed, line to neutral',
    high: 'A spur or a longer one than drawn, a loose terminal, or the wrong ends joined.',
    low: 'The wrong ends joined, or something left plugged in.',
  },
  'crossed-le': {
    title: 'Ring crossed, line to earth',
    high: 'A spur or a longer one than drawn, a loose earth, or the wrong ends joined.',
    low: 'Another way to earth beside the cable: pipes, structure, a metal box; or the wrong ends joined.',
  },
  r1r2: {
    title: 'R1 + R2, linked at the board',
    high: 'A longer way than drawn, or a loose terminal.',
    low: 'Another way to earth beside the cable, or a shorter one than drawn.',
  },
  insulation: { title: 'Insulation', high: '', low: '' },
  polarity: { title: 'Polarity', high: '', low: '' },
  supply: {
    title: 'Supply at the board',
    high: 'A loose connection before or at the board, or a supply that has changed: ask the distributor.',
    low: 'Other ways to earth beside the supply’s, as with Ze read with the earths on; or a supply that has changed.',
  },
  zs: {
    title: 'Earth fault loop, Zs',
    high: 'A loose earth or line, a longer way, or the tester’s own error on its no-trip setting.',
    low: 'Other ways to earth beside the cable: usual, and no fault by itself.',
  },
  rcd: { title: 'RCD, time to open', high: '', low: '' },
  'rcd-button': { title: 'RCD, its own test button', high: '', low: '' },
  'afdd-button': { title: 'Arc fault device, its own test button', high: '', low: '' },
  'spd-indicator': { title: 'Surge device, its indicator', high: '', low: '' },
};

/** What is said of the band wherever it is used. */
export const BAND_SAID =
  'Band: what is expected ± 0.05 Ω or 5 %, whichever is more. The band is ours; no standard sets one. A limit is the standard’s.';

/** Said where the survey does not tell what a tester should show. */
export const NOT_EXPECTED =
  'Where Expected is empty the survey does not tell the order, the lengths or the supply, so no figure can be: go by what each test says is right, by its limit, and by what was read before the work.';

const ohms = (ohm: number): string => ohm.toFixed(2);

/** A limit's figure; Ω cut off and not rounded up, so that no reading seems to keep what it does not. */
const limitFigure = (value: number, unit: SheetTest['unit']): string =>
  unit === 'Ω' ? (Math.floor(value * 100 + 1e-6) / 100).toFixed(2) : String(value);

/** A test's name where a line begins with it; r1 stays small, for R1 is a point. */
export const testName = ({ mark }: Pick<SheetTest, 'mark'>): string =>
  mark.includes(' ') ? capital(mark) : mark;

/** What a tester should show: "0.24 Ω", "0.51 to 0.55 Ω"; empty where nothing is expected. */
export function expectedSaid({ expected, unit }: Pick<SheetTest, 'expected' | 'unit'>): string {
  if (expected === null) return '';
  if (unit === 'kA') return kiloamperes(expected.toOhm, expected.fromOhm);
  const [from, to] = [ohms(expected.fromOhm), ohms(expected.toOhm)];
  return from === to ? `${from}\u00a0Ω` : `${from} to ${to}\u00a0Ω`;
}

/** The band's two ends: "0.19 to 0.29 Ω"; empty where nothing is expected. */
export function bandSaid({ expected, unit }: Pick<SheetTest, 'expected' | 'unit'>): string {
  if (expected === null) return '';
  const { fromOhm, toOhm, bandOhm } = expected;
  if (unit === 'kA') return kiloamperes(toOhm + bandOhm, Math.max(0, fromOhm - bandOhm));
  return `${ohms(Math.max(0, fromOhm - bandOhm))} to ${ohms(toOhm + bandOhm)}\u00a0Ω`;
}

/** The fault currents that two loops let flow, the greater loop first: "0.95 to 1.58 kA"; without a loop there is no most. */
function kiloamperes(mostOhm: number, leastOhm: number): string {
  const kA = (ohm: number): string => faultKA(ohm).toFixed(2);
  const least = kA(mostOhm);
  if (leastOhm === 0) return `${least}\u00a0kA or more`;
  const most = kA(leastOhm);
  return least === most ? `${least}\u00a0kA` : `${least} to ${most}\u00a0kA`;
}

/** What a reading must show: "at most 1.09 Ω", "at least 1 MΩ", "130 to 500 ms", "right"; empty without a limit. */
export function limitSaid({ limit, unit, asked }: Pick<SheetTest, 'limit' | 'unit' | 'asked'>): string {
  if (limit === null) return '';
  if (limit.bound === 'right') return rightOf(asked).must;
  if (limit.bound === 'between') return `${limit.least} to ${limit.value}\u00a0${unit ?? ''}`;
  return `at ${limit.bound} ${limitFigure(limit.value, unit)}\u00a0${unit ?? ''}`;
}

/** Where the limits of some tests come from, each once: "At most 1.09 Ω: 80 % of B32: 218.5 V ÷ 160 A." */
export const limitsFrom = (tests: readonly SheetTest[]): readonly string[] => [
  ...new Set(
    tests.flatMap((test) =>
      test.limit === null || test.limit.bound === 'right'
        ? []
        : [`${capital(limitSaid(test))}: ${test.limit.words}.`],
    ),
  ),
];

/** What was read: "0.26 Ω", "200 MΩ at 500 V", "right"; empty where nothing was. */
export function readSaid({ reading, unit, asked }: Pick<SheetTest, 'reading' | 'unit' | 'asked'>): string {
  if (reading === null) return '';
  const shown = shownBy(reading);
  if (typeof shown === 'boolean') return shown ? rightOf(asked).right : rightOf(asked).wrong;
  const figure = `${shown}\u00a0${unit ?? ''}`;
  return reading.kind === 'insulation' && reading.testV !== insulationLimit().testV
    ? `${figure} at ${reading.testV}\u00a0V`
    : figure;
}

/** What is either so or not: what is asked, what must be so, and both answers. */
interface RightWords {
  readonly asks: string;
  readonly must: string;
  readonly right: string;
  readonly wrong: string;
}

const button: RightWords = { asks: 'Opened?', must: 'opens', right: 'opened', wrong: 'did not open' };
const polarity: RightWords = { asks: 'Right?', must: 'right', right: 'right', wrong: 'wrong' };
const indicator: RightWords = {
  asks: 'Does it protect?',
  must: 'protects',
  right: 'protects',
  wrong: 'does not protect',
};

/** The words of a test that shows no figure. */
export function rightOf({ kind }: SheetTest['asked']): RightWords {
  if (kind === 'spd-indicator') return indicator;
  return kind === 'rcd-button' || kind === 'afdd-button' ? button : polarity;
}

/** How a test came out, in one word; empty while it is not read. */
export const verdictWord: Readonly<Record<SheetTest['verdict'], string>> = {
  'not-read': '',
  fits: 'Fits',
  look: 'Look into it',
  fails: 'Fails',
  read: 'Read',
};

/** How a test came out, with why and what it may be: limit first, then the band. */
export function verdictSaid(test: SheetTest): string {
  switch (test.verdict) {
    case 'not-read':
      return '';
    case 'fits':
      return test.expected === null ? 'As it must be.' : 'Within the band.';
    case 'read':
      return 'There is nothing to hold it to.';
    case 'look':
      return offSaid(test);
    case 'fails':
      return test.limit?.bound === 'right'
        ? 'Put it right, and test again, before it is used.'
        : `The limit is ${limitSaid(test)}.${test.fitsBand === false ? ` ${offSaid(test)}` : ''} Off, and find out why.`;
  }
}

function offSaid({ offOhm, group, unit }: SheetTest): string {
  const off = offOhm ?? 0;
  const { high, low } = testGroupWords[group];
  return `${unit === 'kA' ? 'As a loop ' : ''}${ohms(Math.abs(off))}\u00a0Ω ${off > 0 ? 'more' : 'less'} than expected. ${off > 0 ? high : low}`.trim();
}

/** How far a sheet is filled: "12 of 34 read; 1 to look into, 1 fails". */
export function progressSaid({ parts }: TestSheet): string {
  const tests = parts.flatMap((part) => part.tests);
  const count = (verdict: SheetTest['verdict']): number =>
    tests.filter((test) => test.verdict === verdict).length;
  const told = [
    ...(count('look') > 0 ? [`${count('look')} to look into`] : []),
    ...(count('fails') > 0 ? [`${count('fails')} ${count('fails') === 1 ? 'fails' : 'fail'}`] : []),
  ];
  const read = tests.length - count('not-read');
  const rest = read === 0 ? '' : told.length === 0 ? '; none off its band or limit' : `; ${told.join(', ')}`;
  return `${read} of ${tests.length} read${rest}.`;
}
