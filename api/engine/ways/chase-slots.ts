import type { Cable } from '#model/cable.ts';
import type { Plan } from '../plan/plan.ts';
import type { BesideInWall, OnLine } from './beside-in-walls.ts';
import { chaseCut } from './chase-cut.ts';
import { CHASE_DEPTH_MM } from './lay-in-wall.ts';
import type { Segment } from './run.ts';

/** What decides whether several cables may lie in one chase. */
export interface SlotGate {
  readonly plan: Plan;
  /** How much deeper a chase is with several cables in it, mm. */
  readonly deeperMm: number;
  /** What each of so many may carry along a stretch, A; null where that cannot be told. */
  readonly capacityA: (segment: Segment, cable: Cable, cables: number) => number | null;
}

/** Why two cables that are chased beside each other have a chase each. */
export type WhyApart =
  /** Among so many, the cable named carries less than it must, A. */
  | {
      readonly kind: 'capacity';
      readonly of: string;
      readonly cables: number;
      readonly carriesA: number;
      readonly mustCarryA: number;
    }
  /** So deep into the leaf, and no deeper than that is allowed, mm. */
  | { readonly kind: 'depth'; readonly intoMm: number; readonly limitMm: number }
  /** Nobody can say what the cable named must carry, or what it carries there. */
  | { readonly kind: 'untold'; readonly of: string }
  /** So many at the most lie in one. */
  | { readonly kind: 'full'; readonly most: number };

/** Two stretches beside each other that have a chase each. */
export interface ApartInWall {
  readonly stretches: readonly [OnLine, OnLine];
  readonly why: WhyApart;
}

/** Stretches beside each other by the chase that they lie in. */
export interface ChaseSlots {
  /** Each with one stretch at least. */
  readonly slots: readonly (readonly OnLine[])[];
  readonly apart: readonly ApartInWall[];
}

/** The widest capping and the largest oval tube that merchants sell take three flat cables. Common practice, no source. */
export const MOST_IN_CHASE = 3;

/**
 * As few chases as carry what their cables must: in each as many as the one that bears fewest beside it allows, no more than three,
 * and no more than one where the deeper slot is too deep for the leaf.
 */
export function chaseSlots({ stretches }: BesideInWall, gate: SlotGate): ChaseSlots {
  const allowed = stretches
    .map((stretch) => ({ stretch, most: mostAround(stretch, gate) }))
    .toSorted((a, b) => a.most - b.most || inOrder(a.stretch, b.stretch));
  const slots: OnLine[][] = [];
  for (let next = 0; next < allowed.length; ) {
    const most = allowed[next]?.most ?? 1;
    slots.push(allowed.slice(next, next + most).map(({ stretch }) => stretch));
    next += most;
  }
  return { slots, apart: apartIn(slots, gate) };
}

/** Thinner ones lie together, then by their names, so that the order in which they are asked about does not matter. */
const inOrder = ({ of: a }: OnLine, { of: b }: OnLine): number =>
  a.cable.lineMm2 - b.cable.lineMm2 || (a.id < b.id ? -1 : Number(a.id > b.id));

/** With how many a cable may lie in one chase, itself among them. */
function mostAround(stretch: OnLine, gate: SlotGate): number {
  if (tooDeep(stretch, gate) !== null) return 1;
  let most = 1;
  while (most < MOST_IN_CHASE && carries(stretch, most + 1, gate)) most += 1;
  return most;
}

function carries({ segment, of }: OnLine, cables: number, { capacityA }: SlotGate): boolean {
  const carriesA = capacityA(segment, of.cable, cables);
  return of.mustCarryA !== null && carriesA !== null && carriesA >= of.mustCarryA;
}

/** How deep the slot for several would be, where that is too deep for the leaf. */
function tooDeep(
  { segment }: OnLine,
  { plan, deeperMm }: SlotGate,
): Extract<WhyApart, { kind: 'depth' }> | null {
  const depthMm = (segment.depthMm ?? CHASE_DEPTH_MM) + deeperMm;
  const cut = chaseCut(plan.wallById.get(segment.wallId ?? ''), { ...segment, depthMm });
  if (cut === null || cut.intoMm === null || cut.intoMm <= cut.limitMm) return null;
  return { kind: 'depth', intoMm: cut.intoMm, limitMm: cut.limitMm };
}

function apartIn(slots: readonly (readonly OnLine[])[], gate: SlotGate): readonly ApartInWall[] {
  return slots.flatMap((slot, i) =>
    slots
      .slice(i + 1)
      .flatMap((other) =>
        slot.flatMap((one) =>
          other.map((two) => ({ stretches: [one, two], why: whyApart(one, two, gate) }) as const),
        ),
      ),
  );
}

function whyApart(one: OnLine, other: OnLine, gate: SlotGate): WhyApart {
  const deep = tooDeep(one, gate) ?? tooDeep(other, gate);
  if (deep !== null) return deep;
  const [first, second] = [one, other].map((stretch) => ({ stretch, most: mostAround(stretch, gate) }));
  const { stretch, most } =
    first !== undefined && second !== undefined && second.most < first.most
      ? second
      : (first ?? { stretch: one, most: 1 });
  if (most >= MOST_IN_CHASE) return { kind: 'full', most };
  const { of, segment } = stretch;
  const carriesA = gate.capacityA(segment, of.cable, most + 1);
  if (of.mustCarryA === null || carriesA === null) return { kind: 'untold', of: of.id };
  return { kind: 'capacity', of: of.id, cables: most + 1, carriesA, mustCarryA: of.mustCarryA };
}
