import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { cutPlans } from '#engine/price/buying/cut-plan.ts';
import type { CutPiece } from '#engine/price/buying/pieces-of.ts';
import { randomFrom } from '#tests/engine/proof/flow/random-network.ts';
import { type CutList, piecesOf, randomCutList } from '../engine/price/buying/random-cut-list.ts';
import { kindsOf, patternsOf } from './cut-patterns.ts';

/** Another seed gives other lists; the failure message names the one that it is about. */
const SEED = 20_261_126;
const ROUNDS = 150;
const STEPS = 5_000_000;

type Highs = Awaited<ReturnType<typeof loadHighs>>;

/** Two to four lists of pieces that have some in common, as the cases of one job have, and what they are cut from. */
interface Cases extends Pick<CutList, 'offers' | 'vanMm'> {
  readonly lists: readonly (readonly CutPiece[])[];
}

function randomCases(seed: number): Cases {
  const random = randomFrom(seed + 7);
  const whole = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
  const tubes = seed % 5 === 0;
  const own = { fromMm: tubes ? 300 : 1500, toMm: tubes ? 2000 : 11_000, van: whole(0, 2) };
  const sold = {
    wholesM: tubes ? [2, 3] : seed % 2 === 0 ? [10, 15, 25] : [25, 50],
    stepsMm: tubes || seed % 4 < 2 ? [] : [seed % 3 === 0 ? 500 : 1000],
  };
  const { pieces, offers, vanMm } = randomCutList(seed, { pieces: whole(2, 7), ...own, ...sold });
  const metres = (fromMm: number, toMm: number): number => whole(fromMm / 10, toMm / 10) / 100;
  const someOf = (): readonly number[] =>
    pieces.filter(() => random() < 0.7).map(({ lengthMm }) => lengthMm / 1e3);
  const more = (): readonly number[] =>
    Array.from({ length: whole(0, 3) }, () => metres(own.fromMm, own.toMm));
  // A run or two that want a longer coil, or short ones that more in all want of the cheaper: neither is within the other.
  const runs = (isLong: boolean): readonly number[] =>
    isLong
      ? Array.from({ length: whole(1, 2) }, () => metres(10_100, 14_900))
      : Array.from({ length: whole(4, 8) }, () => metres(3000, 5000));
  const lists = Array.from({ length: whole(2, 4) }, (_, s) => {
    const all = seed % 2 === 0 && !tubes ? runs(s % 2 === 0) : [...someOf(), ...more()];
    return piecesOf(...(all.length === 0 ? [own.fromMm / 1e3] : all));
  });
  return { lists, offers, vanMm };
}

/**
 * The cases as one integer programme: one stock of lengths for all; each case fills patterns from it, from the van and
 * from the one cut length, for itself.
 */
function modelOf({ lists, offers, vanMm }: Cases): string {
  const wholes = offers.filter(({ least }) => least === null);
  const cut = offers.find(({ least }) => least !== null);
  const rows: string[] = [];
  const general: string[] = wholes.map((_, i) => `w${i}`);
  const sum = (names: readonly string[]): string => names.join(' + ');
  lists.forEach((pieces, s) => {
    const kinds = kindsOf({ pieces });
    const sources = [...wholes.map(({ quantity }) => quantity), ...vanMm];
    const columns = sources.map((lengthMm, i) =>
      patternsOf(kinds, lengthMm).map((takes, p) => ({ name: `s${s}f${i}p${p}`, takes })),
    );
    general.push(...columns.flat().map(({ name }) => name));
    columns.forEach((some, i) => {
      if (some.length === 0) return;
      const names = sum(some.map(({ name }) => name));
      rows.push(i < wholes.length ? `${names} - w${i} <= 0` : `${names} <= 1`);
    });
    kinds.forEach(({ count }, kind) => {
      const through = columns
        .flat()
        .filter(({ takes }) => (takes[kind] ?? 0) > 0)
        .map(({ name, takes }) => `${takes[kind]} ${name}`);
      const all = [...through, ...(cut === undefined ? [] : [`s${s}z${kind}`])];
      rows.push(`${sum(all)} >= ${count}`);
    });
    if (cut === undefined) return;
    const inCut = kinds.map((_, kind) => `s${s}z${kind}`);
    general.push(...inCut);
    const used = kinds.map(({ lengthMm }, kind) => `- ${lengthMm / 10} s${s}z${kind}`).join(' ');
    rows.push(`${cut.quantity / 10} steps ${used} >= 0`);
    const total = kinds.reduce((all, { count }) => all + count, 0);
    rows.push(`${total} any ${inCut.map((name) => `- ${name}`).join(' ')} >= 0`);
  });
  if (cut !== undefined) {
    rows.push(`steps - ${(cut.least ?? 0) / cut.quantity} any >= 0`);
    general.push('steps');
  }
  const cost = [
    ...wholes.map(({ millipence }, i) => `${millipence / 1000} w${i}`),
    ...(cut === undefined ? [] : [`${cut.millipence / 1000} steps`]),
  ];
  return [
    'Minimize',
    ` cost: ${sum(cost)}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${row}`),
    'General',
    ...general.map((name) => ` ${name}`),
    ...(cut === undefined ? [] : ['Binary', ' any']),
    'End',
  ].join('\n');
}

/** Its optimum, whole pence: with less than a penny between cost and bound it is proved. */
function optimumOf(highs: Highs, model: string, what: string): number {
  const solution = highs.solve(model, { mip_rel_gap: 0, mip_abs_gap: 0.9 });
  expect(solution.Status, what).toBe('Optimal');
  return Math.round(solution.ObjectiveValue);
}

describe('buying for several cases against an integer programming solver', () => {
  let highs: Highs;
  beforeAll(async () => {
    highs = await loadHighs();
  });

  it(`costs the same in ${ROUNDS} random sets of two to four cases, and says that it is proved`, () => {
    let dearerThanAnyOne = 0;
    for (let i = 0; i < ROUNDS; i++) {
      const cases = randomCases(SEED + i);
      const what = `seed ${SEED + i}, ${cases.lists.map(({ length }) => length).join('+')} pieces`;
      const ours = cutPlans(cases.lists, cases, STEPS);
      expect(ours.millipence / 1000, what).toBe(optimumOf(highs, modelOf(cases), what));
      expect(ours.boundMillipence, what).toBe(ours.millipence);
      const each = cases.lists.map((list) => cutPlans([list], cases, STEPS).millipence);
      if (ours.millipence > Math.max(...each)) dearerThanAnyOne += 1;
    }
    // Else the lists would be too much alike for the test to tell anything.
    expect(dearerThanAnyOne).toBeGreaterThan(ROUNDS / 20);
  }, 240_000);
});
