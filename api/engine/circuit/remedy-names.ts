import type { Remedy } from '#model/scheme.ts';

/** What a remedy brings, within a sentence. */
export const remedyNames: Readonly<Record<Remedy['kind'], string>> = {
  rcbo: 'an RCBO',
  'rcd-enclosure': 'an enclosure with an RCD',
  'rcd-unit': 'a fused unit with an RCD',
  'rcd-outlet': 'an outlet with an RCD',
  'bond-upgrade': 'a new bond',
  're-box': 'a deeper box',
  'single-to-twin': 'a twin in the place of a single',
  'lower-device': 'a smaller device',
  'new-board': 'a new board',
};
