import { householdDiversity } from '#data/standards/household-diversity.ts';

/** A circuit or an appliance of a household, by the rule that its current is counted with. */
export interface HouseholdLoad {
  /**
   * `standard-circuit`: a ring or radial for socket-outlets, with its device's rating; `heating` is heating and
   * power; `instant-water` water heaters without a store; `undiversified` what may all run for long.
   */
  readonly use: 'standard-circuit' | 'lighting' | 'heating' | 'cooker' | 'instant-water' | 'undiversified';
  readonly currentA: number;
  /** Of a cooker: whether its control unit has a socket-outlet. */
  readonly hasSocket?: boolean;
}

type DiversityRule = (typeof householdDiversity.rows)[number];

/**
 * The current that a household is assessed to demand at once, A: nought for an empty list, never more than the sum
 * of the currents and the 5 A of each cooker's socket-outlet.
 * Source: On-Site Guide Appendix A, individual household installations.
 */
export function assessedDemandA(loads: readonly HouseholdLoad[]): number {
  return householdDiversity.rows.reduce((sumA, rule) => {
    const own = loads.filter(({ use }) => use === rule.use);
    const sockets = own.filter(({ hasSocket }) => hasSocket === true).length;
    return (
      sumA +
      countedA(
        rule,
        own.map(({ currentA }) => currentA),
      ) +
      sockets * rule.socketA
    );
  }, 0);
}

function countedA(rule: DiversityRule, currents: readonly number[]): number {
  const { countedBy, fullCount } = rule;
  if (countedBy === 'total') return partA(rule, sumOf(currents));
  const greatestFirst = currents.toSorted((a, b) => b - a);
  const others = greatestFirst.slice(fullCount).map((currentA) => partA(rule, currentA));
  return sumOf(greatestFirst.slice(0, fullCount)) + sumOf(others);
}

const partA = ({ fullUpToA, restRatio }: DiversityRule, currentA: number): number => {
  const wholeA = Math.min(currentA, fullUpToA);
  return wholeA + (currentA - wholeA) * restRatio;
};

const sumOf = (currents: readonly number[]): number =>
  currents.reduce((sumA, currentA) => sumA + currentA, 0);
