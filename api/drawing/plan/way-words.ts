import type { Run } from '#engine/ways/run.ts';
import type { Medium } from '#model/cable.ts';

const mediumWords: Readonly<Record<Medium, string>> = {
  'void-along': 'along joists',
  'void-across': 'across joists',
  'void-open': 'in the void',
  'wall-chase': 'in chase',
  'stud-cavity': 'in stud wall',
  'surface-clipped': 'clipped',
  'surface-channel': 'in channel',
  'through-wall': 'through wall',
  riser: 'in riser',
  loft: 'in loft',
  buried: 'buried',
  outside: 'outside',
};

/** A run's cable and its metres by medium, in few words: "2.5/1.5, 0.9 m in chase, 1.2 m along joists". */
export function wayInWords(run: Run): string {
  const metres = new Map<string, number>();
  for (const [i, { medium, lengthMm }] of run.segments.entries()) {
    const words = run.cuts[i]?.chase?.isBehindBoard === true ? 'behind board' : mediumWords[medium];
    metres.set(words, (metres.get(words) ?? 0) + lengthMm);
  }
  const parts = [...metres.entries()]
    .filter(([, mm]) => mm >= 50)
    .map(([words, mm]) => `${(mm / 1000).toFixed(1)} m ${words}`);
  return [`${run.cable.lineMm2}/${run.cable.cpcMm2} mm²`, ...parts].join(', ');
}
