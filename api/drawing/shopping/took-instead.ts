import type { ShoppingEntry, ShoppingList } from '#engine/price/shopping/shopping-list.ts';
import { pounds } from '#engine/quotation/said.ts';
import type { Actuals } from '#model/job.ts';

/** What was taken in the place of something that was not in stock, as the job records it. */
export type TookInstead = NonNullable<Actuals['instead']>[number];

/** One thing that was taken instead, for people. */
export interface InsteadSaid {
  readonly took: TookInstead;
  /** "Not in stock; taken instead: …, £14.20, £1.40 more than the list". */
  readonly words: string;
  /** What it cost beyond what the list says of what was wanted; null where either is not known. */
  readonly differencePence: number | null;
}

/** What of a list was taken otherwise. */
export interface Instead {
  /** By the key of an entry of the list. */
  readonly byKey: ReadonlyMap<string, InsteadSaid>;
  /** Recorded for what is on the list no longer, in the order recorded. */
  readonly strays: readonly InsteadSaid[];
  /** By how much the shopping came out otherwise, in words; empty where no difference is known. */
  readonly sumWords: string;
}

/** What was taken instead of things on a list. The estimate goes by its own bill, whatever was taken. */
export function insteadOf({ groups, vat }: ShoppingList, taken: readonly TookInstead[]): Instead {
  const entries = new Map(groups.flatMap((group) => group.entries.map((entry) => [entry.key, entry])));
  const said = taken.map((one) => insteadSaid(one, entries.get(one.entry)));
  const differences = said.flatMap(({ differencePence }) =>
    differencePence === null ? [] : [differencePence],
  );
  const pence = differences.reduce((sum, one) => sum + one, 0);
  return {
    byKey: new Map(said.flatMap((one) => (entries.has(one.took.entry) ? [[one.took.entry, one]] : []))),
    strays: said.filter(({ took }) => !entries.has(took.entry)),
    sumWords:
      differences.length === 0
        ? ''
        : `What was taken instead came to ${moreOrLess(pence)}, VAT ${vat === 'included' ? '' : 'not '}in it. The estimate stays as it is.`,
  };
}

function insteadSaid(took: TookInstead, entry: ShoppingEntry | undefined): InsteadSaid {
  const { pence } = took;
  const listed = entry?.pence ?? null;
  const differencePence = pence === undefined || listed === null ? null : pence - listed;
  const parts = [
    `Not in stock; taken instead: ${took.took}`,
    ...(pence === undefined ? [] : [pounds(pence)]),
    ...(differencePence === null ? [] : [moreOrLess(differencePence)]),
  ];
  return { took, words: parts.join(', '), differencePence };
}

function moreOrLess(pence: number): string {
  if (pence === 0) return 'as much as the list says';
  return `${pounds(Math.abs(pence))} ${pence > 0 ? 'more' : 'less'} than the list says`;
}
