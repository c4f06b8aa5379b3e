import { type CSSResult, css, unsafeCSS } from 'lit';
import { inkLooks, tokens } from '#drawing/ink.ts';

/** The custom property of a drawing's colour, so that a dark screen has its own; its paper colour where it has none. */
function screenColour(hex: string): string {
  const name = Object.entries(tokens).find(([, value]) => value === hex)?.[0];
  return name === undefined
    ? hex
    : `var(--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}, ${hex})`;
}

const rules = Object.entries(inkLooks).map(([ink, look]) => {
  const parts = [`fill:${look.fill === undefined ? 'none' : screenColour(look.fill)}`];
  if (look.stroke !== undefined)
    parts.push(`stroke:${screenColour(look.stroke)}`, `stroke-width:${look.widthMm ?? 0.25}`);
  if (look.dashMm !== undefined) parts.push(`stroke-dasharray:${look.dashMm.join(' ')}`);
  return `.${ink}{${parts.join(';')}}`;
});

/** The looks of all inks, as on paper, in the screen's colours: our own constants only. */
export const inkStyles: CSSResult = css`
  ${unsafeCSS(rules.join('\n'))}
`;
