import type { Reading } from '#model/installation.ts';
import type { ReadingAsked, SheetTest } from './sheet-test.ts';

/** What tells which reading answers a test. */
export type AskedOf = Pick<SheetTest, 'asked' | 'circuit' | 'at'>;

/**
 * The reading after the work that answers a test: of the kind asked for, of its circuit (a reading at a place may name none), at its place. What
 * comes in to a house once, Ze and the fault current, may have been read without saying where.
 *
 * @returns of several the last in the list, as everywhere; null where there is none.
 */
export function answerTo(test: AskedOf, readings: readonly Reading[]): Reading | null {
  return readings.findLast((reading) => reading.phase === 'after' && isAnswer(test, reading)) ?? null;
}

function isAnswer({ asked, circuit, at }: AskedOf, reading: Reading): boolean {
  if (!isOfKind(asked, reading)) return false;
  const place = placeOf(reading);
  const isAnywhere = place === undefined && (asked.kind === 'ze' || asked.kind === 'pfc');
  if (at !== null)
    return (place === at || isAnywhere) && (reading.circuit === undefined || reading.circuit === circuit);
  return circuit !== null && reading.circuit === circuit;
}

function isOfKind(asked: ReadingAsked, reading: Reading): boolean {
  if (asked.kind === 'loop')
    return (
      reading.kind === 'loop' &&
      reading.loop === asked.loop &&
      // Of a circuit with one way from the board both ends are the same.
      (reading.from === asked.from || (asked.from === 'A' && reading.from === 'B'))
    );
  if (asked.kind === 'insulation') return reading.kind === 'insulation' && reading.between === asked.between;
  if (asked.kind === 'rcd') return reading.kind === 'rcd' && reading.mA === asked.mA;
  return reading.kind === asked.kind;
}

function placeOf(reading: Reading): string | undefined {
  if (reading.kind === 'loop') return reading.linkedAt ?? reading.at;
  return 'at' in reading ? reading.at : undefined;
}

/** A figure as an instrument shows it, or whether something is right. */
export type ReadingValue = number | boolean;

/** A reading as it is entered on the sheet. */
export interface Entry {
  /** The new reading's id; that of a reading that is there already stays. */
  readonly id: string;
  readonly value: ReadingValue;
  /** ISO. */
  readonly takenOn: string;
  /** Of insulation, V. */
  readonly testV: number;
}

/** The reading that a test is answered with: the one that is there with its figure changed, else a new one, taken after the work. */
export function entered(test: AskedOf & Pick<SheetTest, 'reading'>, entry: Entry): Reading {
  const { circuit, at, reading } = test;
  const common = {
    id: entry.id,
    phase: 'after',
    takenOn: entry.takenOn,
    ...(circuit === null ? {} : { circuit }),
    ...(at === null ? {} : { at }),
  } as const;
  return reading === null ? newReading(common, test, entry) : changed(reading, entry);
}

type Common = Pick<Reading, 'id' | 'phase' | 'circuit' | 'takenOn'>;

function newReading(common: Common, { asked, at }: AskedOf, { value, testV }: Entry): Reading {
  switch (asked.kind) {
    case 'loop':
      return { ...common, ...asked, ohm: figure(value) };
    case 'zs':
    case 'ze':
      return { ...common, kind: asked.kind, ohm: figure(value) };
    case 'pfc':
      return { ...common, kind: 'pfc', kA: figure(value) };
    case 'insulation':
      return { ...common, ...asked, megohm: figure(value), testV };
    case 'rcd':
      return { ...common, ...asked, ms: figure(value) };
    case 'polarity':
      if (at === null) throw new Error(`Polarity of "${common.circuit ?? ''}" is asked for at no place.`);
      return { ...common, kind: 'polarity', at, ok: value === true };
    case 'rcd-button':
    case 'afdd-button':
    case 'spd-indicator':
      return { ...common, kind: asked.kind, ok: value === true };
  }
}

function changed(reading: Reading, { value, testV }: Entry): Reading {
  switch (reading.kind) {
    case 'loop':
    case 'zs':
    case 'ze':
      return { ...reading, ohm: figure(value) };
    case 'insulation':
      return { ...reading, megohm: figure(value), testV };
    case 'rcd':
      return { ...reading, ms: figure(value) };
    case 'pfc':
      return { ...reading, kA: figure(value) };
    case 'polarity':
    case 'rcd-button':
    case 'afdd-button':
    case 'spd-indicator':
      return { ...reading, ok: value === true };
  }
}

function figure(value: ReadingValue): number {
  if (typeof value !== 'number') throw new Error(`"${value}" is no figure of an instrument.`);
  return value;
}

/** What a reading shows: its figure in the unit of its kind, or whether it is right. */
export function shownBy(reading: Reading): ReadingValue {
  switch (reading.kind) {
    case 'loop':
    case 'zs':
    case 'ze':
      return reading.ohm;
    case 'insulation':
      return reading.megohm;
    case 'rcd':
      return reading.ms;
    case 'pfc':
      return reading.kA;
    case 'polarity':
    case 'rcd-button':
    case 'afdd-button':
    case 'spd-indicator':
      return reading.ok;
  }
}
