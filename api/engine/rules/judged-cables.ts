import type { CircuitShape } from '../circuit/shape.ts';
import { remembered } from '../plan/remembered.ts';
import type { Facts } from './facts.ts';
import type { Outcome } from './finding.ts';
import type { CheckResult } from './rule.ts';
import { touchedShapes } from './wiring.ts';

/**
 * The circuits that the scheme leaves alone but for one thing: it changes the number of cables in a tube or
 * channel that theirs share. In the order of the job's circuits.
 */
const besideNewCable = remembered((facts: Facts): readonly CircuitShape[] => {
  const changed = new Set(
    facts.proposed.edges.flatMap(({ id, legId }) => (facts.capacities.get(id)?.asFound ? [legId] : [])),
  );
  const circuitIds = new Set(facts.job.legs.flatMap(({ id, circuit }) => (changed.has(id) ? [circuit] : [])));
  return [...facts.shapes.values()].filter(
    ({ circuitId }) => circuitIds.has(circuitId) && !facts.circuitIds.includes(circuitId),
  );
});

/** The circuits whose cables are judged as installed: those touched, and those beside whose cables new ones are laid. */
export function shapesJudged(facts: Facts): readonly CircuitShape[] {
  return [...touchedShapes(facts), ...besideNewCable(facts)];
}

/**
 * What is said of the cables of these circuits; of circuits that the scheme leaves alone only what it brings
 * about. Of the parts of one leg the worst is told, at equal outcomes the one that carries least.
 */
export function cablesJudged<M extends string>(
  facts: Facts,
  judge: (shape: CircuitShape) => readonly CheckResult<M>[],
): readonly CheckResult<M>[] {
  const results = [
    ...touchedShapes(facts).flatMap(judge),
    ...besideNewCable(facts)
      .flatMap(judge)
      .filter(({ origin }) => origin === 'scheme'),
  ];
  const worst = new Map<string, CheckResult<M>>();
  for (const result of results) {
    const other = worst.get(result.subjectId);
    if (other === undefined || isWorse(result, other)) worst.set(result.subjectId, result);
  }
  return [...worst.values()];
}

const fromTheWorst: readonly Outcome[] = ['fails', 'decide', 'not-proven', 'advice', 'passes'];

function isWorse(a: CheckResult<string>, b: CheckResult<string>): boolean {
  const byOutcome = fromTheWorst.indexOf(a.outcome) - fromTheWorst.indexOf(b.outcome);
  return byOutcome === 0 ? Number(a.actual) < Number(b.actual) : byOutcome < 0;
}
