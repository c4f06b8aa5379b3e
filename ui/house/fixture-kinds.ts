import type { Fixture } from '#model/building.ts';
import type { AlongSide } from './along-side.ts';

/** What is fixed in rooms, in plain words, in the order in which rules ask for it. */
export const fixtureWords: Readonly<Record<Fixture['kind'], string>> = {
  sink: 'Sink',
  hob: 'Hob',
  oven: 'Oven',
  worktop: 'Worktop',
  basin: 'Basin',
  bath: 'Bath',
  shower: 'Shower',
  boiler: 'Boiler',
  radiator: 'Radiator',
  'gas-meter': 'Gas meter',
  'gas-pipe': 'Gas pipe',
  cupboard: 'Cupboard',
};

/** How large a fixture usually is, and how high it usually stands. */
export interface UsualFixture extends Pick<AlongSide, 'widthMm' | 'depthMm'> {
  readonly fromMm: number;
  readonly toMm: number;
}

/** Usual sizes and heights, mm: common practice, no source; what is taken from here counts as assumed. */
export const usualFixtures: Readonly<Record<Fixture['kind'], UsualFixture>> = {
  sink: { widthMm: 1000, depthMm: 500, fromMm: 700, toMm: 910 },
  hob: { widthMm: 600, depthMm: 520, fromMm: 870, toMm: 910 },
  oven: { widthMm: 600, depthMm: 600, fromMm: 100, toMm: 870 },
  worktop: { widthMm: 2000, depthMm: 600, fromMm: 870, toMm: 910 },
  basin: { widthMm: 550, depthMm: 450, fromMm: 650, toMm: 850 },
  bath: { widthMm: 1700, depthMm: 700, fromMm: 0, toMm: 550 },
  shower: { widthMm: 900, depthMm: 900, fromMm: 0, toMm: 2000 },
  boiler: { widthMm: 400, depthMm: 330, fromMm: 1300, toMm: 2000 },
  radiator: { widthMm: 1200, depthMm: 100, fromMm: 150, toMm: 750 },
  'gas-meter': { widthMm: 450, depthMm: 250, fromMm: 300, toMm: 800 },
  'gas-pipe': { widthMm: 1000, depthMm: 30, fromMm: 50, toMm: 80 },
  cupboard: { widthMm: 600, depthMm: 300, fromMm: 1400, toMm: 2100 },
};

/** Which heights of a kind rules and ways read: its top alone, both, or none. */
export const heightsRead: Readonly<Record<Fixture['kind'], 'none' | 'top' | 'both'>> = {
  sink: 'none',
  hob: 'top',
  oven: 'none',
  worktop: 'top',
  basin: 'none',
  bath: 'none',
  shower: 'none',
  boiler: 'none',
  radiator: 'none',
  'gas-meter': 'both',
  'gas-pipe': 'both',
  cupboard: 'none',
};

/** The heights that are kept of a kind, as usual, each marked as assumed. */
export function usualHeightsOf(kind: Fixture['kind']): Pick<Fixture, 'fromMm' | 'toMm'> {
  const { fromMm, toMm } = usualFixtures[kind];
  if (heightsRead[kind] === 'none') return {};
  return heightsRead[kind] === 'top' ? { toMm } : { fromMm, toMm };
}
