import type { Scheme } from '#model/scheme.ts';
import type { House } from '../work-scheme.ts';
import { boxMatters } from './box-matters.ts';
import { floorMatters } from './floor-matters.ts';
import { isSameKit } from './kit-differences.ts';
import { type OpenMatter, type OpenOutcome, sameMatter } from './open-matter.ts';
import type { OutcomeBench } from './outcome-bench.ts';
import { rcboMatters, rcdMatters } from './rcd-matters.ts';
import { spurMatters } from './spur-matters.ts';
import { surgeMatters } from './surge-matters.ts';

/**
 * What the survey leaves open for a scheme and what changes its kit, each with the outcomes that do: boxes, starts of
 * cables, RCDs, RCBOs, surge protection, floors, each kind in a stated order. What would change nothing that is bought is no question.
 */
export function openMatters(bench: OutcomeBench, house: House, scheme: Scheme): readonly OpenMatter[] {
  const worked = bench.workedAs(scheme, []);
  const counted = bench.takeoffAs(scheme, []);
  const asked = [
    ...boxMatters(worked),
    ...spurMatters(house, worked),
    ...rcdMatters(house, worked),
    ...rcboMatters(worked),
    ...surgeMatters(worked),
    ...floorMatters(worked),
  ];
  const once = new Map<string, OpenMatter>();
  for (const matter of asked) {
    const known = once.get(matter.id);
    once.set(matter.id, known === undefined ? matter : sameMatter(known, matter));
  }
  return [...once.values()].flatMap((matter): readonly OpenMatter[] => {
    const [first, ...others] = matter.outcomes;
    const telling = others.filter((outcome) => {
      const turned = { matterId: matter.id, kind: matter.kind, outcome };
      return !isSameKit(counted, bench.takeoffAs(scheme, [turned]));
    });
    const outcomes: readonly [OpenOutcome, ...OpenOutcome[]] = [first, ...telling];
    return telling.length === 0 ? [] : [{ ...matter, outcomes }];
  });
}
