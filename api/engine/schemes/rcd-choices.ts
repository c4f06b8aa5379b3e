import type { Remedy, Scheme } from '#model/scheme.ts';
import { isSameRemedy } from '../circuit/remedy-key.ts';
import { remedyTargets } from '../circuit/remedy-targets.ts';
import type { Worked } from '../connections/worked.ts';
import type { Finding, Outcome } from '../rules/finding.ts';
import type { Rule } from '../rules/rule.ts';
import { runRules } from '../rules/run-rules.ts';
import type { PricedBefore } from './consequences.ts';
import { factsOf, type Proofs } from './facts-of.ts';
import { grossPenceAt } from './price-worked.ts';
import { workScheme } from './work-scheme.ts';

/** One way to give a circuit the RCD that its new outlets and cables need. */
export interface RcdChoice {
  readonly remedies: readonly Remedy[];
  /** What the scheme would cost more with it than as it stands, VAT included. */
  readonly pence: number;
  /** Whether the scheme has it, and no other. */
  readonly isChosen: boolean;
  /** What the checks of RCDs and boards would still say. */
  readonly caveats: readonly { readonly outcome: Outcome; readonly message: string }[];
}

/** The ways to protect one circuit, the cheapest of those first that leave nothing failing. */
export interface RcdChoices {
  readonly circuit: string;
  readonly choices: readonly RcdChoice[];
}

/** A scheme as worked and priced, with what its ways to an RCD are judged by. */
export interface RcdBefore extends PricedBefore {
  readonly worked: Worked;
  readonly proofsFound: Proofs;
  readonly rules: readonly Rule[];
}

const protecting: readonly Remedy['kind'][] = [
  'rcbo',
  'rcd-enclosure',
  'rcd-outlet',
  'rcd-unit',
  'new-board',
];

/**
 * Every way to an RCD for the circuits that need one, side by side: at the board, beside it, at the outlets alone, by a new
 * board. Each is worked, checked and priced whole; what it leaves open the checks themselves say.
 *
 * @returns circuits by id; none for a scheme whose circuits are all behind an RCD already.
 */
export function rcdChoices(before: RcdBefore): readonly RcdChoices[] {
  const { scheme, worked } = before;
  const circuitIds = [...worked.circuitIds].toSorted();
  return circuitIds.flatMap((circuit) => {
    const own = protectionOf(scheme, worked, circuit);
    const bare = { ...scheme, remedies: scheme.remedies.filter((remedy) => !own.includes(remedy)) };
    const asBare = own.length === 0 ? worked : workScheme(before.house, bare, before.runs);
    if (!asksForRcd(findingsOf(asBare, before), circuit)) return [];
    const choices = waysTo(asBare, circuit).map((remedies) => choiceOf(before, { bare, own, remedies }));
    return [{ circuit, choices: choices.toSorted(byWhatFails) }];
  });
}

/** The remedies of a scheme that give a circuit its RCD. */
function protectionOf(scheme: Scheme, { job, proposed }: Worked, circuit: string): readonly Remedy[] {
  const { circuitOfPoint } = remedyTargets(job, proposed);
  const boardId = proposed.circuits.find(({ id }) => id === circuit)?.board?.id;
  return scheme.remedies.filter(
    ({ kind, at = '' }) =>
      protecting.includes(kind) && (at === circuit || at === boardId || circuitOfPoint.get(at) === circuit),
  );
}

const findingsOf = (worked: Worked, { library, proofsFound, rules }: RcdBefore): readonly Finding[] =>
  runRules(factsOf(worked, library, proofsFound), rules);

const asksForRcd = (findings: readonly Finding[], circuit: string): boolean =>
  findings.some(({ outcome, fix }) => outcome !== 'passes' && fix?.kind === 'rcbo' && fix.at === circuit);

/** Whatever may be fitted: for a circuit that was found, as one device or at each new outlet. */
function waysTo({ job, proposed }: Worked, circuit: string): readonly (readonly Remedy[])[] {
  const board = proposed.circuits.find(({ id }) => id === circuit)?.board?.id;
  const outlets = (remedyTargets(job, proposed).groupsOf('rcd-outlet')[0] ?? []).filter(
    (target) => target.circuitId === circuit,
  );
  const wanted = outlets.filter(({ id }) =>
    job.points.some((point) => point.id === id && point.status === 'wanted'),
  );
  return [
    [{ kind: 'rcbo', at: circuit }],
    [{ kind: 'rcd-enclosure', at: circuit }],
    ...(wanted.length === 0 ? [] : [wanted.map(({ id }): Remedy => ({ kind: 'rcd-outlet', at: id }))]),
    ...(board === undefined ? [] : [[{ kind: 'new-board', at: board }] as const]),
  ];
}

/** The rules on RCDs, and on what a board takes. */
const isAboutProtection = ({ rule }: Finding): boolean =>
  /^(RC|DV)\d/.test(rule) || rule === 'SU5' || rule === 'PO8';

function choiceOf(
  before: RcdBefore,
  {
    bare,
    own,
    remedies,
  }: { readonly bare: Scheme; readonly own: readonly Remedy[]; readonly remedies: readonly Remedy[] },
): RcdChoice {
  const { house, library, runs } = before;
  const kept = own.filter((remedy) => remedies.some((each) => isSameRemedy(each, remedy)));
  // Devices that were named stay named.
  const fitted = remedies.map((remedy) => kept.find((each) => isSameRemedy(each, remedy)) ?? remedy);
  const worked = workScheme(house, { ...bare, remedies: [...bare.remedies, ...fitted] }, runs);
  const caveats = findingsOf(worked, before).filter(
    (finding) => finding.outcome !== 'passes' && isAboutProtection(finding),
  );
  return {
    remedies: fitted,
    pence: grossPenceAt(worked, library, before.contingencyPercent) - before.grossPence,
    isChosen: kept.length === remedies.length && own.length === remedies.length,
    caveats: caveats.map(({ outcome, message }) => ({ outcome, message })),
  };
}

/** Those first that leave nothing failing, of them the cheapest. */
const byWhatFails = (a: RcdChoice, b: RcdChoice): number => failing(a) - failing(b) || a.pence - b.pence;
const failing = ({ caveats }: RcdChoice): number =>
  caveats.some(({ outcome }) => outcome === 'fails') ? 1 : 0;
