import type { Library } from '#model/library.ts';
import type { LengthAllowances } from './run.ts';

/**
 * What a cable counts with, mm, whose length nobody can tell: a socket in the same room as its source. Common practice,
 * no source.
 */
export const UNTOLD_LENGTH_MM = 6000;

/**
 * Default allowances: a tail of 200 mm at every accessory and joint, 750 mm at a board, 300 mm of slack once
 * a run; derived parts ±5 %, assumed parts ±30 %. Common practice, no source.
 */
export const defaultLengthAllowances: LengthAllowances = {
  accessoryEndMm: 200,
  jointEndMm: 200,
  boardEndMm: 750,
  slackMm: 300,
  derivedPercent: 5,
  assumedPercent: 30,
};

/** The same with what the firm leaves at ends, and how far off it takes a length to be, by its own habit. */
export function allowancesOf({ norms: { counts = {} } }: Pick<Library, 'norms'>): LengthAllowances {
  const usual = defaultLengthAllowances;
  return {
    accessoryEndMm: counts.accessoryEndMm ?? usual.accessoryEndMm,
    jointEndMm: counts.jointEndMm ?? usual.jointEndMm,
    boardEndMm: counts.boardEndMm ?? usual.boardEndMm,
    slackMm: counts.slackMm ?? usual.slackMm,
    derivedPercent: counts.derivedPercent ?? usual.derivedPercent,
    assumedPercent: counts.assumedPercent ?? usual.assumedPercent,
  };
}
