import type { Job } from '#model/job.ts';
import type { Tap } from '#model/scheme.ts';
import type { SchemeKind } from './found-schemes.ts';
import type { SchemeColumn } from './scheme-column.ts';
import type { Part } from './search-ground.ts';

/** What kind of scheme columns make together; a wanted unit on a cable of its own is of every kind. */
export function kindOf(columns: readonly SchemeColumn[]): SchemeKind {
  const kinds = columns.flatMap(({ kind }) => (kind === 'unit' ? [] : [kind]));
  const [first] = kinds;
  if (first === undefined) return 'spurs';
  const isOne = first !== 'fused-branch' || kinds.length === 1;
  return isOne && kinds.every((kind) => kind === first) ? first : 'mixed';
}

/** A scheme in one line: each point and how it is joined, and whether its way is pinned. */
export function schemeWords(job: Job, parts: readonly Part[]): string {
  const words = parts.map((part) => {
    const isPinned = part.runs?.some(({ via }) => via.length > 0) === true;
    return isPinned ? `${partWords(job, part)} by a pinned way` : partWords(job, part);
  });
  return words.join(' · ') || 'Nothing to join';
}

function partWords(job: Job, part: Part): string {
  const label = (id: string): string => job.points.find((point) => point.id === id)?.label ?? id;
  const list = (ids: readonly string[]): string => ids.map(label).join(', ');
  const from = (tap: Tap): string => tapWords(job, tap, label);
  const fed = (feeds: readonly { readonly to: string }[]): string => list(feeds.map(({ to }) => to));
  switch (part.kind) {
    case 'spur':
      return `${label(part.to)} spur from ${from(part.from)}`;
    case 'fused-spur': {
      const unit = typeof part.unit === 'string' ? [label(part.unit)] : [];
      const all = [...unit, ...(part.feeds.length > 0 ? [fed(part.feeds)] : [])].join(', ');
      return `${all} fused spur from ${from(part.from)}`;
    }
    case 'ring-extension': {
      const ends = part.between.map((end) => ('origin' in end ? 'the board' : label(end.point)));
      return `${list(part.through)} looped in between ${ends.join(' and ')}`;
    }
    case 'radial':
      return `${fed(part.feeds)} new radial, ${part.device.ratingA} A`;
    case 'fuse-down':
      return `${fed(part.feeds)} behind a fused unit in the old spur`;
    case 'close-spur':
      return `${label(part.point)} closed into the ring`;
  }
}

function tapWords(job: Job, tap: Tap, label: (id: string) => string): string {
  if ('origin' in tap) return 'the board';
  if ('point' in tap) return label(tap.point);
  const leg = job.legs.find(({ id }) => id === tap.leg);
  const ends = [leg?.from, leg?.to].map((end) =>
    end === undefined ? '?' : 'origin' in end ? 'the board' : label(end.point),
  );
  return `a joint in ${ends.join('–')}`;
}
