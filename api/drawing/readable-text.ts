/** Text that any paper can carry on one line: what no letter stands for becomes a space, marks that turn the reading direction go. */
export const readableText = (text: string): string =>
  text
    .replace(/[\u202A-\u202E\u2066-\u2069\u200E\u200F]/g, '')
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, ' ');
