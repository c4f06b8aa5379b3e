import { withoutTurns } from '#engine/price/list/without-turns.ts';

/** Text that any paper can carry on one line: what no letter stands for becomes a space, marks that turn the reading direction go. */
export const readableText = (text: string): string =>
  withoutTurns(text).replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, ' ');
