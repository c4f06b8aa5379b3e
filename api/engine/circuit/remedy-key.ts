import type { Remedy } from '#model/scheme.ts';

/** What a remedy does and to what, whatever its device: two with one key are the same remedy. */
export const remedyKey = ({ kind, at }: Remedy): string => `${kind} ${at ?? ''}`;

export const isSameRemedy = (one: Remedy, other: Remedy): boolean => remedyKey(one) === remedyKey(other);
