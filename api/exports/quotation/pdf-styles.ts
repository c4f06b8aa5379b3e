import { tokens } from '#drawing/ink.ts';

/** How words of a paper look, by what they are. */
export const styles = {
  title: { fontSize: 26, bold: true, color: tokens.ink },
  heading: { fontSize: 14, bold: true, margin: [0, 10, 0, 4] as [number, number, number, number] },
  subheading: { fontSize: 11, bold: true, margin: [0, 6, 0, 2] as [number, number, number, number] },
  paragraph: { margin: [0, 0, 0, 5] as [number, number, number, number] },
  label: { font: 'Barlow Semi Condensed', color: tokens.inkSoft },
  head: { font: 'Barlow Semi Condensed', color: tokens.inkSoft },
  figures: { fontFeatures: ['tnum' as const] },
  warning: {
    bold: true,
    margin: [0, 2, 0, 6] as [number, number, number, number],
    decoration: 'underline' as const,
  },
};
