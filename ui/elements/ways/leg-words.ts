import type { LabelOf } from '#drawing/label-of.ts';
import type { SourceLeg, SourcePoint } from '../../edits/join-sources.ts';
import { metresShort } from '../../written.ts';
import type { Choice } from '../fields/choice-field.ts';

const roleWords: Readonly<Record<SourcePoint['role'], string>> = {
  origin: 'at the board',
  ring: 'on the ring',
  'unfused-spur': 'a spur already',
  radial: 'on a radial',
  'behind-fuse': 'behind a fuse',
  unreached: 'not traced',
  'claimed-ring': 'on the ring, by its label',
  'claimed-spur': 'a spur, by its label',
};

const away = (awayMm: number | null): string =>
  awayMm === null ? '' : `, about ${metresShort(awayMm)} away`;

/** A point to join on at, as a choice reads: "R8, on the ring, about 2.2 m away". */
export function sourceWords(
  { pointId, role, awayMm, taken, hasSpur }: SourcePoint,
  labelOf: LabelOf,
): string {
  const used = taken > 0 ? ', has a new cable already' : hasSpur ? ', has a spur already' : '';
  return `${labelOf(pointId)}, ${roleWords[role]}${away(awayMm)}${used}`;
}

/** A leg to cut, as a choice reads. */
export const legWords = ({ legId, onRing, awayMm }: SourceLeg, labelOf: LabelOf): string =>
  `${labelOf(legId)}${onRing ? '' : ', not on the ring'}${away(awayMm)}`;

/** A leg of the ring to open, as a choice; one that is not of the ring cannot be. */
export const legChoice = (leg: SourceLeg, labelOf: LabelOf): Choice => {
  const choice = { value: leg.legId, label: `${labelOf(leg.legId)}${away(leg.awayMm)}` };
  return leg.onRing ? choice : { ...choice, notPossible: 'not on the ring' };
};
