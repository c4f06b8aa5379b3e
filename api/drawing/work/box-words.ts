import type { BackBox } from '#engine/connections/things.ts';

/** What is fitted into the wall, or on it. */
const buildWords: Readonly<Record<BackBox['build'], string>> = {
  steel: 'flush steel',
  'dry-lining': 'dry-lining',
  surface: 'surface',
};

const gangWords = (gangs: number): string =>
  gangs === 1 ? 'single' : gangs === 2 ? 'twin' : `${gangs}-gang`;

/** "twin dry-lining box, 35 mm deep": its gangs, its kind, its depth. */
const boxWords = ({ gangs, build, depthMm }: BackBox): string =>
  `${gangWords(gangs)} ${buildWords[build]} box, ${depthMm} mm deep`;

/** Where board stands off the masonry on dabs, how a box is held behind it; empty elsewhere. */
function heldWords({ lining, build }: BackBox): string {
  if (lining !== 'dot-and-dab' || build === 'surface') return '';
  return build === 'steel'
    ? ', plugged to the block, which is chopped out for it behind the board'
    : ', held by the board, the block chopped out behind it';
}

/** Steps for a box that is fitted new, or takes the place of the one found; none for one that stays. */
export function boxSteps(box: BackBox | null): readonly string[] {
  if (box === null || (box.action !== 'fit' && box.action !== 're-box')) return [];
  const fitted =
    box.action === 'fit'
      ? `Fit a ${boxWords(box)}${heldWords(box)}.`
      : `Exchange the box found for a ${boxWords(box)}${heldWords(box)}.`;
  const grommet =
    box.build === 'steel' && box.knockOuts > 0 ? [' A grommet in each knock-out that is used.'] : [];
  const pad =
    box.party && box.build !== 'surface'
      ? [' A fire putty pad, the gaps round it sealed: a party wall.']
      : [];
  return [[fitted, ...grommet, ...pad].join('')];
}

/** " over a 10 mm spacer frame", as a plate goes back on a box that is too shallow; empty without. */
export const frameWords = (box: BackBox | null): string =>
  box?.action === 'frame' ? ` over a ${box.frameMm ?? 0} mm spacer frame` : '';
