import type { ConnectionPlace } from '#engine/work/connection-place.ts';
import type { PointKind } from '#model/installation.ts';
import { pointKindWords } from '../point-kind-words.ts';

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

/** What stands at a place, as it is asked for at the counter: "switched fused connection unit with flex outlet"; a fused unit where no point tells. */
export function accessoryWords(accessory: ConnectionPlace['accessory']): string {
  const kind = accessory?.kind ?? 'fused-unit';
  const words = lower(pointKindWords[kind as PointKind] ?? kind);
  if (kind !== 'fused-unit' || accessory?.isNew !== true) return words;
  const has = (feature: string): boolean => accessory.features.includes(feature);
  // An RCD in a unit has a switch of its own.
  const switched = has('rcd') ? '' : has('switched') ? 'switched ' : 'unswitched ';
  return [`${switched}${words}`, ...extras.filter(([feature]) => has(feature)).map(([, said]) => said)].join(
    ', ',
  );
}

const extras = [
  ['rcd', 'with RCD'],
  ['neon', 'with neon'],
  ['flex', 'with flex outlet'],
] as const;
