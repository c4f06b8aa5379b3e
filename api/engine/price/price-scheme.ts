import type { Extra } from '#model/extra.ts';
import type { Stock, Terms } from '#model/job.ts';
import type { Library, Norms } from '#model/library.ts';
import type { LabourTask } from '../labour/task.ts';
import type { TakeoffLine } from '../takeoff/line.ts';
import { type AgreedTerms, agreedTerms } from './agreed-terms.ts';
import { billOf } from './bill.ts';
import { contingencyParts } from './contingency-parts.ts';
import { depositPence } from './deposit.ts';
import { decimalOf, exactOf, exactZero, over, plus } from './exact.ts';
import { extraBill } from './extra-bill.ts';
import { markupOfMargin } from './markup.ts';
import { percentOfPence } from './money.ts';
import { OVERHEAD_REFUSED, overheadIsRefused } from './overhead.ts';
import { PARKING_SUM, type Parking, parkingLine, parkingOf } from './parking.ts';
import { PROFIT_REFUSED, profitIsRefused, profitOn } from './profit.ts';
import { soldWork } from './sold-work.ts';
import { contingencyPercentOf, type OpenGap } from './survey-gaps-of.ts';
import type { BillLine, OtherLine, PriceBuildUp, Totals } from './totals.ts';
import { costVatFactor, vatPercentOf } from './vat.ts';
import { vatClaim } from './vat-claim.ts';
import { dayHoursOf, type Visits, visitsOf } from './visits.ts';

/** All that a price is made of. */
export interface PriceRequest {
  readonly takeoff: readonly TakeoffLine[];
  readonly labour: readonly LabourTask[];
  readonly library: Library;
  /** The job's terms; where they are silent, the library's count. */
  readonly terms: Terms;
  readonly stock: readonly Stock[];
  /** Of its own work the materials: its minutes are among the labour. Absent: none. */
  readonly extras?: readonly Extra[] | undefined;
  /** Names of the library's sums that this scheme bears, such as `notification`; parking comes by the terms. */
  readonly sums: readonly string[];
  /** What of it nobody has looked at and may make it dearer. */
  readonly gaps: readonly OpenGap[];
  /** Minutes by which the hours stray from the tasks' own, for the ends of a range; absent: none. */
  readonly strayMin?: number;
}

const minutesKey = { low: 'lowMin', typical: 'typicalMin', high: 'highMin' } as const;

/** Minutes of all tasks at a level of the norms; a task without a norm has none, and is reported elsewhere. */
function labourMinutes(labour: readonly LabourTask[], level: Terms['labour']): number {
  const total = labour.reduce((sum, task) => plus(sum, exactOf(task[minutesKey[level]] ?? 0)), exactZero);
  return decimalOf(total, 6);
}

/** How often the job is travelled to, so many minutes of work being done on it. */
function visitsFor({ labour, library }: PriceRequest, labourMin: number, agreed: AgreedTerms): Visits {
  const key = minutesKey[agreed.labour];
  const timed = labour.map(({ task, quantity, ...one }) => ({ task, quantity, minutes: one[key] ?? 0 }));
  return visitsOf(timed, labourMin, dayHoursOf(agreed, library.norms));
}

function sumLines(request: PriceRequest, parking: Parking | null): readonly OtherLine[] {
  const known = new Map(request.library.norms.sums.map(({ sum, pence }) => [sum, pence]));
  const sums = [...request.sums, ...(parking === null ? [] : [PARKING_SUM])];
  return [...new Set(sums)].sort().map((sum) => {
    if (sum === PARKING_SUM && parking !== null) return parkingLine(parking);
    const pence = known.get(sum);
    return {
      sum,
      description:
        pence === undefined ? `${sentence(sum)}: not priced, the library has no such sum` : sentence(sum),
      pence: pence ?? 0,
      ...(pence === undefined ? { isUnpriced: true as const } : {}),
    };
  });
}

function sentence(sum: string): string {
  const words = sum.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function callOutLines({ callOutPence }: AgreedTerms): readonly OtherLine[] {
  return callOutPence === 0 ? [] : [{ sum: 'call-out', description: 'Call-out', pence: callOutPence }];
}

const penceOf = (lines: readonly { readonly pence: number }[]): number =>
  lines.reduce((sum, line) => sum + line.pence, 0);

/** What a job costs the firm and leaves it, where the rate is what an hour costs; else nobody knows. */
function jobMargin(
  costPence: number,
  { netPence, contingencyPence }: Totals,
): Pick<PriceBuildUp, 'costPence' | 'jobMarginPercent'> {
  const soldFor = netPence - contingencyPence;
  return { costPence, jobMarginPercent: soldFor === 0 ? null : (100 * (soldFor - costPence)) / soldFor };
}

/** What was asked for and is not done, each with its reason. */
function refusalsOf(agreed: AgreedTerms, norms: Norms): readonly string[] {
  return [
    ...(overheadIsRefused(norms) ? [OVERHEAD_REFUSED] : []),
    ...(profitIsRefused(agreed, norms) ? [PROFIT_REFUSED] : []),
  ];
}

/** Adds up the selling figures; a job below the minimum charge is topped up among the other sums. */
function totalsOf(parts: {
  readonly materialsPence: number;
  readonly labourPence: number;
  readonly labourMin: number;
  readonly other: readonly OtherLine[];
  readonly contingencyPercent: number;
  readonly agreed: AgreedTerms;
}): { readonly totals: Totals; readonly other: readonly OtherLine[] } {
  const workPence = parts.materialsPence + parts.labourPence + penceOf(parts.other);
  const contingencyPence = percentOfPence(workPence, parts.contingencyPercent);
  const topUpPence = Math.max(0, parts.agreed.minimumPence - workPence - contingencyPence);
  const other =
    topUpPence === 0
      ? parts.other
      : [...parts.other, { sum: 'minimum-charge', description: 'To the minimum charge', pence: topUpPence }];
  const netPence = workPence + contingencyPence + topUpPence;
  const vatPence = percentOfPence(netPence, vatPercentOf[parts.agreed.vat]);
  const totals = {
    hours: decimalOf(over(exactOf(parts.labourMin), exactOf(60)), 2),
    materialsPence: parts.materialsPence,
    labourPence: parts.labourPence,
    otherPence: penceOf(other),
    contingencyPence,
    netPence,
    vatPence,
    grossPence: netPence + vatPence,
  };
  return { totals, other };
}

/**
 * The price of a scheme with every rate that went into it; whole pence throughout (money.ts has the places
 * of rounding). Other sums are sorted by name, then the call-out, travel, overhead, profit on all, and the top-up to the
 * minimum charge.
 */
export function priceScheme(request: PriceRequest): PriceBuildUp {
  const { library, takeoff, stock, labour } = request;
  const { norms } = library;
  const agreed = agreedTerms(request.terms, library.terms);
  const bill: readonly BillLine[] = [
    ...billOf(takeoff, library.prices, stock, agreed.vat),
    ...extraBill(request.extras, costVatFactor(library.prices.vat, agreed.vat)),
  ];
  const materialsCostPence = bill.reduce((sum, line) => sum + line.costPence, 0);
  const labourMin = Math.max(0, labourMinutes(labour, agreed.labour) + (request.strayMin ?? 0));
  const contingencyPercent = agreed.contingencyPercent ?? contingencyPercentOf(request.gaps, norms);
  const visits = visitsFor(request, labourMin, agreed);
  const sold = soldWork({ materialsCostPence, labourMin, visits }, norms, agreed);
  const parking = parkingOf(agreed, visits, library);
  const sums = sumLines(request, parking);
  const { totals, other } = totalsOf({
    materialsPence: sold.materialsPence,
    labourPence: sold.labourPence,
    labourMin,
    other: [...sums, ...callOutLines(agreed), ...sold.lines],
    contingencyPercent,
    agreed,
  });
  return {
    bill,
    materialsCostPence,
    markupPercent:
      agreed.marginPercent === null ? (agreed.markupPercent ?? 0) : markupOfMargin(agreed.marginPercent),
    marginPercent: agreed.marginPercent,
    profitOn: profitOn(agreed, norms),
    profitPence: sold.profitPence,
    labourMin,
    visits,
    parking,
    travelMin: agreed.travelMin,
    ratePencePerHour: norms.ratePencePerHour,
    rateBasis: norms.rateBasis ?? 'charged',
    overhead: norms.overhead ?? null,
    overheadPence: sold.overheadPence,
    ...(norms.rateBasis === 'cost'
      ? jobMargin(sold.basePence + penceOf(sums), totals)
      : { costPence: null, jobMarginPercent: null }),
    refused: refusalsOf(agreed, norms),
    depositPence: depositPence(totals.grossPence, agreed),
    labourLevel: agreed.labour,
    other,
    contingencyPercent,
    contingencySource: agreed.contingencyPercent === null ? 'survey' : 'terms',
    surveyGaps: request.gaps,
    contingencyParts:
      agreed.contingencyPercent === null ? contingencyParts(totals.contingencyPence, request.gaps) : [],
    vatPercent: vatPercentOf[agreed.vat],
    vat: agreed.vat,
    vatClaim: vatClaim(agreed),
    totals,
  };
}
