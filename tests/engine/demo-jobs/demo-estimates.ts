import { readFileSync } from 'node:fs';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import type { Finding } from '#engine/rules/finding.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import { readJobText } from '#model/read-job.ts';

/** The demo jobs by the names of their files. */
export const demoNames = [
  'saltglass-row',
  'saltglass-row-quoting',
  'fernlow-close',
  'quarrel-court',
] as const;
export type DemoName = (typeof demoNames)[number];

/** Reads a demo job as the command line would. */
export function demoJob(name: DemoName): Job {
  const read = readJobText(readFileSync(new URL(`../../../data/jobs/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(read.faults.map((fault) => `${fault.path}: ${fault.message}`).join('\n'));
  return read.job;
}

const when = { date: '2026-11-25', revision: 1 };

/** A demo job estimated with the demo library on a fixed date. */
export const demoEstimate = (name: DemoName): Estimate => estimate(demoJob(name), demoLibrary(), when);

/** Any job estimated with the demo library on a fixed date. */
export const estimateOf = (job: Job): Estimate => estimate(job, demoLibrary(), when);

/** One scheme of an estimate. */
export function schemeOf(result: Estimate, id: string): SchemeEstimate {
  const scheme = result.schemes.find((candidate) => candidate.id === id);
  if (scheme === undefined) throw new Error(`no scheme ${id}`);
  return scheme;
}

/** The failures that keep a scheme from complying, as `rule subject`. */
export const gatingFailures = (scheme: SchemeEstimate): readonly string[] =>
  scheme.findings
    .filter((finding) => finding.outcome === 'fails' && finding.gates)
    .map((finding) => `${finding.rule} ${finding.subject}`);

/** Findings of one rule. */
export const findingsOf = (scheme: SchemeEstimate, rule: string): readonly Finding[] =>
  scheme.findings.filter((finding) => finding.rule === rule);
