import { plugFuses } from '#data/standards/plug-fuses.ts';
import type { FusedUnit } from '../connections/things.ts';
import { fuseCarries } from '../proof/fuse-carries.ts';
import { NOMINAL_V } from '../proof/spur-load.ts';
import type { Facts } from './facts.ts';
import { originOfUnit } from './fused-unit-origin.ts';
import { type CheckResult, rule } from './rule.ts';
import { rounded } from './wiring.ts';

type Message = 'fits' | 'tooMuch' | 'fuseTooSmall' | 'largerThanNeeded' | 'practiceOnly' | 'fuseUnknown';

/** The fuse of a unit carries the fixed load named behind it, and is no larger than it wants. */
export const fuseByLoad = rule<Message>({
  id: 'FU1',
  title: 'Fuse for the fixed load',
  source: 'BS 7671 433.1.1 (In ≥ Ib), BS 1362 ratings; 3 A up to 700 W is common practice',
  messages: {
    fits: 'The fixed load of {watts} W draws {actual} A behind a {limit} A fuse.',
    tooMuch: 'The fixed load of {watts} W draws {actual} A; the largest plug fuse is {limit} A.',
    fuseTooSmall:
      'The fixed load of {watts} W draws {actual} A, and the fuse is {limit} A: it would operate.',
    largerThanNeeded:
      'The fixed load of {watts} W draws {actual} A; a {limit} A fuse protects its flex better.',
    practiceOnly:
      'The fixed load of {watts} W draws {actual} A behind a {limit} A fuse. Sources differ: the trade fits 3 A up to 700 W, by arithmetic 690 W is its end. Follow the maker.',
    fuseUnknown: 'The fuse before the fixed load of {watts} W ({actual} A) was not seen.',
  },
  remedies: {
    tooMuch: 'A circuit of its own for the load, or less load behind the unit.',
    fuseTooSmall: 'A 13 A fuse, if the flex of the appliance carries it.',
    largerThanNeeded: 'A 3 A fuse, unless the maker asks for more (motors, inrush).',
    practiceOnly: 'Take the maker’s figure.',
    fuseUnknown: 'Open the fuse carrier and read it.',
  },
  couldFail: true,
  check: (facts) => unitsTouched(facts).flatMap((unit) => judged(facts, unit)),
});

function unitsTouched(facts: Facts): readonly FusedUnit[] {
  return facts.things.fusedUnits.filter(({ circuitId }) => facts.circuitIds.includes(circuitId));
}

function judged(facts: Facts, unit: FusedUnit): readonly CheckResult<Message>[] {
  if (unit.fixedW === null) return [];
  const [small, large] = plugFuses.rows;
  const exactA = unit.fixedW / NOMINAL_V;
  const figures = (limit: number) => {
    const actual = rounded(exactA);
    return { actual, limit, unit: 'A', values: { actual, limit, watts: unit.fixedW ?? 0 } };
  };
  const head = { subjectId: unit.id, origin: originOfUnit(facts, unit, 'fixed') };
  if (exactA > large.ratingA)
    return [{ ...head, ...figures(large.ratingA), outcome: 'fails', messageId: 'tooMuch' }];
  if (unit.fuseA === null)
    return [{ ...head, ...figures(large.ratingA), outcome: 'not-proven', messageId: 'fuseUnknown' }];
  const carries = fuseCarries(unit.fixedW, unit.fuseA);
  if (carries === 'by-practice')
    return [{ ...head, ...figures(unit.fuseA), outcome: 'advice', messageId: 'practiceOnly' }];
  if (carries === 'over')
    return [{ ...head, ...figures(unit.fuseA), outcome: 'fails', messageId: 'fuseTooSmall' }];
  // Outlets behind the same unit want the larger fuse whatever the fixed load is.
  const tooLarge = exactA <= small.ratingA && unit.fuseA > small.ratingA && unit.outlets === 0;
  return tooLarge
    ? [{ ...head, ...figures(small.ratingA), outcome: 'advice', messageId: 'largerThanNeeded' }]
    : [{ ...head, ...figures(unit.fuseA), outcome: 'passes', messageId: 'fits' }];
}
