import type { Rule } from '../../rules/rule.ts';
import type { Proofs } from '../facts-of.ts';
import type { Aim } from './aim.ts';
import { buildSpace } from './build-space.ts';
import type { RankChoices } from './charged-choices.ts';
import { circuitCharges, remedyCosts } from './circuit-charges.ts';
import type { Judges, Verdicts } from './gate.ts';
import { lookStepwise } from './look-at-many.ts';
import type { Looked, MostLooked, ToLookThrough } from './passing.ts';
import type { SearchGround } from './search-ground.ts';
import { withSharing } from './settled-columns.ts';
import { workshop } from './workshop.ts';

/** By what choices are ranked and judged, and how many. */
export interface LookBy {
  readonly aim: Aim;
  readonly rules: readonly Rule[];
  readonly proofsFound: Proofs;
  readonly verdicts?: Verdicts;
  readonly rank: RankChoices;
  readonly most: MostLooked;
}

/** What looking by one aim came to, and what it was looked through. */
export interface LookedBy {
  readonly aim: Aim;
  readonly toLook: ToLookThrough;
  readonly looked: Looked;
  /** In plain words. */
  readonly leftOut: readonly string[];
}

/**
 * Weighs every way to connect the wanted points by one aim, and looks through the choices, the least first: a step a
 * choice, and once what there is as soon as the least is proved.
 */
export function* lookBy(
  ground: SearchGround,
  { aim, rules, proofsFound, verdicts, rank, most }: LookBy,
): Generator<Looked | null, LookedBy> {
  const shop = workshop(ground, aim);
  const { space, leftOut } = buildSpace(shop);
  const bare: Judges = { rules, proofsFound, ...(verdicts === undefined ? {} : { verdicts }) };
  const charges = circuitCharges(shop, space, bare);
  const judges = { ...bare, remedyCosts: remedyCosts(charges) };
  const toLook = { shop, space: withSharing(shop, space), charges, judges, rank, bad: new Map() };
  const looked = yield* lookStepwise(toLook, most);
  return { aim, toLook, looked, leftOut };
}
