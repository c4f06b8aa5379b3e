import type { Remedy, Scheme } from '#model/scheme.ts';
import { remedyKey } from '../../circuit/remedy-key.ts';
import type { Worked } from '../../connections/worked.ts';
import { remembered } from '../../plan/remembered.ts';
import type { Finding } from '../../rules/finding.ts';
import type { Rule } from '../../rules/rule.ts';
import { causedFailures } from '../../rules/run-rules.ts';
import { factsOf, factsOfWiring, type Proofs } from '../facts-of.ts';
import { workScheme } from '../work-scheme.ts';
import { endsByCause, type Part, type SearchGround, withIds } from './search-ground.ts';
import { noWorks, type Works, worksTogether } from './works.ts';

/** What schemes are judged by. */
export interface Judges {
  readonly rules: readonly Rule[];
  /** Whether the rules read the wiring alone, so that no cable has to be laid and nothing proved for them; absent: no. */
  readonly byWiring?: boolean;
  readonly proofsFound: Proofs;
  /** Verdicts on this house by all these rules, kept by what was judged; absent: none are kept. */
  readonly verdicts?: Verdicts;
  /** What the search knows beforehand that some remedies take; worked out otherwise. */
  readonly remedyCosts?: ReadonlyMap<string, Works>;
}

/** Verdicts by what was judged: where the wanted points are, and the scheme. */
export type Verdicts = Map<string, Judged>;

/** The rule that every wanted point is joined: every part of a scheme breaks it by itself. */
const WANTED_CONNECTED = 'CN2';

const ofParts = remembered((rules: readonly Rule[]) => rules.filter(({ id }) => id !== WANTED_CONNECTED));

/** The judges of a part of a scheme, which leaves points to the other parts. Verdicts kept are of whole schemes. */
export function judgesOfParts({ rules, proofsFound }: Judges): Judges {
  return { rules: ofParts(rules), proofsFound };
}

/** More verdicts than these are not kept. */
const MOST_VERDICTS = 2000;

/** A scheme that went through the gate: with the remedies it needs, or with what fails. */
export type Judged =
  | { readonly passes: true; readonly scheme: Scheme; readonly remedyWorks: Works }
  | { readonly passes: false; readonly scheme: Scheme; readonly fails: readonly Finding[] };

/** A remedy may ask for another; more rounds than these no rule asks for. */
const ROUNDS = 4;

/** Failures by a scheme's own doing; that it leaves out a point without a place is the search's doing, and said there. */
function failuresOf(
  { library, unplaced }: SearchGround,
  worked: Worked,
  { rules, proofsFound, byWiring = false }: Judges,
): readonly Finding[] {
  const fails = causedFailures((byWiring ? factsOfWiring : factsOf)(worked, library, proofsFound), rules);
  return fails.filter(({ rule, subject }) => !(rule === WANTED_CONNECTED && unplaced.has(subject)));
}

/**
 * Checks a scheme by all rules. Only what fails by the scheme's own doing bars it; where every such failure says what
 * in the job file would put it right, that is done, counted, and the scheme checked again.
 */
export function judge(ground: SearchGround, scheme: Scheme, judges: Judges): Judged {
  const { verdicts } = judges;
  if (verdicts === undefined) return judgeAnew(ground, scheme, judges);
  const name = JSON.stringify([ground.wanted.map(({ point }) => point), scheme.connections, scheme.remedies]);
  const known = verdicts.get(name);
  if (known !== undefined) return known;
  const judged = judgeAnew(ground, scheme, judges);
  if (verdicts.size >= MOST_VERDICTS) verdicts.clear();
  verdicts.set(name, judged);
  return judged;
}

function judgeAnew(ground: SearchGround, scheme: Scheme, judges: Judges): Judged {
  const { house } = ground;
  let now = scheme;
  let laid: Worked['runs'] | undefined = judges.byWiring === true ? [] : undefined;
  for (let round = 0; round < ROUNDS; round += 1) {
    const worked = workScheme(house, now, laid);
    laid = worked.runs;
    const fails = failuresOf(ground, worked, judges);
    if (fails.length === 0)
      return { passes: true, scheme: now, remedyWorks: worksOfRemedies(ground, now, judges.remedyCosts) };
    const fixes = newRemedies(now, fails);
    if (fixes === null) return { passes: false, scheme: now, fails };
    now = { ...now, remedies: [...now.remedies, ...fixes] };
  }
  return { passes: false, scheme: now, fails: failuresOf(ground, workScheme(house, now, laid), judges) };
}

/** The remedies of failures; null where one has none, or has it already. */
function newRemedies(scheme: Scheme, fails: readonly Finding[]): readonly Remedy[] | null {
  const had = new Set(scheme.remedies.map(remedyKey));
  const fixes = new Map<string, Remedy>();
  for (const { fix } of fails) {
    if (fix === null || had.has(remedyKey(fix))) return null;
    fixes.set(remedyKey(fix), fix);
  }
  return [...fixes.values()];
}

function worksOfRemedies(ground: SearchGround, scheme: Scheme, known: Judges['remedyCosts']): Works {
  const { connections, remedies } = scheme;
  if (remedies.length === 0) return noWorks;
  const works = remedies.flatMap((remedy) => known?.get(remedyKey(remedy)) ?? []);
  if (works.length === remedies.length) return worksTogether(works);
  const locked = { ...ground, locked: connections };
  return worksTogether(endsByCause(locked, [], remedies).values());
}

/** A scheme of parts beside what is locked. */
export function schemeOf(ground: SearchGround, id: string, parts: readonly Part[]): Scheme {
  return {
    id,
    name: '',
    connections: [...ground.locked, ...withIds(ground, parts)],
    remedies: [],
    locks: ground.locked.map(({ id: lockedId }) => lockedId),
  };
}
