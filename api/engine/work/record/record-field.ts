import type { Certainty } from '#model/primitives.ts';
import { isGuess } from '../../plan/is-guess.ts';
import type { ExpectedBand } from '../../proof/reading-band.ts';
import type { TestLimit } from '../tests/sheet-test.ts';

/**
 * Where what stands in a field is from. `survey`: the job has it as found. `scheme`: as the work is designed, to be confirmed as it was
 * fitted. `table`: looked up or worked out from the two. `measured`: by an instrument after the work. `expected`: the tool can only
 * say what a tester should show, so that the field itself is empty. `person`: for the competent person; the field is empty.
 */
export const fieldSources = ['survey', 'scheme', 'table', 'measured', 'expected', 'person'] as const;
export type FieldFrom = (typeof fieldSources)[number];

export type FieldUnit = 'Ω' | 'MΩ' | 'ms' | 's' | 'A' | 'mA' | 'kA' | 'V' | 'mm²';

/** One item of the record, with room to write where the tool cannot know it. */
export interface RecordField {
  /** Its own within its part of the record: `earthing`, `bond-gas`, `r1`. */
  readonly id: string;
  readonly label: string;
  /** As it would be written down; null: empty. Never what was only expected. */
  readonly value: string | null;
  /** The figure in `value`, in `unit`; null where it holds none, or several. */
  readonly figure: number | null;
  readonly unit: FieldUnit | null;
  readonly from: FieldFrom;
  /** Of the value; `unknown` for an empty field. */
  readonly certainty: Certainty;
  /** What a tester should show, Ω at the temperature of the test: told beside the field, never in it. */
  readonly expected: ExpectedBand | null;
  /** What a reading is held to, as the test sheet has it; null without a limit. */
  readonly limit: TestLimit | null;
  /** Whether what was measured keeps its limit; null where nothing was, or nothing holds it. */
  readonly keepsLimit: boolean | null;
  /** What is to be borne in mind; null: nothing. */
  readonly note: string | null;
}

/** Which field, and what is said beside it. */
export interface FieldHead {
  readonly id: string;
  readonly label: string;
  readonly unit?: FieldUnit;
  readonly note?: string | null;
}

const empty = {
  value: null,
  figure: null,
  unit: null,
  certainty: 'unknown',
  expected: null,
  limit: null,
  keepsLimit: null,
  note: null,
} as const;

/** A field that only whoever inspects, tests and signs can fill. */
export const forPerson = (head: FieldHead): RecordField => ({ ...empty, ...head, from: 'person' });

/** A value of the job and how sure it is. */
export interface Told {
  /** Null or undefined: the job does not have it. */
  readonly value: string | number | null | undefined;
  /** Of a fact that is given without a word for it: seen. */
  readonly certainty: Certainty | undefined;
  readonly from?: 'survey' | 'scheme' | 'table';
}

/**
 * A field that the job tells; empty, for the competent person, where it does not, or where it says that nobody knows. What the scheme
 * brings counts as assumed until somebody has seen it fitted.
 */
export function toldField(head: FieldHead, { value, certainty, from = 'survey' }: Told): RecordField {
  if (value === null || value === undefined || value === '' || certainty === 'unknown')
    return forPerson(head);
  const { unit = null } = head;
  const isFigure = typeof value === 'number';
  return {
    ...empty,
    ...head,
    value: isFigure && unit !== null ? withUnit(value, unit) : String(value),
    figure: isFigure ? value : null,
    unit,
    from,
    certainty: from === 'scheme' ? 'assumed' : (certainty ?? 'seen'),
  };
}

/** A figure with its unit, never parted: "0.24 Ω". */
export const withUnit = (figure: number, unit: FieldUnit): string => `${figure}\u00a0${unit}`;

/** Several notes as one; null: none. */
export function notesOf(...notes: readonly (string | null | undefined)[]): string | null {
  const said = notes.filter((note) => note !== null && note !== undefined && note !== '');
  return said.length === 0 ? null : said.join(' ');
}

/** Whether a field holds what the survey or a table only takes for granted; what a scheme brings is no guess. */
export const isAssumed = ({ value, from, certainty }: RecordField): boolean =>
  value !== null && from !== 'scheme' && isGuess(certainty);
