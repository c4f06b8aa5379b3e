/** Marks that turn the direction of what follows them. Source: Unicode, UAX 9, "Directional Formatting Characters". */
const TURNS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/**
 * A text without marks that turn its line round: in a file they make what follows read as something else, a reference as another
 * and an ending of a name as its opposite. Letters of scripts that run from right to left still do.
 */
export const withoutTurns = (text: string): string => text.replace(TURNS, '');
