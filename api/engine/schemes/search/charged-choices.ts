import type { CircuitCharge } from './circuit-charges.ts';
import type { SchemeColumn } from './scheme-column.ts';
import type { Choice, Column, SearchSpace } from './search-space.ts';

/** Gives complete choices of a space, cheapest first, each once. */
export type RankChoices = <C extends Column>(space: SearchSpace<C>) => Generator<Choice<C>, void>;

/** A choice with what its circuits charge once: it costs no less than `cost`. */
export interface ChargedChoice {
  readonly choice: Choice<SchemeColumn>;
  /** Columns and certain charges together. */
  readonly cost: number;
}

/** How a circuit is touched: not at all, only for points that ask for no remedy, or with its remedy. */
type State = 'untouched' | 'plain' | 'remedied';

const statesOf = ({ remedies, needing }: CircuitCharge): readonly State[] =>
  remedies > 0 && needing !== 0 ? ['untouched', 'plain', 'remedied'] : ['untouched', 'plain'];

/**
 * Complete choices in the order of their cost with the circuits' charges. Charges belong to circuits, not to columns,
 * so the space is ranked once for every way in which its circuits can be touched, and the rankings are merged. This is
 * exact: in the space of one such way, the columns of untouched circuits are left out, and of plainly touched ones
 * those with a point that asks for the remedy; every choice of that space costs its columns and no more than the
 * charges of that way, and a choice is taken from the one way that is truly its own, so none comes twice, and none
 * comes after a dearer one. Two or three ways a circuit: houses have few socket circuits.
 */
export function* chargedChoices(
  space: SearchSpace<SchemeColumn>,
  charges: readonly CircuitCharge[],
  rank: RankChoices,
): Generator<ChargedChoice> {
  const rankings = rankingsOf(space, charges).map(({ states, charge, space: own }) => {
    const choices = rank(own);
    return { states, charge, choices, next: choices.next() };
  });
  for (;;) {
    let best: (typeof rankings)[number] | null = null;
    for (const ranking of rankings)
      if (!ranking.next.done && costOf(ranking) < (best === null ? Number.POSITIVE_INFINITY : costOf(best)))
        best = ranking;
    if (best === null || best.next.done) return;
    const choice = best.next.value;
    const cost = costOf(best);
    best.next = best.choices.next();
    if (isOwn(choice, charges, best.states)) yield { choice, cost };
  }
}

/** The space by every way in which its circuits can be touched, and what they charge then. */
export function rankingsOf(space: SearchSpace<SchemeColumn>, charges: readonly CircuitCharge[]) {
  return waysToTouch(charges).map((states) => ({
    states,
    charge: charges.reduce((sum, each, i) => sum + chargeIn(each, states[i] ?? 'untouched'), 0),
    space: within(space, charges, states),
  }));
}

function costOf(ranking: {
  readonly charge: number;
  readonly next: IteratorResult<Choice<SchemeColumn>, unknown>;
}): number {
  return ranking.next.done ? Number.POSITIVE_INFINITY : ranking.charge + ranking.next.value.cost;
}

function chargeIn({ touched, remedies }: CircuitCharge, state: State): number {
  if (state === 'untouched') return 0;
  return state === 'plain' ? touched : touched + remedies;
}

function waysToTouch(charges: readonly CircuitCharge[]): readonly (readonly State[])[] {
  return charges.reduce<readonly (readonly State[])[]>(
    (ways, charge) => ways.flatMap((way) => statesOf(charge).map((state) => [...way, state])),
    [[]],
  );
}

function within(
  space: SearchSpace<SchemeColumn>,
  charges: readonly CircuitCharge[],
  states: readonly State[],
): SearchSpace<SchemeColumn> {
  const stateOf = new Map(charges.map((charge, i) => [charge.circuitId, { charge, state: states[i] }]));
  const isIn = ({ circuitIds, mask }: SchemeColumn): boolean =>
    circuitIds.every((id) => {
      const known = stateOf.get(id);
      if (known?.state === 'plain')
        return statesOf(known.charge).length === 2 || !(mask & known.charge.needing);
      return known?.state === 'remedied';
    });
  return {
    points: space.points,
    layers: space.layers
      .map(({ id, columns }) => ({ id, columns: columns.filter(isIn) }))
      .filter(({ columns }) => columns.length > 0),
    free: space.free.filter(isIn),
  };
}

/** Whether a choice touches every circuit just as the states say. */
function isOwn(
  { columns }: Choice<SchemeColumn>,
  charges: readonly CircuitCharge[],
  states: readonly State[],
): boolean {
  return charges.every((charge, i) => {
    const mask = columns.reduce(
      (sum, column) => (column.circuitIds.includes(charge.circuitId) ? sum | column.mask : sum),
      0,
    );
    if (mask === 0) return states[i] === 'untouched';
    const isRemedied = statesOf(charge).length > 2 && (mask & charge.needing) !== 0;
    return states[i] === (isRemedied ? 'remedied' : 'plain');
  });
}
