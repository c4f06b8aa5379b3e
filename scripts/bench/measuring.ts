import type { Figures } from './figures.ts';

/** How often and how much is measured. */
export interface Measuring {
  readonly rounds: number;
  readonly jobs: number;
}

/** Some figures that are measured together, by a name that they can be asked for by. */
export interface FigureGroup {
  readonly name: string;
  readonly measure: (measuring: Measuring) => Promise<Figures> | Figures;
}

/** What is compared by turns, so that what else the machine does weighs on both alike: the medians of so many rounds. */
export async function byTurns<K extends string>(
  rounds: number,
  works: Readonly<Record<K, (round: number) => number | Promise<number>>>,
): Promise<Readonly<Record<K, readonly number[]>>> {
  const names = Object.keys(works) as K[];
  const times = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<K, number[]>;
  for (let round = 0; round < rounds; round += 1)
    // Who comes first changes from round to round.
    for (const name of round % 2 === 0 ? names : names.toReversed())
      times[name].push(await works[name](round));
  return times;
}
