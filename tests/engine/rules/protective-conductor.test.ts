import { describe, expect, it } from 'vitest';
import type { ProtectiveProof } from '#engine/proof/circuit-proof.ts';
import { protectiveConductor } from '#engine/rules/protective-conductor.ts';
import { at, proofOf as provedJob, ringOf, wiredJob } from '../proof/wired-job.ts';
import { saidBy } from './facts-builder.ts';
import { provedFacts } from './proof-facts.ts';

const fault: ProtectiveProof = {
  leg: 'l',
  cpcMm2: 1.5,
  faultA: 460,
  neededMm2: 1.26,
  withstandA2s: 29_756,
  classCeilingA2s: null,
  letThroughA2s: null,
};
const said = (partial: Partial<ProtectiveProof>) =>
  saidBy(protectiveConductor, provedFacts({ protective: [{ ...fault, ...partial }] }));

describe('protective conductors in a fault', () => {
  it('[AD1] passes at exactly what is needed at 0.1 s', () => {
    expect(said({ neededMm2: 1.5 })).toMatchObject([
      { outcome: 'passes', messageId: 'within', actual: 1.5, limit: 1.5 },
    ]);
  });

  it('[AD1] never fails for want of the maker’s figure', () => {
    expect(said({ neededMm2: 1.51 })).toMatchObject([
      { outcome: 'advice', messageId: 'askMaker', limit: 29_756 },
    ]);
    expect(said({ neededMm2: null })).toMatchObject([{ outcome: 'advice', messageId: 'noFigure' }]);
  });

  // 70,000 A²s for a B device up to 16 A and 10 kA of class 3 (BS EN 60898-1 Annex ZA); 2.5 mm² take 82,656.
  it('[AD1] tells what the energy class of the device would settle, and no more', () => {
    const thick = { cpcMm2: 2.5, withstandA2s: 82_656, neededMm2: 3 };
    expect(said({ ...thick, classCeilingA2s: 70_000 })).toMatchObject([
      { outcome: 'advice', messageId: 'byClass', actual: 70_000, limit: 82_656 },
    ]);
    expect(said({ neededMm2: 2, classCeilingA2s: 70_000 })).toMatchObject([
      { outcome: 'advice', messageId: 'askMaker' },
    ]);
  });

  it('[AD1] goes by the maker’s figure where there is one', () => {
    expect(said({ neededMm2: 2, letThroughA2s: 29_756 })).toMatchObject([
      { outcome: 'passes', messageId: 'byMaker' },
    ]);
    expect(said({ neededMm2: 2, letThroughA2s: 29_757 })).toMatchObject([
      { outcome: 'fails', messageId: 'overMaker' },
    ]);
  });

  it('[AD1] says so where device or loop are not known', () => {
    expect(saidBy(protectiveConductor, provedFacts({}))).toMatchObject([
      { outcome: 'advice', messageId: 'untold' },
    ]);
  });

  // B32, Zs 0.5 Ω, 230 V, 0.1 s, k 115: 460 A, 1.26 mm² (https://electriciansforums.net/threads/adiabatic-equation.20007/post-146036).
  it('[AD1] reckons a published example: 460 A want 1.26 mm²', () => {
    const job = wiredJob(ringOf([5, 5, 5]));
    const supply = { ...job.supply, zeOhm: 0.5 };
    const [first] = provedJob({ ...job, supply }).protective;
    expect(first?.faultA).toBeCloseTo(460, 9);
    expect(first?.neededMm2).toBeCloseTo(1.26, 2);
    expect(at(provedJob({ ...job, supply }), 'p1').zsServiceColdOhm).toBeGreaterThan(0.5);
  });
});
