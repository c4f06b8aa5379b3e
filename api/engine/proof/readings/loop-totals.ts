import type { Job } from '#model/job.ts';
import { inIdOrder } from '../../circuit/id-order.ts';
import { USUAL_CABLE } from '../../circuit/usual-cable.ts';
import { cableOhms, conductorMilliohmPerM } from '../conductor-ohms.ts';
import { normalDensity } from './confidence.ts';
import type { InferredLoop, LoopName } from './inferred-circuit.ts';
import type { LoopReadings, OhmRead } from './loop-readings.ts';

/** Standard sizes of a protective conductor inside flat cable, mm². Source: BS 6004 constructions, from memory. */
const CPC_AREAS_MM2 = [1, 1.5, 2.5, 4] as const;

/**
 * Spread of r2 ÷ r1 of one construction from cable to cable, as a share: published advice accepts 1.5 to 1.8 where
 * the standard's resistances give 1.63. Judgement.
 */
const RATIO_SPREAD = 0.05;

/** How far a length by resistance may be off: ±10 °C is 4 %, and the standard's resistances are the greatest allowed. */
export const LENGTH_SPREAD = 0.04;

/** Resistances by which metres are told. */
export interface MetreScale {
  readonly lineMm2: number;
  readonly by: 'survey' | 'assumed';
  /** Ω of one line conductor per metre. */
  readonly lineOhmPerM: number;
  /** Ω of the protective conductor per metre as surveyed or usual. */
  readonly cpcOhmPerM: number;
}

/** The cable that most of the circuit's recorded legs are made of, else 2.5/1.5 mm². */
export function metreScale(job: Job, circuitId: string): MetreScale {
  const cables = job.legs.flatMap(({ circuit, cable }) => (circuit === circuitId && cable ? [cable] : []));
  const name = (cable: (typeof cables)[number]): string =>
    [cable.lineMm2, cable.cpcMm2, cable.type].join('|');
  const count = new Map<string, number>();
  for (const cable of cables) count.set(name(cable), (count.get(name(cable)) ?? 0) + 1);
  const known = cables.filter((cable) => cableOhms(cable) !== null);
  const most = known.toSorted(
    (a, b) => (count.get(name(b)) ?? 0) - (count.get(name(a)) ?? 0) || inIdOrder(name(a), name(b)),
  )[0];
  const cable = most ?? USUAL_CABLE;
  const ohms = cableOhms(cable);
  const lineOhmPerM = (ohms?.lineMilliohmPerM ?? 7.41) / 1e3;
  return {
    lineMm2: cable.lineMm2,
    by: most === undefined ? 'assumed' : 'survey',
    lineOhmPerM,
    cpcOhmPerM: (ohms?.cpcMilliohmPerM ?? 12.1) / 1e3,
  };
}

/** What the whole loop reads and measures. */
export function loopTotals({ endToEnd }: LoopReadings, scale: MetreScale): InferredLoop {
  const r1Ohm = closedOhm(endToEnd.L);
  const rnOhm = closedOhm(endToEnd.N);
  const r2Ohm = closedOhm(endToEnd.cpc);
  const live = [r1Ohm, rnOhm].filter((ohm) => ohm !== null);
  const liveOhm = live.length === 0 ? null : live.reduce((sum, ohm) => sum + ohm, 0) / live.length;
  const lengthMm = liveOhm === null ? null : (liveOhm / scale.lineOhmPerM) * 1e3;
  const digitOhm = digit(endToEnd.L) ?? digit(endToEnd.N) ?? 0;
  return {
    r1Ohm,
    rnOhm,
    r2Ohm,
    ratio: liveOhm === null || liveOhm === 0 || r2Ohm === null ? null : r2Ohm / liveOhm,
    lengthMm,
    plusMinusMm:
      lengthMm === null ? null : Math.hypot(lengthMm * LENGTH_SPREAD, (digitOhm / scale.lineOhmPerM) * 1e3),
    lineMm2: scale.lineMm2,
    lineMm2By: scale.by,
    cpc: liveOhm === null || r2Ohm === null ? null : cpcThatFits(liveOhm, r2Ohm, scale),
  };
}

const closedOhm = (read: OhmRead | 'open' | null): number | null =>
  read === null || read === 'open' ? null : read.ohm;
const digit = (read: OhmRead | 'open' | null): number | null =>
  read === null || read === 'open' ? null : read.resolutionOhm;

/** The standard area whose ratio lies nearest, unless none is within three spreads. */
function cpcThatFits(liveOhm: number, r2Ohm: number, scale: MetreScale): InferredLoop['cpc'] {
  if (liveOhm <= 0 || r2Ohm <= 0) return null;
  const ratio = r2Ohm / liveOhm;
  const spread = Math.hypot(RATIO_SPREAD, 0.008 / r2Ohm, 0.008 / liveOhm);
  const fits = CPC_AREAS_MM2.flatMap((areaMm2) => {
    const milliohmPerM = conductorMilliohmPerM(areaMm2)?.milliohmPerM;
    if (milliohmPerM === undefined) return [];
    const off = Math.log(ratio / (milliohmPerM / 1e3 / scale.lineOhmPerM)) / spread;
    return [{ areaMm2, off: Math.abs(off), weight: normalDensity(off, 0, 1) }];
  }).toSorted((a, b) => a.off - b.off);
  const best = fits[0];
  if (best === undefined || best.off > 3) return null;
  const confidence = best.weight / fits.reduce((sum, { weight }) => sum + weight, 0);
  return {
    areaMm2: best.areaMm2,
    confidence,
    words: `r2 is ${ratio.toFixed(2)} times r1: fits a ${best.areaMm2} mm² protective conductor with ${scale.lineMm2} mm² line.`,
  };
}

/** What a loop reads from end to end, Ω at 20 °C; null where a conductor of it was not read, or is open. */
export function totalOf({ r1Ohm, rnOhm, r2Ohm }: InferredLoop, loop: LoopName): number | null {
  // Line and neutral are of one size and one length: the one stands for the other where only one was read.
  const line = r1Ohm ?? rnOhm;
  const neutral = rnOhm ?? r1Ohm;
  const parts = { 'L-N': [line, neutral], 'L-cpc': [line, r2Ohm], L: [line], N: [neutral], cpc: [r2Ohm] }[
    loop
  ];
  return parts.some((ohm) => ohm === null || ohm <= 0)
    ? null
    : parts.reduce<number>((sum, ohm) => sum + (ohm ?? 0), 0);
}

/** Ω of a loop per metre of cable, as surveyed or usual. */
export function loopOhmPerM({ lineOhmPerM, cpcOhmPerM }: MetreScale, loop: LoopName): number {
  return {
    'L-N': 2 * lineOhmPerM,
    'L-cpc': lineOhmPerM + cpcOhmPerM,
    L: lineOhmPerM,
    N: lineOhmPerM,
    cpc: cpcOhmPerM,
  }[loop];
}
