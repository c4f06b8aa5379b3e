import type { PointKind } from '#model/installation.ts';

/** What stands at a point, in words, the kinds most often met first; the same on the screen, the plan and the papers. */
export const pointKindWords: Readonly<Record<PointKind, string>> = {
  'socket-twin': 'Twin socket-outlet',
  'socket-single': 'Single socket-outlet',
  'fused-unit': 'Fused connection unit',
  'flex-outlet': 'Flex outlet',
  'dp-switch': 'Double-pole switch',
  'cooker-control': 'Cooker control unit',
  grid: 'Grid switches',
  shaver: 'Shaver supply unit',
  joint: 'Joint',
  blank: 'Blank plate',
  other: 'Other accessory',
};
