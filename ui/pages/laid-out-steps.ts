import type { Step } from '../job-view.ts';

/** Steps whose sheet is a table. */
export const wideSteps: readonly Step[] = ['kit', 'price'];
/** Steps in which the sheet is read, and the plan only shows what is touched in it. */
export const readSteps: readonly Step[] = ['price', 'papers'];
/** Steps in which a phone shows the schemes above the sheet. */
export const schemeSteps: readonly Step[] = ['ways', 'kit', 'price', 'papers'];
