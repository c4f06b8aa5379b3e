import type { CutFrom, NearMiss, PurchaseLine } from '#engine/price/buying/purchase.ts';
import { metres, pounds } from '#engine/quotation/said.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { labelsOf } from '../label-of.ts';
import { nodeLabel } from '../node-label.ts';

/** One piece that is cut off. */
export interface Cut {
  /** The run or point that it is for. */
  readonly cause: string;
  /** From 1 through all lengths of the item, in the order of cutting. */
  readonly number: number;
  /** "R8–W3", "W4". */
  readonly label: string;
  readonly lengthMm: number;
}

/** One unbroken length with what is cut from it, the longest first. */
export interface CutBar {
  readonly key: string;
  /** "12 m in one length", "Coil of 25 m, 1 of 2", "From the van: 14 m". */
  readonly words: string;
  readonly isOfVan: boolean;
  readonly lengthMm: number;
  readonly cuts: readonly Cut[];
  readonly leftMm: number;
}

/** Everything that is cut of one item. */
export interface CutList {
  readonly item: string;
  readonly description: string;
  /** The van's lengths first. */
  readonly bars: readonly CutBar[];
  /** Pieces that nothing on the price list, nor in the van, is long enough for. */
  readonly without: readonly Cut[];
  /** What a smaller length would have saved, a sentence each. */
  readonly nearMisses: readonly string[];
  /** Whether nothing cheaper serves, in a sentence; empty where there is no price. */
  readonly proof: string;
}

/** A length without idle noughts: "12 m", "0.45 m". */
export const plainMetres = (lengthMm: number): string => `${Math.round(lengthMm) / 1000} m`;

/** What is cut for a scheme, item by item in the order of the purchase; what is not cut to length is left out. */
export function cutListsOf({ worked, runs, purchase }: SchemeEstimate): readonly CutList[] {
  const labelOf = labelsOf(worked);
  const labels = new Map(
    runs.map(({ id, from, to }) => [id, ends(nodeLabel(worked, from.nodeId), nodeLabel(worked, to.nodeId))]),
  );
  return purchase.lines
    .filter(({ unit, cuts, unserved }) => unit === 'm' && cuts.length + unserved.length > 0)
    .map((line) => cutListOf(line, (cause) => labels.get(cause) ?? labelOf(cause)));
}

/** A cable by its ends: "R8–W3", and with words where an end has more than one. */
const ends = (from: string, to: string): string =>
  from.includes(' ') || to.includes(' ') ? `${from} to ${to}` : `${from}–${to}`;

function cutListOf(line: PurchaseLine, labelOf: (cause: string) => string): CutList {
  let count = 0;
  const numbered = ({ cause, lengthMm }: { readonly cause: string; readonly lengthMm: number }): Cut => {
    count += 1;
    return { cause, lengthMm, label: labelOf(cause), number: count };
  };
  return {
    item: line.item,
    description: line.description,
    bars: line.cuts.map((from) => ({
      key: from.from,
      words: barWords(from, line),
      isOfVan: from.from.startsWith('van/'),
      lengthMm: from.lengthMm,
      cuts: from.cuts.map(numbered),
      leftMm: from.leftMm,
    })),
    without: line.unserved.map(numbered),
    nearMisses: line.nearMisses.map(nearMissWords),
    proof: proofWords(line),
  };
}

/** What a smaller length would have saved, in a sentence. */
export const nearMissWords = ({ words, shortMm, wouldSavePence }: NearMiss): string =>
  `A ${words} would do if the pieces were ${metres(shortMm)} shorter in all: it saves ${pounds(wouldSavePence)}.`;

function barWords({ from, lengthMm }: CutFrom, { packs }: PurchaseLine): string {
  const [key = '', place = ''] = from.split('/');
  if (key === 'van') return `From the van: ${plainMetres(lengthMm)}`;
  const bought = packs.find(({ offer }) => offer.key === key);
  if (bought === undefined || bought.offer.kind === 'cut') return `${plainMetres(lengthMm)} in one length`;
  const kind = bought.offer.kind === 'coil' || bought.offer.kind === 'drum' ? bought.offer.kind : 'length';
  const which = bought.count === 1 ? '' : `, ${place} of ${bought.count}`;
  return `${kind.charAt(0).toUpperCase()}${kind.slice(1)} of ${plainMetres(lengthMm)}${which}`;
}

function proofWords({ priced, proof, pence, packs }: PurchaseLine): string {
  if (!priced || packs.length === 0) return '';
  if (proof.optimal) return 'Nothing on the price list serves for less: proved.';
  return `The search stopped early: at most ${pounds(pence - proof.boundPence)} could still be saved.`;
}
