import { chanceOf } from './chance.ts';
import { type FuzzTarget, fuzzTargets } from './targets.ts';

/** How a run is made. */
export interface FuzzAsk {
  readonly cases: number;
  readonly seed: number;
  /** No case begins after so long, ms. */
  readonly mostMs?: number;
  readonly say: (line: string) => void;
  /** False: memory is only told. A short run is not warm before its end. */
  readonly holdMemory: boolean;
}

/** Cases of one target, and what they took of this process's own time. */
export interface TargetCases {
  readonly cases: number;
  readonly cpuMs: number;
}

/** What a run came to. */
export interface FuzzResult {
  readonly cases: number;
  readonly byTarget: Readonly<Record<string, TargetCases>>;
  readonly slowest: { readonly name: string; readonly at: number; readonly cpuMs: number };
  readonly rssWarmMb: number;
  readonly rssEndMb: number;
  /** In words, each with the number of its case: `--seed` and `--from` bring it back. */
  readonly breaches: readonly string[];
}

/** No case takes longer, ms of this process's own time: others that use the machine do not count. */
export const MOST_CASE_MS = 1000;
/** By how much resident memory may be above its warm level in the end. */
export const MOST_GROWTH = 0.1;
/** The share of a run after which it is warm. */
const WARM = 0.2;
/** Of each target, before the first case. */
const WARM_CASES = 60;
/** Every so many cases. */
const TOLD_EACH = 10_000;

/** Resident memory once all that can go has gone, as far as the program was started so that it can ask for that. */
function residentMb(): number {
  for (let i = 0; i < 3; i += 1) globalThis.gc?.();
  return Math.round(process.memoryUsage.rss() / 1e5) / 10;
}

function targetAt(targets: readonly FuzzTarget[], draw: number): FuzzTarget {
  const all = targets.reduce((sum, { share }) => sum + share, 0);
  let left = draw * all;
  for (const target of targets) {
    left -= target.share;
    if (left < 0) return target;
  }
  throw new Error('no target');
}

const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

interface CaseResult {
  readonly mostMs: number;
  readonly breach: string | null;
  readonly cpuMs: number;
}

/** Makes a case's input, and takes the time of what takes it alone. */
async function runCase(target: FuzzTarget, seed: number): Promise<CaseResult> {
  const taken = await target.make(chanceOf(seed));
  const { mostMs = MOST_CASE_MS } = taken;
  const before = cpuMs();
  try {
    const breach = await taken();
    return { breach, mostMs, cpuMs: cpuMs() - before };
  } catch (error) {
    const breach = `threw ${error instanceof Error ? error.stack : String(error)}`;
    return { breach, mostMs, cpuMs: cpuMs() - before };
  }
}

/** A case; one over its bound once more, by its lesser time: an input that is slow is slow twice, clearing memory away is not. */
async function runTwiceIfSlow(target: FuzzTarget, seed: number): Promise<CaseResult> {
  const first = await runCase(target, seed);
  if (first.cpuMs <= first.mostMs) return first;
  const again = await runCase(target, seed);
  return { ...first, breach: first.breach ?? again.breach, cpuMs: Math.min(first.cpuMs, again.cpuMs) };
}

/** Lets every target run as often as a case of it may be slow for the first time only: modules and pages that are made once. */
async function warmUp(targets: readonly FuzzTarget[], seed: number): Promise<void> {
  for (const target of targets) for (let i = 0; i < WARM_CASES; i += 1) await runCase(target, seed + i);
}

/** Runs so many cases, each of a seed of its own, one after the other in this process. */
export async function fuzzRun({
  cases,
  seed,
  mostMs = Infinity,
  say,
  holdMemory,
}: FuzzAsk): Promise<FuzzResult> {
  const targets = fuzzTargets();
  const breaches: string[] = [];
  const byTarget: Record<string, TargetCases> = {};
  let slowest = { name: '', at: 0, cpuMs: 0 };
  let rssWarmMb = 0;
  await warmUp(targets, seed ^ 0x5bd1e995);
  const began = performance.now();
  let done = 0;
  const isWarm = (): boolean => done >= cases * WARM || performance.now() - began > mostMs * WARM;
  for (; done < cases && performance.now() - began < mostMs && breaches.length < 20; done += 1) {
    if (rssWarmMb === 0 && isWarm()) rssWarmMb = residentMb();
    const own = (seed * 0x9e3779b1 + done * 0x85ebca6b) >>> 0;
    const target = targetAt(targets, chanceOf(own ^ 0xa5a5a5a5).next());
    const { breach, mostMs: limitMs, cpuMs: tookMs } = await runTwiceIfSlow(target, own);
    const before = byTarget[target.name] ?? { cases: 0, cpuMs: 0 };
    byTarget[target.name] = { cases: before.cases + 1, cpuMs: before.cpuMs + tookMs };
    if (limitMs === MOST_CASE_MS && tookMs > slowest.cpuMs)
      slowest = { name: target.name, at: done, cpuMs: Math.round(tookMs) };
    if (breach !== null) breaches.push(`case ${done} (${target.name}): ${breach}`);
    if (tookMs > limitMs) breaches.push(`case ${done} (${target.name}): ${Math.round(tookMs)} ms`);
    if ((done + 1) % TOLD_EACH === 0)
      say(`${done + 1} cases, ${breaches.length} breaches, ${residentMb()} MB`);
  }
  const rssEndMb = residentMb();
  if (holdMemory && rssEndMb > rssWarmMb * (1 + MOST_GROWTH))
    breaches.push(`memory: ${rssWarmMb} MB when warm, ${rssEndMb} MB in the end`);
  return { cases: done, byTarget, slowest, rssWarmMb, rssEndMb, breaches };
}
