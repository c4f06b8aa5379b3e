import type { Cable } from '#model/cable.ts';

/** The cable of a socket circuit where nobody names another: 2.5/1.5 mm² twin and earth. Common practice, no source. */
export const USUAL_CABLE: Cable = { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 };
