/**
 * Heights of lettering on sheets, mm from the foot of a row to the next at its closest (the letters' body): steps of √2, and since capitals
 * of the face are 0.7 of it, capitals are in the series of ISO 3098 too: 1.8, 2.5 and 3.5 mm.
 */
export const LETTERS_MM = { notes: 2.5, names: 3.5, titles: 5 } as const;

/** From row to row of notes, mm. */
export const ROW_MM = 3.4;
