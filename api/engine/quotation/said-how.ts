import type { SaidHow } from '#model/quotation-notes.ts';

/** How a yes or a no came, in words. */
export const saidHowWords: Readonly<Record<SaidHow, string>> = {
  signed: 'Signed on paper',
  message: 'In writing: e-mail or message',
  'in-person': 'In person, by word of mouth',
  telephone: 'By telephone',
};
