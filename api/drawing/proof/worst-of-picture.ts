import type { CircuitPicture, PictureLeg, PictureNode } from './circuit-picture.ts';

/** Where a circuit is worst under a scenario. */
export interface WorstOfPicture {
  /** The most loaded leg, with what stands at its ends; null where no share is known. */
  readonly leg: { readonly leg: PictureLeg; readonly from: string; readonly to: string } | null;
  /** Where most volts are lost; null where no cable comes. */
  readonly far: PictureNode | null;
}

/** The most loaded leg of a circuit and its furthest point: of several equal ones the first. */
export function worstOfPicture({ legs, nodes }: CircuitPicture): WorstOfPicture {
  const leg = legs.find(({ isWorst }) => isWorst);
  const [far] = nodes
    .filter(({ kind, dropV }) => kind !== 'board' && dropV !== null)
    .toSorted((a, b) => (b.dropV ?? 0) - (a.dropV ?? 0));
  const [from = '', to = ''] = leg?.ends.map((end) => nodes[end]?.label ?? '') ?? [];
  return { leg: leg === undefined ? null : { leg, from, to }, far: far ?? null };
}
