import { coreColours } from '#data/standards/core-colours.ts';
import type { Cable } from '#model/cable.ts';
import type { Circuit, Point } from '#model/installation.ts';

/** The cores that a socket circuit has, in the order in which they are told. */
export const cores = ['line', 'neutral', 'earth'] as const;
export type Core = (typeof cores)[number];

/** What a core looks like; `bare` has no insulation of its own. */
export type CoreColour = (typeof coreColours.rows)[number][Core] | 'bare';

/** The colour of each core of a cable; null: to be looked at. */
export type CoreColours = Readonly<Record<Core, CoreColour | null>>;

const unseen: CoreColours = { line: null, neutral: null, earth: null };

const flat = (set: 'old' | 'new'): CoreColours => {
  const row = coreColours.rows.find((one) => one.set === set);
  return row === undefined ? unseen : { line: row.line, neutral: row.neutral, earth: 'bare' };
};

/** Cores of a cable bought now. Of armoured and single cable several kinds are sold: those are looked at. */
export function coloursOfNew({ type, cpcMm2 }: Cable): CoreColours {
  if (type === 'flat-twin') return { ...flat('new'), earth: cpcMm2 > 0 ? 'bare' : null };
  return type === 'flex' ? { ...flat('new'), earth: 'green-yellow' } : unseen;
}

/**
 * Cores of a cable found: as the survey says of the point, else of the circuit. A circuit of mixed colours tells nothing of
 * any one cable, nor does one that nobody looked at: both are unseen, and never guessed.
 */
export function coloursOfFound(
  cable: Cable | null,
  point: Pick<Point, 'asFound'> | undefined,
  circuit: Pick<Circuit, 'colours'> | null,
): CoreColours {
  const set = point?.asFound?.colours ?? circuit?.colours;
  if (set !== 'old' && set !== 'new') return unseen;
  const type = cable?.type ?? 'flat-twin';
  if (type === 'flat-twin') return { ...flat(set), earth: cable?.cpcMm2 === 0 ? null : 'bare' };
  return unseen;
}
