import type { Plan } from '../plan/plan.ts';
import type { Segment } from './run.ts';

/** Stretches shorter than this are not worth a sentence. */
const WORTH_SAYING_MM = 15;

const coreWords: Readonly<Record<string, string>> = {
  brick: 'brick wall',
  'hard-brick': 'hard brick wall',
  block: 'block wall',
  'aerated-block': 'aerated block wall',
  concrete: 'concrete wall',
  'timber-stud': 'timber stud wall',
  'metal-stud': 'metal stud wall',
};

/** A path in plain words, one step a stretch worth saying, lengths to 10 mm or 0.1 m. */
export function stepsOf(plan: Plan, segments: readonly Segment[]): readonly string[] {
  return segments
    .filter((segment) => segment.lengthMm >= WORTH_SAYING_MM)
    .map((segment) => stepWords(plan, segment));
}

function stepWords(plan: Plan, segment: Segment): string {
  const words = `${wayWords(segment)} ${placeWords(plan, segment)}`;
  return `${words}${joistWords(segment)}${studWords(segment)}${segment.certainty === 'assumed' ? ' (assumed)' : ''}`;
}

function joistWords({ joistsCrossed }: Segment): string {
  return joistsCrossed === 0 ? '' : `, through ${joistsCrossed} ${joistsCrossed === 1 ? 'joist' : 'joists'}`;
}

function studWords({ studsCrossed }: Segment): string {
  return studsCrossed === 0 ? '' : `, through ${studsCrossed} ${studsCrossed === 1 ? 'stud' : 'studs'}`;
}

function wayWords(segment: Segment): string {
  const length = lengthWords(segment.lengthMm);
  if (segment.direction !== 'vertical') return length;
  return `${segment.to.levelMm > segment.from.levelMm ? 'up' : 'down'} ${length}`;
}

function lengthWords(lengthMm: number): string {
  return lengthMm < 1000 ? `${Math.round(lengthMm / 10) * 10} mm` : `${(lengthMm / 1000).toFixed(1)} m`;
}

function placeWords(plan: Plan, segment: Segment): string {
  const core = plan.wallById.get(segment.wallId ?? '')?.wall.core ?? '';
  const wall = coreWords[core] ?? 'wall';
  const words: Readonly<Record<Segment['medium'], string>> = {
    'void-along': 'under the floor along the joists',
    'void-across': 'under the floor across the joists',
    'void-open': segment.direction === 'vertical' ? 'between floor and ceiling' : 'above the hung ceiling',
    'wall-chase': `chased into the ${wall}`,
    'stud-cavity': `inside the ${wall}`,
    'surface-clipped': 'clipped to the surface',
    'surface-channel': `in channel on the ${wall}`,
    'through-wall': `through the ${wall}`,
    riser: 'in a riser through the storey',
    loft: 'in the loft',
    buried: 'buried',
    outside: 'outside',
  };
  return words[segment.medium];
}
