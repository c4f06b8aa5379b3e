import type { Connection } from '#model/scheme.ts';
import type { PriceBuildUp, Totals } from '../price/totals.ts';
import { type RoomLeft, roomLeft } from '../proof/room-left.ts';
import type { Finding, Outcome } from '../rules/finding.ts';
import { outcomeCount } from '../rules/outcome-count.ts';
import type { SchemeEstimate } from './estimate-result.ts';
import { type SchemeCable, schemeCable } from './scheme-cable.ts';

/** What one of two compared schemes comes to. */
export interface SchemeFigures {
  readonly id: string;
  readonly name: string;
  readonly complies: SchemeEstimate['complies'];
  /** Selling figures: the first four of money add up to net, net and VAT to what is to be paid. */
  readonly totals: Totals;
  readonly vat: PriceBuildUp['vat'];
  readonly vatPercent: number;
  /** The ends of the range, VAT included. */
  readonly lowPence: number;
  readonly highPence: number;
  /** How much the work disturbs the house, in the points of the firm's norms. */
  readonly messPoints: number;
  readonly cable: SchemeCable;
  readonly newJoints: number;
  readonly newBoxes: number;
  readonly newUnits: number;
  /** How many checks come out so. */
  readonly checks: Readonly<Record<'fails' | 'decide' | 'not-proven', number>>;
  readonly room: readonly RoomLeft[];
}

/** A line of the bill, of the labour or of the other sums that the two differ in; money at cost, before mark-up and VAT. */
export interface CostDifference {
  readonly kind: 'materials' | 'labour' | 'other';
  readonly description: string;
  readonly aPence: number;
  readonly bPence: number;
}

/** What leads from the lines at cost to the price before VAT. */
export interface CostStep {
  readonly step: 'mark-up' | 'rounding' | 'contingency';
  readonly aPence: number;
  readonly bPence: number;
}

/** Two schemes side by side. */
export interface Comparison {
  readonly a: SchemeFigures;
  readonly b: SchemeFigures;
  /** What fails, must be decided or is not proven in the one and not so in the other, gravest first. */
  readonly onlyA: readonly Finding[];
  readonly onlyB: readonly Finding[];
  /** Largest difference first, ties by description. */
  readonly differences: readonly CostDifference[];
  /** What the lines come to that are the same in both, at cost. */
  readonly samePence: number;
  /** Steps that are nothing in both are left out; with the lines they add up to the price before VAT. */
  readonly steps: readonly CostStep[];
}

const isNew = ({ state }: { readonly state: 'found' | 'new' }): boolean => state === 'new';

function figuresOf(scheme: SchemeEstimate): SchemeFigures {
  const countOf = (outcome: Outcome): number => outcomeCount(scheme.findings, outcome);
  return {
    id: scheme.id,
    name: scheme.name,
    complies: scheme.complies,
    totals: scheme.totals,
    vat: scheme.price.vat,
    vatPercent: scheme.price.vatPercent,
    lowPence: scheme.range.lowPence,
    highPence: scheme.range.highPence,
    messPoints: scheme.messPoints,
    cable: schemeCable(scheme.runs),
    newJoints: scheme.joints.filter(isNew).length,
    newBoxes: scheme.boxes.filter(({ action }) => action === 'fit' || action === 're-box').length,
    newUnits: scheme.fusedUnits.filter(isNew).length,
    checks: { fails: countOf('fails'), decide: countOf('decide'), 'not-proven': countOf('not-proven') },
    room: roomLeft(scheme.worked),
  };
}

/** All that is open; what passes and advice are not. */
const isOpen = ({ outcome }: Finding): boolean =>
  outcome === 'fails' || outcome === 'decide' || outcome === 'not-proven';
const order = { fails: 0, decide: 1, 'not-proven': 2, advice: 3, passes: 4 } as const;

/** The points that a connection is for. */
function pointsOf(connection: Connection): readonly string[] {
  if (connection.kind === 'spur') return [connection.to];
  if (connection.kind === 'ring-extension') return connection.through;
  if (connection.kind === 'close-spur') return [connection.point];
  return connection.feeds.map(({ to }) => to);
}

/** What a finding speaks of, in words that two schemes share: their connections have ids of their own. */
function sharedSubject({ id, worked, runs }: SchemeEstimate): (subject: string) => string {
  const connections = new Map(
    (worked.scheme?.connections ?? []).map((one) => [one.id, pointsOf(one).toSorted().join(' ')]),
  );
  const leadsTo = new Map(runs.map((run) => [run.id, run.to.pointId]));
  return (subject) => {
    if (subject === id) return 'scheme';
    const point = leadsTo.get(subject);
    if (typeof point === 'string') return `cable ${point}`;
    const [head = '', ...role] = subject.split('/');
    return [connections.get(head) ?? head, ...role].join('/');
  };
}

/** Findings of the one that the other has not: alike are those of one rule about one thing. */
function onlyIn(one: SchemeEstimate, other: SchemeEstimate): readonly Finding[] {
  const keyIn = (scheme: SchemeEstimate): ((finding: Finding) => string) => {
    const shared = sharedSubject(scheme);
    return ({ rule, subject, outcome }) => `${rule} ${outcome} ${shared(subject)}`;
  };
  const [ownKey, otherKey] = [keyIn(one), keyIn(other)];
  const known = new Set(other.findings.map(otherKey));
  return one.findings
    .filter((finding) => isOpen(finding) && !known.has(ownKey(finding)))
    .toSorted((a, b) => order[a.outcome] - order[b.outcome]);
}

interface Cost {
  readonly kind: CostDifference['kind'];
  readonly description: string;
  readonly pence: number;
}

function costsOf(scheme: SchemeEstimate): readonly Cost[] {
  const { price, labour } = scheme;
  const level = ({ low: 'lowMin', typical: 'typicalMin', high: 'highMin' } as const)[price.labourLevel];
  return [
    ...price.bill.map(
      ({ description, costPence }): Cost => ({ kind: 'materials', description, pence: costPence }),
    ),
    ...labour.map((task): Cost => {
      const pence = Math.round(((task[level] ?? 0) / 60) * price.ratePencePerHour);
      return { kind: 'labour', description: task.description, pence };
    }),
    ...price.other.map(({ description, pence }): Cost => ({ kind: 'other', description, pence })),
  ];
}

type Sums = ReadonlyMap<string, Cost>;

function sums(costs: readonly Cost[]): Sums {
  const byKey = new Map<string, Cost>();
  for (const cost of costs) {
    const key = `${cost.kind} ${cost.description}`;
    byKey.set(key, { ...cost, pence: cost.pence + (byKey.get(key)?.pence ?? 0) });
  }
  return byKey;
}

function differencesOf(ofA: Sums, ofB: Sums): readonly CostDifference[] {
  return [...new Map([...ofA, ...ofB])]
    .map(([key, { kind, description }]) => ({
      kind,
      description,
      aPence: ofA.get(key)?.pence ?? 0,
      bPence: ofB.get(key)?.pence ?? 0,
    }))
    .filter(({ aPence, bPence }) => aPence !== bPence)
    .sort(
      (one, other) =>
        Math.abs(other.aPence - other.bPence) - Math.abs(one.aPence - one.bPence) ||
        (one.description < other.description ? -1 : 1),
    );
}

const samePenceOf = (ofA: Sums, ofB: Sums): number =>
  [...ofA].reduce((sum, [key, { pence }]) => sum + (ofB.get(key)?.pence === pence ? pence : 0), 0);

/** Each step of one scheme: mark-up on materials, pence by which tasks differ from their sum, contingency. */
function stepsOf({ price, totals }: SchemeEstimate, costs: Sums): Readonly<Record<CostStep['step'], number>> {
  const labourPence = [...costs.values()]
    .filter(({ kind }) => kind === 'labour')
    .reduce((sum, { pence }) => sum + pence, 0);
  return {
    'mark-up': totals.materialsPence - price.materialsCostPence,
    rounding: totals.labourPence - labourPence,
    contingency: totals.contingencyPence,
  };
}

/** Puts two schemes of one job side by side: money, work, what capacity is left, what fails, where the difference lies. */
export function compareSchemes(a: SchemeEstimate, b: SchemeEstimate): Comparison {
  const [ofA, ofB] = [sums(costsOf(a)), sums(costsOf(b))];
  const [stepsA, stepsB] = [stepsOf(a, ofA), stepsOf(b, ofB)];
  const steps = (['mark-up', 'rounding', 'contingency'] as const)
    .map((step): CostStep => ({ step, aPence: stepsA[step], bPence: stepsB[step] }))
    .filter(({ aPence, bPence }) => aPence !== 0 || bPence !== 0);
  return {
    a: figuresOf(a),
    b: figuresOf(b),
    onlyA: onlyIn(a, b),
    onlyB: onlyIn(b, a),
    differences: differencesOf(ofA, ofB),
    samePence: samePenceOf(ofA, ofB),
    steps,
  };
}

/** True where the scheme puts several points behind one fuse. */
const isFusedBranch = ({ worked }: SchemeEstimate): boolean =>
  (worked.scheme?.connections ?? []).some(
    (connection) => connection.kind === 'fused-spur' && connection.feeds.length > 1,
  );

const carriesRing = ({ worked }: SchemeEstimate): boolean =>
  (worked.scheme?.connections ?? []).some(({ kind }) => kind === 'ring-extension');

/**
 * The two schemes that are most worth comparing: a fused branch and one that carries the ring on, where the job has
 * both; else the two cheapest, those that may go ahead first. Null with fewer than two schemes.
 */
export function pairToCompare(
  schemes: readonly SchemeEstimate[],
): readonly [SchemeEstimate, SchemeEstimate] | null {
  const byMerit = schemes.toSorted(
    (a, b) =>
      Number(a.complies === 'no') - Number(b.complies === 'no') || a.totals.grossPence - b.totals.grossPence,
  );
  const fused = byMerit.find(isFusedBranch);
  const ring = byMerit.find((scheme) => scheme !== fused && carriesRing(scheme));
  if (fused !== undefined && ring !== undefined) return [fused, ring];
  const [first, second] = byMerit;
  return first === undefined || second === undefined ? null : [first, second];
}
