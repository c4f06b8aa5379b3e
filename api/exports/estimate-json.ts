import { sharedWayWords } from '#drawing/ways/shared-way-words.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Packing } from '#engine/schemes/outcomes/packing.ts';
import type { SearchResult } from '#engine/schemes/search/found-schemes.ts';
import { joistHoleMm } from '#engine/ways/joist-window.ts';
import type { Run } from '#engine/ways/run.ts';
import type { StretchCuts } from '#engine/ways/run-cuts.ts';
import { sharedWays } from '#engine/ways/shared-ways.ts';
import type { Cable } from '#model/cable.ts';

/** What new cable cuts and opens; nothing is said of cable that is there already. */
const cutsJson = (cuts: StretchCuts | undefined, { lineMm2 }: Cable) =>
  cuts === undefined
    ? {}
    : {
        holes: cuts.holes.map(({ storeyId, support, ...hole }) => ({
          storey: storeyId,
          diameterMm: joistHoleMm(lineMm2),
          ...hole,
          support: support === null ? null : { on: support.on, wall: support.wallId },
        })),
        chase: cuts.chase,
        opened: cuts.opened.map(({ storeyId, at, opening }) => ({ storey: storeyId, at: at.at, opening })),
      };

const runJson = (worked: Worked, run: Run) => ({
  id: run.id,
  connection: run.connectionId,
  from: run.from.nodeId,
  to: run.to.nodeId,
  cable: run.cable,
  lengthMm: run.lengthMm,
  lowMm: run.lowMm,
  highMm: run.highMm,
  routeMm: run.routeMm,
  endsMm: run.endsMm,
  slackMm: run.slackMm,
  pinned: run.pinned,
  steps: run.steps,
  beside: sharedWayWords(worked, run),
  shares: (sharedWays(worked.runs).get(run.id) ?? []).map(({ runId, ...shares }) => ({
    run: runId,
    ...shares,
  })),
  segments: run.segments.map((segment, index) => ({
    medium: segment.medium,
    from: { storey: segment.from.storeyId, at: segment.from.at, heightMm: segment.from.heightMm },
    to: { storey: segment.to.storeyId, at: segment.to.at, heightMm: segment.to.heightMm },
    lengthMm: segment.lengthMm,
    wall: segment.wallId,
    side: segment.side,
    storey: segment.storeyId,
    depthMm: segment.depthMm,
    containment: segment.containment,
    bundle: segment.bundle,
    inChannelOf: segment.inChannelOf ?? null,
    oneChase: segment.oneChase ?? null,
    joistsCrossed: segment.joistsCrossed,
    studsCrossed: segment.studsCrossed,
    certainty: segment.certainty,
    ...cutsJson(run.cuts[index], run.cable),
  })),
});

const schemeJson = ({ worked, runs, ...scheme }: SchemeEstimate) => ({
  ...scheme,
  runs: runs.map((run) => runJson(worked, run)),
});

/** What a search found, its schemes with the figures that every scheme has. */
const searchJson = ({ schemes, ...head }: SearchResult) => ({
  ...head,
  schemes: schemes.map(({ estimate, scheme, ...figures }) => ({
    ...figures,
    connections: scheme.connections,
    remedies: scheme.remedies,
    locks: scheme.locks,
    ...schemeJson(estimate),
  })),
});

/** What stands beside the estimate where it was asked for. */
interface Beside {
  /** What a search for schemes found. */
  readonly found?: SearchResult | null;
  /** What to buy while things are open. */
  readonly packing?: Packing | null;
}

/** The estimate as `estimate.json` carries it: everything but the engine's inner workings. Keys in a fixed order. */
export function estimateData(estimate: Estimate, { found = null, packing = null }: Beside = {}): object {
  const { asFound, schemes, ...head } = estimate;
  return {
    ...head,
    asFound: { proof: asFound.proof, findings: asFound.findings },
    schemes: schemes.map(schemeJson),
    ...(packing === null ? {} : { packing: { ...packing.plan, takeBack: packing.takeBack } }),
    ...(found === null ? {} : { search: searchJson(found) }),
  };
}

/** The same as the text of the file. */
export const estimateJson = (estimate: Estimate, beside?: Beside): string =>
  `${JSON.stringify(estimateData(estimate, beside), null, 2)}\n`;
