import type { Library, Norm, Price } from '#model/library.ts';
import { knownTasks } from '../../labour/known-tasks.ts';
import { isSameData } from '../../plan/same-data.ts';
import { knownItems } from '../../takeoff/items.ts';
import { capital, pounds } from '../said.ts';
import {
  fromTo,
  type ListDifference,
  listDifference,
  type MoveStep,
  withoutThing,
  withThing,
} from './move-step.ts';
import type { PricedFigures, SchemeState } from './priced-state.ts';
import { termSteps } from './term-steps.ts';

const itemOf = ({ item }: Price): string => item;
const taskOf = ({ task }: Norm): string => task;
const sumOf = ({ sum }: Library['norms']['sums'][number]): string => sum;

const itemWords = (id: string): string => knownItems.find((item) => item.id === id)?.description ?? id;
const taskWords = (id: string): string => knownTasks.find((task) => task.id === id)?.description ?? id;

const withPrices = (state: SchemeState, prices: Partial<Library['prices']>): SchemeState => ({
  ...state,
  library: { ...state.library, prices: { ...state.library.prices, ...prices } },
});
const withNorms = (state: SchemeState, norms: Partial<Library['norms']>): SchemeState => ({
  ...state,
  library: { ...state.library, norms: { ...state.library.norms, ...norms } },
});

const step = (
  cause: MoveStep['cause'],
  words: string,
  detail: string,
  apply: MoveStep['apply'],
): MoveStep => ({ cause, words, detail, subjects: [], apply });

/** All that differs of a list, as it was and as it is; nothing stands for what is not there. */
const allOf = <T>({ added, changed, removed }: ListDifference<T>) => [
  ...added.map((after) => ({ before: undefined, after })),
  ...changed,
  ...removed.map((before) => ({ before, after: undefined })),
];

const priceWords = (price: Price | undefined): string =>
  price === undefined
    ? 'not in the list'
    : `${pounds(price.pricePence)}${price.perQuantity === 1 ? '' : ` for ${price.perQuantity}`}`;

/** Prices of what the job needs, one item at a time, then all others of the list at once. */
function priceSteps(before: Library, after: Library, items: ReadonlySet<string>): readonly MoveStep[] {
  const differing = allOf(listDifference(before.prices.items, after.prices.items, itemOf))
    .map((one) => ({ ...one, item: (one.after ?? one.before)?.item ?? '' }))
    .filter(({ item }) => items.has(item))
    .toSorted((a, b) => (a.item < b.item ? -1 : 1));
  const ofItems = differing.map(({ item, before: was, after: is }) =>
    step('price', `Price of ${itemWords(item)}`, fromTo(priceWords(was), priceWords(is)), (state) => {
      const list = state.library.prices.items;
      return withPrices(state, {
        items: is === undefined ? withoutThing(list, item, itemOf) : withThing(list, is, itemOf),
      });
    }),
  );
  if (isSameData(before.prices, after.prices)) return [];
  return [
    ...ofItems,
    step('rest', 'Other changes of the price list', '', (state) => withPrices(state, after.prices)),
  ];
}

const hours = (norms: Library['norms'], other: Library['norms']): string => {
  const rate = `${pounds(norms.ratePencePerHour)} an hour`;
  if (norms.rateBasis === other.rateBasis) return rate;
  return `${rate}, ${norms.rateBasis === 'cost' ? 'what it costs the firm' : 'as charged'}`;
};

const minutes = (norm: Norm | undefined): string =>
  norm === undefined ? 'no norm' : `${norm.typicalMin} min (${norm.lowMin} to ${norm.highMin})`;

/** The rate, overhead, minutes of what the job needs task by task, sums, waste, then all others at once. */
function normSteps(before: Library, after: Library, tasks: ReadonlySet<string>): readonly MoveStep[] {
  const [was, is] = [before.norms, after.norms];
  if (isSameData(was, is)) return [];
  const steps: MoveStep[] = [];
  if (was.ratePencePerHour !== is.ratePencePerHour || was.rateBasis !== is.rateBasis)
    steps.push(
      step('rate', 'Hourly rate', fromTo(hours(was, is), hours(is, was)), (state) => {
        const { rateBasis: _, ...norms } = state.library.norms;
        const basis = is.rateBasis === undefined ? {} : { rateBasis: is.rateBasis };
        const library = {
          ...state.library,
          norms: { ...norms, ...basis, ratePencePerHour: is.ratePencePerHour },
        };
        return { ...state, library };
      }),
    );
  if (!isSameData(was.overhead, is.overhead))
    steps.push(
      step('rate', 'Overhead', '', (state) => {
        const { overhead: _, ...norms } = state.library.norms;
        const overhead = is.overhead === undefined ? {} : { overhead: is.overhead };
        return { ...state, library: { ...state.library, norms: { ...norms, ...overhead } } };
      }),
    );
  const differing = allOf(listDifference(was.tasks, is.tasks, taskOf))
    .map((one) => ({ ...one, task: (one.after ?? one.before)?.task ?? '' }))
    .filter(({ task }) => tasks.has(task))
    .toSorted((a, b) => (a.task < b.task ? -1 : 1));
  for (const { task, before: old, after: now } of differing)
    steps.push(
      step('norm', `Minutes for: ${taskWords(task)}`, fromTo(minutes(old), minutes(now)), (state) => {
        const list = state.library.norms.tasks;
        return withNorms(state, {
          tasks: now === undefined ? withoutThing(list, task, taskOf) : withThing(list, now, taskOf),
        });
      }),
    );
  for (const one of allOf(listDifference(was.sums, is.sums, sumOf)).toSorted((a, b) =>
    sumName(a) < sumName(b) ? -1 : 1,
  ))
    steps.push(sumStep(sumName(one), one.before, one.after));
  if (!isSameData(was.waste, is.waste))
    steps.push(
      step('norm', 'Waste allowed on materials', '', (state) => withNorms(state, { waste: is.waste })),
    );
  return [
    ...steps,
    step('rest', 'Other changes of the labour norms', '', (state) => ({
      ...state,
      library: { ...state.library, norms: is },
    })),
  ];
}

type Sum = Library['norms']['sums'][number];
const sumName = ({ before, after }: { before: Sum | undefined; after: Sum | undefined }): string =>
  (after ?? before)?.sum ?? '';

function sumStep(sum: string, was: Sum | undefined, is: Sum | undefined): MoveStep {
  const words = (one: Sum | undefined): string => (one === undefined ? 'none' : pounds(one.pence));
  return step('sum', capital(sum.replaceAll('-', ' ')), fromTo(words(was), words(is)), (state) => {
    const list = state.library.norms.sums;
    return withNorms(state, {
      sums: is === undefined ? withoutThing(list, sum, sumOf) : withThing(list, is, sumOf),
    });
  });
}

/**
 * The changes from one library to another, in order: prices of what the job needs by item, the rest of the list; the
 * hourly rate, overhead, minutes of what the job needs by task, sums, waste, the rest of the norms; the firm's own terms;
 * what is left.
 *
 * @param used what the scheme's price names before or after.
 */
export function librarySteps(
  before: Library,
  after: Library,
  used: Pick<PricedFigures, 'items' | 'tasks'>,
): readonly MoveStep[] {
  if (isSameData(before, after)) return [];
  const firmTerms = termSteps(before.terms, after.terms, {
    cause: 'firm-terms',
    whose: 'The firm’s ',
    apply: (state, terms) => ({ ...state, library: { ...state.library, terms } }),
    termsOf: (state) => state.library.terms,
  });
  return [
    ...priceSteps(before, after, used.items),
    ...normSteps(before, after, used.tasks),
    ...firmTerms,
    step('rest', 'Other settings of the firm', '', (state) => ({ ...state, library: after })),
  ];
}
