import type { Conductor, TerminalName } from '#engine/work/connection-place.ts';
import type { Core, CoreColour } from '#engine/work/core-colour.ts';
import type { Ink } from '../scene.ts';

/** A core by its function. */
export const coreWords: Readonly<Record<Core, string>> = { line: 'line', neutral: 'neutral', earth: 'earth' };

/** A core by one letter, as terminals are marked. */
export const coreLetters: Readonly<Record<Core, string>> = { line: 'L', neutral: 'N', earth: 'E' };

/** A core's colour in words. */
export const colourWords: Readonly<Record<CoreColour, string>> = {
  red: 'red',
  black: 'black',
  brown: 'brown',
  blue: 'blue',
  'green-yellow': 'green-yellow',
  bare: 'bare',
};

/** A colour in one or two letters, so that a picture can be read without colour. */
export const colourLetters: Readonly<Record<CoreColour, string>> = {
  red: 'R',
  black: 'Bk',
  brown: 'Br',
  blue: 'Bl',
  'green-yellow': 'GY',
  bare: 'GY',
};

/** Terminals as they are marked, the bars of a board as they are called. */
export const terminalWords: Readonly<Record<TerminalName, string>> = {
  L: 'L',
  N: 'N',
  E: 'E',
  E1: 'E 1',
  E2: 'E 2',
  'L-in': 'L supply',
  'N-in': 'N supply',
  'L-out': 'L load',
  'N-out': 'N load',
  device: 'device',
  'device-N': 'N of device',
  'N-bar': 'N bar',
  'E-bar': 'E bar',
};

/** What a core is drawn with: its own colour, and a stroke of its function: line whole, neutral in long dashes, earth in short ones. */
export function coreInk({ core, afterColour }: Pick<Conductor, 'core' | 'afterColour'>): Ink {
  if (core === 'earth') return 'core-earth';
  if (core === 'line') {
    if (afterColour === 'red') return 'core-red';
    return afterColour === 'brown' ? 'core-brown' : 'core-line';
  }
  if (afterColour === 'black') return 'core-black';
  return afterColour === 'blue' ? 'core-blue' : 'core-neutral';
}

/** What is seen of a core and what becomes of it: "red", "bare: sleeve green-yellow", "look". */
export function colourSaid({ foundColour, sleeve, core }: Conductor): string {
  if (core === 'earth') {
    if (sleeve === 'put-on') return 'bare: sleeve green-yellow';
    if (sleeve === 'look') return 'green-yellow, else sleeve it';
    return foundColour === null ? 'look: colour not told' : 'green-yellow';
  }
  return foundColour === null ? 'look: colour not told' : colourWords[foundColour];
}
