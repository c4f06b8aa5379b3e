import { allRules } from '#engine/all-rules.ts';
import { runRules } from '#engine/rules/run-rules.ts';
import { factsOf, type Proofs } from '#engine/schemes/facts-of.ts';
import { type House, workScheme } from '#engine/schemes/work-scheme.ts';
import type { Library } from '#model/library.ts';
import type { Connection, Remedy, Scheme, Tap } from '#model/scheme.ts';
import { type Joining, joiningsOf, type Pad } from './joinings.ts';
import { type Draft, groupingsOf, joinedOn } from './written-down.ts';

/** What a house is tried in. */
export interface Trial {
  readonly house: House;
  readonly library: Library;
  /** Legs that may be cut though their way is only assumed. */
  readonly allowed: readonly string[];
  /** How far apart legs are cut, mm of way. */
  readonly apartMm: number;
  /** The works cost of a finished scheme, thousandths of a penny. */
  readonly priceOf: (scheme: Scheme) => number;
  /** The same with every cable by itself. */
  readonly apartOf: (scheme: Scheme) => number;
}

/** A scheme that somebody might write down, as joinings with the remedies that they ask for. */
export interface Tried {
  readonly joinings: readonly Joining[];
  /** By its parts. */
  readonly millipence: number;
  readonly remedies: readonly Remedy[];
}

/** A scheme of some connections. */
export const schemeOf = (drafts: readonly Draft[], remedies: readonly Remedy[] = []): Scheme => ({
  id: 'tried',
  name: '',
  connections: drafts.map((draft, i): Connection => ({ ...draft, id: `x${i + 1}` })),
  remedies: [...remedies],
  locks: [],
});

/** How the rules take a scheme: with the remedies that put right what it breaks, or not at all. */
export type Verdict = { readonly remedies: readonly Remedy[] } | null;

const nameOf = ({ kind, at }: Remedy): string => `${kind} ${at ?? ''}`;

/** A remedy may ask for another. */
const ROUNDS = 4;
/** The rule that all wanted points are joined: a part leaves some to the others. */
const ALL_JOINED = 'CN2';

/** Every joining of a house by its group, the cheapest first, and what they ask for. */
export interface Force {
  readonly trial: Trial;
  readonly joinings: ReadonlyMap<number, readonly Joining[]>;
  /** What each circuit takes for being touched. */
  readonly touched: ReadonlyMap<string, number>;
  /** How the rules take some connections by themselves (`isPart`), or as a whole scheme. */
  readonly judge: (drafts: readonly Draft[], isPart?: boolean, remedies?: readonly Remedy[]) => Verdict;
  readonly alone: (joining: Joining) => Verdict;
  readonly remedyPrice: (remedy: Remedy, joining: Joining) => number;
  readonly counts: { judged: number; walked: number };
}

/** Writes everything down that there is to try. */
export function forceOf(trial: Trial): Force {
  const { house, apartOf, allowed, apartMm } = trial;
  const counts = { judged: 0, walked: 0 };
  const prices = new Map<string, number>();
  const walk = (drafts: readonly Draft[]): number => {
    const name = JSON.stringify(drafts);
    const known = prices.get(name);
    if (known !== undefined) return known;
    counts.walked += 1;
    const price = apartOf(schemeOf(drafts));
    prices.set(name, price);
    return price;
  };
  const wanted = house.job.points.filter(({ status }) => status === 'wanted');
  const pad: Pad = {
    job: house.job,
    wanted,
    runs: house.foundRuns,
    allowances: house.allowances,
    allowed: new Set(allowed),
    apartMm,
    walk,
  };
  const byMask = new Map<number, Joining[]>();
  const all = joiningsOf(pad).filter(({ millipence }) => Number.isFinite(millipence));
  for (const joining of withSharing(trial, all)) listOf(byMask, joining.mask).push(joining);
  for (const list of byMask.values()) list.sort((a, b) => a.millipence - b.millipence);
  const judge = judgeOf(trial, counts);
  const verdicts = new Map<Joining, Verdict>();
  const remedyPrices = new Map<string, number>();
  return {
    trial,
    joinings: byMask,
    touched: touchedPrices(pad),
    judge,
    counts,
    alone: (joining) => {
      const known = verdicts.get(joining);
      if (known !== undefined) return known;
      const verdict = judge(joining.drafts(), true);
      verdicts.set(joining, verdict);
      return verdict;
    },
    remedyPrice: (remedy, joining) => {
      const known = remedyPrices.get(nameOf(remedy));
      if (known !== undefined) return known;
      const drafts = joining.drafts();
      const price = apartOf(schemeOf(drafts, [remedy])) - walk(drafts);
      remedyPrices.set(nameOf(remedy), price);
      return price;
    },
  };
}

/**
 * Of the joinings that differ only in order, opening, tree or where the unit stands, the cheapest with each cable by itself is the
 * one that the search says it looks at: it is priced by what its cables share as well, the others are not. Of those alike the
 * dearest counts.
 */
function withSharing({ priceOf, apartOf }: Trial, joinings: readonly Joining[]): readonly Joining[] {
  const groups = new Map<string, Joining[]>();
  for (const joining of joinings) {
    const name = `${joining.mask} ${joining.circuitId} ${placeOf(joining.drafts())}`;
    groups.set(name, [...(groups.get(name) ?? []), joining]);
  }
  return [...groups].flatMap(([name, group]) => {
    if (name.endsWith(ALONE)) return group;
    const least = Math.min(...group.map(({ millipence }) => millipence));
    const first = group.filter(({ millipence }) => millipence < least + ALIKE);
    const saved = Math.min(
      ...first.map(({ drafts }) => apartOf(schemeOf(drafts())) - priceOf(schemeOf(drafts()))),
    );
    return group.map((joining) =>
      first.includes(joining) ? { ...joining, saved, millipence: joining.millipence - saved } : joining,
    );
  });
}

/** Prices this near to each other are alike, thousandths of a penny. */
const ALIKE = 2;
const ALONE = 'alone';

/** Where one connection of several cables is joined on, however it goes on from there; nothing is shared by other joinings. */
function placeOf([draft, ...more]: readonly Draft[]): string {
  if (draft === undefined || more.length > 0) return ALONE;
  const tapOf = (from: Tap): string => ('leg' in from ? from.leg : JSON.stringify(from));
  switch (draft.kind) {
    case 'ring-extension':
      return `leg ${draft.leg}`;
    case 'fused-spur':
      return typeof draft.unit === 'string'
        ? `${tapOf(draft.from)} ${draft.unit}`
        : `${tapOf(draft.from)} brought along`;
    case 'radial':
      return `${draft.board} ${draft.device.ratingA} ${draft.cable?.lineMm2}`;
    default:
      return ALONE;
  }
}

function listOf(byMask: Map<number, Joining[]>, mask: number): Joining[] {
  const list = byMask.get(mask) ?? [];
  byMask.set(mask, list);
  return list;
}

/** What a circuit takes once: what two joinings of it, far from each other, cost less together than apart. */
function touchedPrices({ job, wanted, walk }: Pad): ReadonlyMap<string, number> {
  const [a, b] = wanted;
  return new Map(
    job.circuits.map(({ id }) => {
      const point = job.points.find(({ status, circuit }) => status === 'existing' && circuit === id);
      if (a === undefined || b === undefined || point === undefined) return [id, 0];
      const [one, other] = [joinedOn({ origin: id }, a), joinedOn({ point: point.id }, b)];
      return [id, walk([one]) + walk([other]) - walk([one, other])];
    }),
  );
}

function judgeOf({ house, library }: Trial, counts: { judged: number }): Force['judge'] {
  const proofsFound: Proofs = factsOf(workScheme(house, null), library, null).proofs;
  const rulesOfParts = allRules.filter(({ id }) => id !== ALL_JOINED);
  return (drafts, isPart = false, already = []) => {
    counts.judged += 1;
    const { connections } = schemeOf(drafts);
    let remedies = already;
    for (let round = 0; round < ROUNDS; round += 1) {
      const worked = workScheme(house, { ...schemeOf([], remedies), connections });
      const fails = runRules(factsOf(worked, library, proofsFound), isPart ? rulesOfParts : allRules).filter(
        ({ outcome, origin, gates }) => outcome === 'fails' && origin === 'scheme' && gates,
      );
      if (fails.length === 0) return { remedies };
      const had = new Set(remedies.map(nameOf));
      const fixes = new Map<string, Remedy>();
      for (const { fix } of fails) {
        if (fix === null || had.has(nameOf(fix))) return null;
        fixes.set(nameOf(fix), fix);
      }
      remedies = [...remedies, ...fixes.values()];
    }
    return null;
  };
}

/** What joinings come to together, by their parts: what a circuit or a remedy takes is paid once. */
export function together(force: Force, joinings: readonly Joining[]): Tried {
  const circuits = new Set<string>();
  const remedies = new Map<string, Remedy>();
  let millipence = 0;
  for (const joining of joinings) {
    const { circuitId } = joining;
    millipence += joining.millipence;
    if (circuitId !== null && circuits.has(circuitId)) millipence -= force.touched.get(circuitId) ?? 0;
    if (circuitId !== null) circuits.add(circuitId);
    for (const remedy of force.alone(joining)?.remedies ?? []) {
      if (remedies.has(nameOf(remedy))) continue;
      remedies.set(nameOf(remedy), remedy);
      millipence += force.remedyPrice(remedy, joining);
    }
  }
  return { joinings, millipence, remedies: [...remedies.values()] };
}

/** Cables of one circuit at its device, in words: as many as where a ring carries a spur. */
const AT_DEVICE = 3;

/**
 * What no rule bars, and the search says that it leaves out: no device gets more cables than that, no board a second new
 * radial, and no leg is opened twice.
 */
export function isLookedFor({ trial }: Force, joinings: readonly Joining[]): boolean {
  const drafts = joinings.flatMap((joining) => joining.drafts());
  const once = drafts.flatMap((draft) => {
    if (draft.kind === 'radial') return [draft.board];
    return draft.kind === 'ring-extension' ? [draft.leg] : [];
  });
  if (new Set(once).size < once.length) return false;
  if (isBesideFeedingUnit(trial, drafts)) return false;
  const added = new Map<string, number>();
  for (const draft of drafts)
    if ('from' in draft && 'origin' in draft.from)
      added.set(draft.from.origin, (added.get(draft.from.origin) ?? 0) + 1);
  return [...added].every(([id, count]) => {
    const there = trial.house.job.legs
      .flatMap(({ from, to }) => [from, to])
      .filter((end) => 'origin' in end && end.origin === id).length;
    return count + there <= AT_DEVICE;
  });
}

/** Whether on a radial another cable starts where a unit that feeds others does. */
function isBesideFeedingUnit({ house: { job } }: Trial, drafts: readonly Draft[]): boolean {
  const radials = new Set(job.circuits.flatMap(({ id, shape }) => (shape === 'radial' ? [id] : [])));
  const starts = drafts.flatMap((draft) => {
    if (!('from' in draft) || 'leg' in draft.from) return [];
    const id = 'point' in draft.from ? draft.from.point : draft.from.origin;
    const circuit = job.points.find((point) => point.id === id)?.circuit ?? id;
    return radials.has(circuit) ? [{ id, isFeeding: 'feeds' in draft && draft.feeds.length > 0 }] : [];
  });
  return starts.some(({ id, isFeeding }) => isFeeding && starts.filter((each) => each.id === id).length > 1);
}

/**
 * Every scheme of joinings that pass by themselves and that come, by their parts, to less than a limit. A joining that fails
 * alone is passed over: `barred` gets what it would have been in, for a sample to show that it fails there too.
 */
export function* schemesBelow(force: Force, limit: number): Generator<Tried> {
  const all = 2 ** force.trial.house.job.points.filter(({ status }) => status === 'wanted').length - 1;
  for (const groups of groupingsOf(all)) yield* filled(force, groups, limit);
}

function* filled(force: Force, groups: readonly number[], limit: number): Generator<Tried> {
  const most = Math.max(0, ...force.touched.values());
  // What is left costs at least its cheapest joinings, each on a circuit that has paid already.
  const least = groups.map(
    (mask) => (force.joinings.get(mask)?.[0]?.millipence ?? Number.POSITIVE_INFINITY) - most,
  );
  const leastFrom = groups.map((_, i) => least.slice(i).reduce((sum, each) => sum + each, 0));
  const go = function* (taken: readonly Joining[], spent: number): Generator<Tried> {
    const mask = groups[taken.length];
    if (mask === undefined) {
      if (isLookedFor(force, taken)) yield together(force, taken);
      return;
    }
    const rest = leastFrom[taken.length + 1] ?? 0;
    for (const joining of force.joinings.get(mask) ?? []) {
      const own = joining.millipence - (taken.length === 0 ? 0 : most);
      if (spent + own + rest >= limit) break;
      if (force.alone(joining) === null) continue;
      const now = [...taken, joining];
      const { millipence } = together(force, now);
      if (millipence + rest < limit) yield* go(now, millipence);
    }
  };
  yield* go([], 0);
}

/** A scheme's connections as joinings that were written down; null where one of them was not. */
export function joiningsIn(force: Force, connections: readonly Connection[]): readonly Joining[] | null {
  const drafts = connections.map(({ id: _, ...draft }) => draft as Draft);
  const byName = new Map<string, Joining>();
  for (const joining of [...force.joinings.values()].flat())
    byName.set(nameOfDrafts(joining.drafts()), joining);
  const groups: Draft[][] = [];
  for (const draft of drafts) {
    const own = groups.find((group) => group.some((each) => isAfter(each, draft)));
    if (own === undefined) groups.push([draft]);
    else own.push(draft);
  }
  const found = groups.map((group) => byName.get(nameOfDrafts(group)) ?? null);
  return found.some((each) => each === null) ? null : found.flatMap((each) => each ?? []);
}

const nameOfDrafts = (drafts: readonly Draft[]): string =>
  drafts
    .map((draft) => {
      const feeds = 'feeds' in draft ? draft.feeds.toSorted((a, b) => (a.to < b.to ? -1 : 1)) : [];
      const entries = Object.entries({ ...draft, feeds }).toSorted(([a], [b]) => (a < b ? -1 : 1));
      return JSON.stringify(entries);
    })
    .toSorted()
    .join(' ');

/** Whether one connection starts where another has brought cable, or freed a place by closing a spur. */
function isAfter(first: Draft, then: Draft): boolean {
  if (!('from' in then) || !('point' in then.from)) return false;
  const { point } = then.from;
  if (first.kind === 'close-spur') return true;
  return first.kind === 'spur' && first.to === point;
}
