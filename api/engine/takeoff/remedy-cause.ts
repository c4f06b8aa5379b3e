import type { Remedy } from '#model/scheme.ts';

/** How a remedy is named as a cause, the way the labour stage names it. */
export function remedyCause({ kind, at }: Remedy): string {
  return at === undefined ? `remedy/${kind}` : `remedy/${kind}/${at}`;
}
